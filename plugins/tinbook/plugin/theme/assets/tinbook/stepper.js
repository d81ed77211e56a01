// A number to be stepped up or down.
import { make } from "./dom.js";
import { nextStep } from "./rounding.js";
import { tins as words } from "./words.js";

const MOST = 999;

// set() tells the number, set(next) changes it. Goes by whole steps, also from a number between two.
export function stepper(label, step, least, set) {
  const go = by => set(Math.min(MOST, Math.max(least, nextStep(set(), step, by))));
  const button = (text, by) => make("button", { onclick: () => go(by) }, text);
  const group = make("div", { class: "tb-stepper", role: "group" }, button("−", -1), make("span"), button("+", 1));
  nameStepper(group, label);
  return group;
}

export function nameStepper(group, label) {
  const [less, name, more] = group.children;
  name.textContent = label;
  group.setAttribute("aria-label", label);
  less.setAttribute("aria-label", words.less(label));
  more.setAttribute("aria-label", words.more(label));
}
