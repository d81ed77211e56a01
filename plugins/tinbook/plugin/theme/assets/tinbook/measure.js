// Grams, ounces, or cups and spoons: one switch, remembered, on every page that has amounts.
import { all, pressOne } from "./dom.js";
import { follow, read, write } from "./keep.js";
import { cupWord, mixed, ounces } from "./spell.js";
import { inOunces, inSpoons } from "./sums.js";

const listeners = [];
const house = document.querySelector("meta[name=tinbook]")?.dataset.measures || "grams";
const MEASURES = ["grams", "ounces", "cups"];

export function measure() {
  const kept = read("measure", house);
  return MEASURES.includes(kept) ? kept : "grams";
}
export const onMeasure = listener => listeners.push(listener);

// A line at a factor in the chosen measure, as figure and unit; null for grams, and for cups without a volume measure.
export function measured(recipe, line, factor) {
  const chosen = measure();
  if (chosen === "ounces") return ounces(inOunces(line, factor, recipe));
  const spoons = chosen === "cups" ? inSpoons(line, factor, recipe) : null;
  return spoons && [mixed(spoons.shown), cupWord(spoons)];
}

function changed() {
  const chosen = measure();
  document.documentElement.dataset.measure = chosen;
  for (const group of all(".tb-measure .tb-switch")) pressOne(group, chosen);
  for (const listener of listeners) listener();
}

export function measures() {
  const choose = value => {
    write("measure", value);
    changed();
  };
  for (const group of all(".tb-measure .tb-switch")) {
    group.addEventListener("click", ({ target }) => target.dataset.value && choose(target.dataset.value));
  }
  follow("measure", changed);
  changed();
}
