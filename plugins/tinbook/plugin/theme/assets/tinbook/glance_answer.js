// What the page of tins says of two tins.
import { all, find, say } from "./dom.js";
import { glance as words } from "./page_words.js";
import { plan } from "./plan.js";
import { exceeds, shownFactor, wholeEggs } from "./rounding.js";
import { fixed, tinWords } from "./spell.js";

export const SAID_EGGS = 4;
const EGGS = [3, 4, 5, 6, 8, 10];
const WIDEST_EM = 5;

// What a tin takes where a cake is baked to the depth at this place in the switch. Where no depth changes anything there
// is one figure.
export function atDepth({ ml, near, near_factor }, place) {
  const of = figures => figures[place] ?? figures[0];
  return { ml: of(ml), near: of(near), nearFactor: of(near_factor) };
}

// A tin to itself, as deep as before, is no sum.
export const factorText = (factor, isSame) => (isSame && factor === 1 ? "1" : fixed(shownFactor(factor), 2));

export function sayAnswer(root, { from, to, fromDeep, toDeep, depths }, factor) {
  const scale = WIDEST_EM / Math.max(from.width_mm, from.length_mm, to.width_mm, to.length_mm);
  const plans = [plan(to, scale, "em", " tb-to"), plan(from, scale, "em", " tb-from")];
  const isLess = to.width_mm * to.length_mm < from.width_mm * from.length_mm;
  find(".tb-overlay", root).replaceChildren(...(isLess ? plans.reverse() : plans));
  const { near, nearFactor } = atDepth(to, toDeep);
  const isShallow = !to.share && to.deep_mm && exceeds(depths[toDeep], to.deep_mm);
  const told = {
    factor: factorText(factor, from === to),
    "brim-from": from.brim,
    "brim-to": to.brim,
    name: to.called,
    near: near ? `${tinWords(near)}, ${words.by(fixed(nearFactor, 2))}` : words.none,
    shallow: isShallow ? words.shallow(to.called, to.deep) : "",
  };
  for (const [key, text] of Object.entries(told)) say(find(`[data-told="${key}"]`, root), text);
  for (const eggs of EGGS) {
    const { count } = wholeEggs(eggs, factor);
    for (const place of all(`[data-told="become-${eggs}"]`, root)) say(place, String(count));
  }
  const by = kept(from, to, fromDeep === toDeep);
  for (const each of all("[data-by]", root)) each.hidden = each.dataset.by !== by;
}

// What the factor keeps the same.
function kept(from, to, isAsDeep) {
  if (from.share !== to.share) return "both";
  if (from.share) return "share";
  return isAsDeep ? "depth" : "own";
}
