// The sums of the bench: products and rounding, the same as engine/rounding.py and plans/scaling.py, digit for digit.
const GRAIN = 1e-9;
const CUP_PARTS = [1, 3 / 4, 2 / 3, 1 / 2, 1 / 3, 1 / 4, 0];

const six = value => Math.round(value * 1e6) / 1e6;
export const halfUp = (value, step) => six(Math.floor(value / step + 0.5 + GRAIN) * step);
const atLeastOne = (value, step) => halfUp(value, step) || (value > 0 ? step : 0);

export const scales = (grams, steps) => atLeastOne(grams, grams < steps.fine_below ? steps.fine : steps.step);
export const spoon = value => atLeastOne(value, value < 0.5 ? 0.125 : 0.25);
export const ounces = value => atLeastOne(value, value < 1 ? 0.125 : 0.25);
export const percent = share => halfUp(share * 100, 0.1);

export function cups(value) {
  const whole = Math.floor(value),
    rest = value - whole;
  const far = part => Number(Math.abs(part - rest).toFixed(9));
  return whole + CUP_PARTS.reduce((best, part) => (far(part) < far(best) ? part : best));
}

export const times = (amount, room) => Math.max(1, Math.ceil(amount / room - GRAIN));

export function wholeEggs(eggs, factor) {
  const count = Math.max(1, Math.floor(eggs * factor + 0.5 + GRAIN));
  return { count, factor: count / eggs, off: count / eggs / factor - 1 };
}

export function kept(points, width) {
  if (!points || width <= points[0][0]) return points ? points[0][1] : 1;
  for (let i = 1; i < points.length; i++) {
    const [left, one] = points[i - 1],
      [right, other] = points[i];
    if (width <= right) return one + ((other - one) * (width - left)) / (right - left);
  }
  return points[points.length - 1][1];
}

// One line at a factor: exact, as measured out, and in which unit.
export function amount(line, factor, steps, byWeight) {
  if (line.unit === "tsp" || line.unit === "tbsp") {
    const exact = line.amount * factor;
    return { exact, shown: spoon(exact), unit: line.unit };
  }
  if (line.unit === "" && !byWeight) {
    const exact = line.amount * factor;
    if (Math.abs(exact - Math.round(exact)) < 1e-6) return { exact, shown: Math.round(exact), unit: "" };
  }
  const exact = (line.unit === "ml" ? line.amount : line.mass_g) * factor;
  return { exact, shown: scales(exact, steps), unit: line.unit === "ml" ? "ml" : "g" };
}

// The same line in ounces, or in cups and spoons where it has a volume measure.
export function inOunces(line, factor, recipe) {
  return ounces((line.mass_g * factor) / recipe.g_per_oz);
}

export function inSpoons(line, factor, recipe) {
  if (line.volume_ml === null) return null;
  const ml = line.volume_ml * factor;
  if (ml >= (recipe.cup_ml / 4) * (1 - GRAIN)) return { shown: cups(ml / recipe.cup_ml), unit: "cup" };
  if (ml >= recipe.tablespoon_ml * (1 - GRAIN)) return { shown: spoon(ml / recipe.tablespoon_ml), unit: "tbsp" };
  return { shown: spoon(ml / recipe.teaspoon_ml), unit: "tsp" };
}

function version(recipe, factor, exactFactor, width, byWeight) {
  const keep = kept(recipe.raising, width),
    share = line => (line.raises ? factor * keep : factor);
  const amounts = recipe.lines.map(line => amount(line, share(line), recipe.steps, byWeight));
  const off = factor / exactFactor - 1,
    mass = recipe.lines.reduce((sum, line) => sum + line.mass_g * share(line), 0);
  return {
    factor,
    factorShown: halfUp(factor, 0.01),
    off,
    offPercent: percent(off),
    amounts,
    keep,
    mass,
    massShown: scales(mass, recipe.steps),
  };
}

export function versions(recipe, factor, width) {
  const exact = version(recipe, factor, factor, width, true);
  if (!recipe.eggs) return { exact, whole: version(recipe, factor, factor, width, false), beaten: false };
  const eggs = wholeEggs(recipe.eggs, factor),
    beaten = Math.abs(eggs.off) > recipe.egg_tolerance + GRAIN;
  return { exact, whole: beaten ? exact : version(recipe, eggs.factor, factor, width, false), beaten };
}

// Batter for one tin that is in no table, as deep as in the written tins; by its water, filled to the same share.
export function anyTin(recipe, asked) {
  if (asked.ml) return { unit_ml: asked.ml * recipe.share, width: 0 };
  const shape = recipe.shapes[asked.shape];
  return {
    unit_ml: (shape * asked.width * asked.length * recipe.depth_mm) / 1000,
    width: Math.min(asked.width, asked.length),
  };
}
