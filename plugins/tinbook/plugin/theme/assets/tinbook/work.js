// A mixture for the chosen tin: its sums, and what the page says about them.
import { measured } from "./measure.js";
import { exceeds, scales, wholeTimes } from "./rounding.js";
import { centimetres, figure, grams, mixed, number, tinWords } from "./spell.js";
import { amount, anyTin, inTwoSizes, versions } from "./sums.js";
import { bench as words } from "./words.js";

const tinOf = (recipe, choice) => recipe.tins.find(tin => tin.name === choice.tin);

// Everything the page says about one choice: also what the tests compare with Python.
export function work(recipe, choice) {
  const tin = tinOf(recipe, choice);
  const filled = choice.any ? anyTin(recipe, choice.any) : tin;
  const factor = choice.times || (filled ? (choice.count * filled.unit_ml) / recipe.batter_ml : choice.count);
  const batch = versions(recipe, factor, filled ? filled.width_mm : 0);
  const shown = choice.exact ? batch.exact : batch.whole;
  const needed = tin && !choice.any ? tinsNeeded(recipe.batter_ml * shown.factor, tin, choice.count) : choice.count;
  return {
    ...batch,
    shown,
    tin,
    filled,
    needed,
    inEach: scales(shown.mass / needed, recipe.steps),
    mixes: recipe.bowl_g ? wholeTimes(shown.mass, recipe.bowl_g) : 1,
    bakes: bakes(choice.any ? null : tin, needed),
  };
}

// More than were chosen, if that much batter would rise over the brim.
export function tinsNeeded(ml, tin, count) {
  return tin.room_ml && exceeds(ml / count, tin.room_ml) ? wholeTimes(ml, tin.room_ml) : count;
}

// How many oven loads, given its shelf and the tins owned; none for a tin that does not fit the shelf.
function bakes(tin, needed) {
  if (!tin || tin.stands === 0) return tin ? 0 : 1;
  const byShelf = tin.stands ? wholeTimes(wholeTimes(needed, tin.holes), tin.stands) : 1;
  return tin.have ? Math.max(byShelf, wholeTimes(needed, tin.have)) : byShelf;
}

// One line in the measure of the house: figure and unit. A share of what is counted is weighed.
export function spelt(recipe, index, shown, share = 1) {
  const line = recipe.lines[index];
  const factor = (line.raises ? shown.factor * shown.keep : shown.factor) * share;
  const measuredOut = share === 1 ? shown.amounts[index] : amount(line, factor, recipe.steps, true);
  const chosen = measuredOut.unit === "" ? null : measured(recipe, line, factor);
  return chosen || [figure(measuredOut), measuredOut.unit];
}

// A tin of your own by its shape and size.
export function anyName({ shape, width, length }, recipe) {
  const called = mm => calledCm(mm, recipe);
  if (!inTwoSizes(shape)) return words.oneSize(shape, called(width));
  return words.twoSizes(shape, called(width), called(length));
}

// The centimetres a length goes by: those of its name, if that is not its length.
const calledCm = (mm, recipe) =>
  Object.entries(recipe.named.cm ?? {}).find(([, size]) => size === mm)?.[0] ?? centimetres(mm);

export function cakeName(recipe, choice) {
  const { any, count } = choice;
  if (any?.ml) return words.many(count, words.ownWater(number(any.ml)));
  if (any) return tinWords(words.many(count, anyName(any, recipe)));
  if (choice.grams) return grams(choice.grams);
  if (!choice.tin) return count === 1 ? words.batch : words.batches(mixed(count));
  const holes = tinOf(recipe, choice).holes;
  return tinWords(holes > 1 ? `${count} ${choice.tin}` : words.many(count, choice.tin));
}

export function massWords(recipe, choice, { shown, tin, inEach }) {
  if (!recipe.tins.length) return words.madeFrom(grams(shown.massShown));
  if (choice.count <= 1) return words.together(grams(shown.massShown));
  return (tin?.holes > 1 ? words.inEachCup : words.inEach)(grams(inEach));
}

export function remarks(recipe, choice, batch) {
  const { needed, bakes, mixes } = batch;
  const wholeTins = batch.tin && !choice.any ? batch.tin : null;
  const few = wholeTins && fewWords(needed, wholeTins);
  return [
    recipe.eggs && offWords(choice, batch),
    wholeTins?.holes === 1 && needed === choice.count && depthWords(wholeTins, recipe),
    needed > choice.count && words.shallow(needed),
    bakes === 0 && words.wide,
    bakes > 1 && (few || words.bakes(bakes, batch.tin.stands)),
    mixes > 1 && words.mixes(mixes),
  ]
    .filter(Boolean)
    .join("; ");
}

function offWords(choice, { beaten, shown }) {
  if (beaten || choice.exact || !shown.offPercent) return words.offNone;
  return (shown.off > 0 ? words.offMore : words.offLess)(number(Math.abs(shown.offPercent)));
}

const depthWords = (tin, recipe) => (tin.least_mm ? words.least(calledCm(tin.least_mm, recipe)) : words.deeper);

// Whether fewer are owned than must be filled, and the oven has room for all of those.
function fewWords(needed, { have, stands, holes }) {
  if (!have || have >= needed || (stands && have > stands * holes)) return "";
  const part = holes > 1 ? "" : words.parts[needed] || words.partOf(needed);
  return words.few(have, part, needed === 2 ? "" : " of");
}
