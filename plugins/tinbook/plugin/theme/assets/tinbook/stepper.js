// A number to be stepped up or down, by buttons that stand in the page.
import { find } from "./dom.js";
import { nextStep } from "./rounding.js";
import { tins as words } from "./words.js";

const MOST = 999;

// set() tells the number, set(next) changes it. Goes by whole steps, also from a number between two.
export function steps(group, step, least, set) {
  const go = by => set(Math.min(MOST, Math.max(least, nextStep(set(), step, by))));
  find("button:first-child", group).addEventListener("click", () => go(-1));
  find("button:last-child", group).addEventListener("click", () => go(1));
  return group;
}

export function nameStepper(group, label) {
  const [less, name, more] = group.children;
  if (name.textContent === label) return;
  name.textContent = label;
  group.setAttribute("aria-label", label);
  less.setAttribute("aria-label", words.less(label));
  more.setAttribute("aria-label", words.more(label));
}
