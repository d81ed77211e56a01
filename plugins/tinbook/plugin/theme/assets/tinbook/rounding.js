// The browser's rounding, each for a purpose: the same as engine/rounding.py and engine/scaling.py, digit for digit.

// How far floats may be out: a half held as 0.49999999 goes up, and a room filled to the brim is not exceeded.
export const GRAIN = 1e-9;
// A count this near to a whole one is that one.
const NEARLY = 1e-6;
const CUP_PARTS = [1, 3 / 4, 2 / 3, 1 / 2, 1 / 3, 1 / 4, 0];

// Halves go up. Tenths need tidying, as floats cannot hold them.
export const halfUp = (value, step) => Math.round(Math.floor(value / step + 0.5 + GRAIN) * step * 1e6) / 1e6;
const atLeastOne = (value, step) => halfUp(value, step) || (value > 0 ? step : 0);

export const scales = (grams, steps) => atLeastOne(grams, grams < steps.fine_below ? steps.fine : steps.step);
// Parts of a decoration and their colours, weighed on fine scales: as plans/techniques/shown.py.
export const partGrams = grams => atLeastOne(grams, grams < 10 ? 0.1 : 1);
export const potGrams = grams => atLeastOne(grams, grams < 1 ? 0.01 : 0.1);
export const spoon = spoons => atLeastOne(spoons, spoons < 0.5 ? 0.125 : 0.25);
export const ounces = weight => atLeastOne(weight, weight < 1 ? 0.125 : 0.25);
export const percent = share => halfUp(share * 100, 0.1);
export const shownFactor = factor => halfUp(factor, 0.01);

export function cups(volume) {
  const whole = Math.floor(volume);
  const distance = part => Number(Math.abs(part - (volume - whole)).toFixed(9));
  return whole + CUP_PARTS.reduce((best, part) => (distance(part) < distance(best) ? part : best));
}

export const reaches = (value, least) => value >= least * (1 - GRAIN);
export const exceeds = (value, most) => value > most * (1 + GRAIN);
export const isWhole = count => Math.abs(count - Math.round(count)) < NEARLY;

// How often `room` must be filled for `amount`, and how many of `size` it gives.
export const wholeTimes = (amount, room) => Math.max(1, Math.ceil(amount / room - GRAIN));
export const wholePieces = (amount, size) => Math.floor(amount / size + GRAIN);

export function wholeEggs(eggs, factor) {
  const count = Math.max(1, Math.floor(eggs * factor + 0.5 + GRAIN));
  return { count, factor: count / eggs, off: count / eggs / factor - 1 };
}

// One step up or down (`by` is 1 or -1), to a multiple of `step` also from between two.
export const nextStep = (value, step, by) =>
  (by > 0 ? Math.floor : Math.ceil)(value / step + by * NEARLY) * step + by * step;
