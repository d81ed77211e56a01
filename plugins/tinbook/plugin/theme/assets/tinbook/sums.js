// The products of the bench: the same as plans/base/scaling.py and versions.py, digit for digit.
import { cups, GRAIN, isWhole, ounces, percent, reaches, scales, shownFactor, spoon, wholeEggs } from "./rounding.js";

// The share of a raising agent kept in a tin of this width: straight between the points, level beyond them.
export function raisingKept(points, width) {
  if (!points) return 1;
  const next = points.findIndex(point => width <= point.width);
  if (next < 0) return points.at(-1).kept;
  if (next === 0) return points[0].kept;
  const [narrow, wide] = points.slice(next - 1, next + 1);
  return narrow.kept + ((wide.kept - narrow.kept) * (width - narrow.width)) / (wide.width - narrow.width);
}

// One line at a factor: exact, as measured out, and in which unit.
export function amount(line, factor, steps, byWeight) {
  const { unit } = line;
  const counted = line.amount * factor;
  if (unit === "tsp" || unit === "tbsp") return { exact: counted, shown: spoon(counted), unit };
  if (unit === "" && !byWeight && isWhole(counted)) return { exact: counted, shown: Math.round(counted), unit };
  const exact = unit === "ml" ? counted : line.mass_g * factor;
  return { exact, shown: scales(exact, steps), unit: unit === "ml" ? unit : "g" };
}

export const inOunces = (line, factor, recipe) => ounces((line.mass_g * factor) / recipe.g_per_oz);

// In cups and spoons, where the line has a volume measure.
export function inSpoons(line, factor, recipe) {
  if (line.volume_ml === null) return null;
  const ml = line.volume_ml * factor;
  if (reaches(ml, recipe.cup_ml / 4)) return { shown: cups(ml / recipe.cup_ml), unit: "cup" };
  if (reaches(ml, recipe.tablespoon_ml)) return { shown: spoon(ml / recipe.tablespoon_ml), unit: "tbsp" };
  return { shown: spoon(ml / recipe.teaspoon_ml), unit: "tsp" };
}

function version(recipe, factor, exactFactor, width, byWeight) {
  const keep = raisingKept(recipe.raising, width);
  const factorOf = line => (line.raises ? factor * keep : factor);
  const off = factor / exactFactor - 1;
  const mass = recipe.lines.reduce((sum, line) => sum + line.mass_g * factorOf(line), 0);
  return {
    factor,
    factorShown: shownFactor(factor),
    off,
    offPercent: percent(off),
    amounts: recipe.lines.map(line => amount(line, factorOf(line), recipe.steps, byWeight)),
    keep,
    mass,
    massShown: scales(mass, recipe.steps),
  };
}

// With whole eggs and exact. Eggs that are not near enough are beaten and weighed: then both are exact.
export function versions(recipe, factor, width) {
  const exact = version(recipe, factor, factor, width, true);
  if (!recipe.eggs) return { exact, whole: version(recipe, factor, factor, width, false), beaten: false };
  const eggs = wholeEggs(recipe.eggs, factor);
  const beaten = Math.abs(eggs.off) > recipe.egg_tolerance + GRAIN;
  return { exact, whole: beaten ? exact : version(recipe, eggs.factor, factor, width, false), beaten };
}

// Batter for one tin that is in no table, as deep as in the written tins; if known by its water, as full.
export function anyTin(recipe, any) {
  if (any.ml) return { unit_ml: any.ml * recipe.share, width_mm: 0, by_brim: true };
  const area = recipe.shapes[any.shape] * any.width * any.length;
  return { unit_ml: (area * recipe.depth_mm) / 1000, width_mm: Math.min(any.width, any.length) };
}

// Shapes described by a width and a length; the others by one size.
export const inTwoSizes = shape => shape === "rectangle" || shape === "oval";
