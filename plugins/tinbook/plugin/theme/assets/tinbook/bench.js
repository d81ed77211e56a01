// At the bench: a mixture for the chosen tin, its lines, its steps, its tables.

import { baking } from "./baking.js";
import { chips } from "./chips.js";
import { load, save, watchAddress } from "./chosen.js";
import { all, announce, find, json, choice as switchOf } from "./dom.js";
import { measured, onMeasure } from "./measure.js";
import { figure, fixed, mixed, number, tinWords, withUnit } from "./spell.js";
import { amount, anyTin, scales, times, versions } from "./sums.js";
import { words } from "./words.js";

// Everything the page says of one choice: also what the tests compare with Python.
export function work(recipe, choice) {
  const tin = recipe.tins.find(each => each.name === choice.tin);
  const one = choice.any ? anyTin(recipe, choice.any) : tin ? { unit_ml: tin.unit_ml, width: tin.width_mm } : null;
  const volume = one ? choice.count * one.unit_ml : 0;
  const factor = one ? volume / recipe.batter_ml : choice.count;
  const made = versions(recipe, factor, one ? one.width : 0);
  const shown = choice.exact ? made.exact : made.whole;
  const filled = recipe.batter_ml * shown.factor;
  const needed =
    tin?.room_ml && !choice.any && filled / choice.count > tin.room_ml * (1 + 1e-9)
      ? times(filled, tin.room_ml)
      : choice.count;
  return {
    ...made,
    shown,
    tin,
    needed,
    each: scales(shown.mass / needed, recipe.steps),
    mixes: recipe.bowl_g ? times(shown.mass, recipe.bowl_g) : 1,
    bakes: tin && tin.stands ? times(times(needed, tin.holes), tin.stands) : tin && tin.stands === 0 ? 0 : 1,
  };
}

// One line in the measure of the house: figure and unit. A share of what is counted is weighed.
export function spelt(recipe, index, made, share = 1) {
  const line = recipe.lines[index],
    factor = (line.raises ? made.factor * made.keep : made.factor) * share;
  const got = share === 1 ? made.amounts[index] : amount(line, factor, recipe.steps, true);
  return (got.unit !== "" && measured(recipe, line, factor)) || [figure(got), got.unit];
}

export function cakeName(recipe, choice) {
  if (choice.any?.ml) return `${choice.count} × ${words.own}, ${number(choice.any.ml)} ml`;
  if (choice.any) {
    const size = words.long.includes(choice.any.shape)
      ? `${number(choice.any.width / 10)} x ${number(choice.any.length / 10)} cm`
      : `${number(choice.any.width / 10)} cm`;
    return tinWords(`${choice.count} × ${choice.any.shape} ${size}`);
  }
  if (choice.grams) return withUnit(number(choice.grams), "g");
  if (!choice.tin) return choice.count === 1 ? "1 batch" : `${mixed(choice.count)} ${words.batches}`;
  const tin = recipe.tins.find(each => each.name === choice.tin);
  return tinWords(tin.holes > 1 ? `${choice.count} ${choice.tin}` : `${choice.count} × ${choice.tin}`);
}

function remarks(recipe, choice, made) {
  const said = [];
  if (recipe.eggs)
    said.push(
      made.beaten || choice.exact || !made.shown.offPercent
        ? words.offNone
        : (made.shown.off > 0 ? words.offMore : words.offLess)(number(Math.abs(made.shown.offPercent))),
    );
  if (made.tin && !choice.any && made.tin.holes === 1 && made.needed === choice.count)
    said.push(made.tin.least_mm ? words.least(number(made.tin.least_mm / 10)) : words.deeper);
  if (made.needed > choice.count) said.push(words.shallow(made.needed, made.tin.have));
  if (made.bakes === 0) said.push(words.wide);
  if (made.bakes > 1) said.push(words.bakes(made.bakes, made.tin.stands));
  if (made.mixes > 1) said.push(words.mixes(made.mixes));
  return said.join("; ");
}

export function bench() {
  const root = find("#tb-bench"),
    recipe = json("tb-recipe");
  if (!root || !recipe) return;
  const slug = root.dataset.slug,
    choice = load(slug, recipe),
    heat = baking(recipe, slug);
  const parts = {
    cake: find(".tb-this", root),
    say: find(".tb-remarks", root),
    factor: find(".tb-factor", root),
    each: find(".tb-each", root),
  };

  function show(told) {
    const made = work(recipe, choice),
      name = cakeName(recipe, choice);
    parts.cake.textContent = name;
    parts.factor.textContent = words.by(fixed(made.shown.factorShown, 2));
    parts.say.textContent = remarks(recipe, choice, made);
    heat(choice, made, name);
    parts.each.textContent =
      recipe.tins.length && choice.count > 1
        ? `${withUnit(number(made.each), "g")} ${made.tin?.holes > 1 ? words.inEachCup : words.inEach}`
        : `${withUnit(number(made.shown.massShown), "g")} ${words.together}`;
    for (const line of all("[data-line]")) {
      const [text, unit] = spelt(recipe, Number(line.dataset.line), made.shown, Number(line.dataset.share || 1));
      const holder = find("i", line);
      if (holder) {
        find("b", line).textContent = text;
        holder.textContent = unit;
      } else line.textContent = withUnit(text, unit);
    }
    for (const tins of all("[data-tins]")) tins.textContent = name;
    all(".tb-beaten").forEach(note => {
      note.hidden = !made.beaten && !choice.exact;
    });
    if (told) {
      save(slug, choice);
      announce(words.forTin(name));
    }
  }

  const chose = () => {
    show(true);
  };
  find(".tb-choose", root).append(...chips(recipe, choice, chose));
  if (recipe.eggs) {
    find(".tb-eggs", root).append(
      switchOf(
        words.eggs,
        [
          ["whole", words.whole],
          ["exact", words.exact],
        ],
        choice.exact ? "exact" : "whole",
        value => {
          choice.exact = value === "exact";
          chose();
        },
      ),
    );
  }
  onMeasure(() => show(false));
  watchAddress();
  root.classList.add("tb-live");
  show(false);
}
