// Grams, ounces, or cups and spoons: one switch, remembered, on every page that has amounts.

import { all, choice, press } from "./dom.js";
import { follow, read, write } from "./keep.js";
import { cupWord, mixed, ounces } from "./spell.js";
import { inOunces, inSpoons } from "./sums.js";
import { words } from "./words.js";

const listeners = [];
const house = document.querySelector("meta[name=tinbook]")?.dataset.measures || "grams";
const MEASURES = [
  ["grams", words.g],
  ["ounces", words.oz],
  ["cups", words.spoons],
];

export const measure = () => {
  const kept = read("measure", house);
  return MEASURES.some(([name]) => name === kept) ? kept : "grams";
};
export const onMeasure = listener => listeners.push(listener);

// A line at a factor in the chosen measure, as figure and unit; null for grams, and for cups without a volume measure.
export function measured(recipe, line, factor) {
  if (measure() === "ounces") {
    const text = ounces(inOunces(line, factor, recipe)),
      at = text.lastIndexOf("\u00a0");
    return [text.slice(0, at), text.slice(at + 1)];
  }
  const spoons = measure() === "cups" ? inSpoons(line, factor, recipe) : null;
  return spoons && [mixed(spoons.shown), cupWord(spoons)];
}

function changed() {
  document.documentElement.dataset.measure = measure();
  for (const group of all(".tb-measure .tb-switch")) press(group, measure());
  for (const listener of listeners) listener();
}

export function measures() {
  for (const holder of all(".tb-measure")) {
    holder.append(
      choice(words.measure, MEASURES, measure(), value => {
        write("measure", value);
        changed();
      }),
    );
    holder.hidden = false;
  }
  follow("measure", changed);
  document.documentElement.dataset.measure = measure();
}
