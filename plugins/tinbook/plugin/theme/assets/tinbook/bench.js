// At the bench: a mixture for the chosen tin, its lines and its steps. The page stands as it was written; what is here
// makes it follow the choice.
import { load, save, watchAddress } from "./chosen.js";
import { all, announce, find, pressOne, put, say } from "./dom.js";
import { recipeOf } from "./embedded.js";
import { onMeasure } from "./measure.js";
import { fixed, withUnit } from "./spell.js";
import { drawButtons } from "./timers.js";
import { bench as words } from "./words.js";
import { cakeName, massWords, remarks, spelt, work } from "./work.js";

// `sign`: what the bench of this kind has; `controls` for what is chosen; `baking` for what goes into the oven.
export function bench(sign, controls, baking) {
  const root = find("#tb-bench");
  if (!root || !find(sign, root)) return;
  const recipe = recipeOf();
  const { slug } = root.dataset;
  const choice = load(slug, recipe);
  const showBaking = baking?.(recipe, slug);

  function show() {
    const batch = work(recipe, choice);
    const cake = cakeName(recipe, choice);
    say(find(".tb-this", root), cake);
    say(find(".tb-factor", root), words.by(fixed(batch.shown.factorShown, 2)));
    const said = [choice.times ? words.byCake : wayOf(batch.filled), remarks(recipe, choice, batch)]
      .filter(Boolean)
      .join("; ");
    say(find(".tb-remarks", root), said && `, ${said}`);
    say(find(".tb-each", root), massWords(recipe, choice, batch));
    showBaking?.(choice, batch);
    drawButtons();
    showLines(recipe, batch.shown);
    for (const place of all("[data-tins]")) say(place, cake);
    for (const note of all(".tb-beaten")) note.hidden = !batch.beaten && !choice.exact;
    return cake;
  }

  const chose = () => {
    const cake = show();
    save(slug, choice);
    announce(words.forTin(cake));
  };
  controls(root, recipe, choice, chose);
  eggSwitch(find(".tb-eggs .tb-switch", root), choice, chose);
  onMeasure(show);
  watchAddress();
  root.classList.add("tb-live");
  show();
}

// What a factor to a tin goes by; empty where no tin was asked for.
const wayOf = tin => (tin ? (tin.by_brim ? words.byBrim : words.byDepth) : "");

function showLines(recipe, shown) {
  for (const place of all("[data-line]")) {
    const { line, share } = place.dataset;
    const [text, unit] = spelt(recipe, Number(line), shown, Number(share || 1));
    put(place, text, unit, withUnit);
    // a single one of something, or less of it: no s
    const s = find(".tb-s", place.parentElement);
    if (s) s.hidden = /^(1|[^\d ])$/.test(text);
  }
}

function eggSwitch(group, choice, chose) {
  if (!group) return;
  const press = () => pressOne(group, choice.exact ? "exact" : "whole");
  group.addEventListener("click", event => {
    const { value } = event.target.dataset;
    if (!value) return;
    choice.exact = value === "exact";
    press();
    chose();
  });
  press();
}
