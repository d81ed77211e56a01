// The small sums of a bake: how many, how much to mix, what to multiply by.
import { find, make } from "./dom.js";
import { handedOver } from "./embedded.js";
import { read, write } from "./keep.js";
import { sums as words } from "./page_words.js";
import { batterFor, piecesFrom } from "./pieces.js";
import { halfUp, percent, shownFactor, wholeEggs } from "./rounding.js";
import { fixed, grams, number } from "./spell.js";

const MOST = 1e6;
const wholeGrams = value => grams(halfUp(value, 1));

// A comma is a point to some; an empty field, a word or nought is not a figure.
function figureOf(text) {
  const value = Number(text.trim().replace(",", "."));
  return value > 0 && value < MOST ? value : null;
}

// `fields` are the questions, with usual answers; `answer` takes their figures and returns lines, the first one large.
function sum(name, fields, answer) {
  const keys = Object.keys(fields);
  const kept = read(`sum ${name}`, {});
  const answered = () => {
    show();
    write(`sum ${name}`, Object.fromEntries(keys.map(key => [key, inputs[key].value])));
  };
  const input = () => make("input", { type: "text", inputmode: "decimal", autocomplete: "off", oninput: answered });
  const inputs = Object.fromEntries(keys.map(key => [key, input()]));
  for (const key of keys) inputs[key].value = kept[key] || fields[key];
  const out = make("output", { class: "tb-sum" });
  const show = () => {
    const figures = keys.map(key => figureOf(inputs[key].value));
    const [large, ...small] = figures.includes(null) ? ["", words.none] : answer(...figures);
    out.replaceChildren(make("b", {}, large), ...small.filter(Boolean).map(text => make("span", {}, text)));
  };
  show();
  const labels = keys.map(key => make("label", {}, words[key], inputs[key]));
  return make("div", {}, make("h3", {}, words.titles[name]), make("div", { class: "tb-any" }, ...labels), out);
}

const manySum = shares =>
  sum("many", { batter: "1200", each: number(shares.case) }, (batter, size) => {
    const { count, left } = piecesFrom(batter, size, shares.lost);
    const fewest = piecesFrom(batter, size, shares.lost_high).count;
    const most = piecesFrom(batter, size, shares.lost_low).count;
    return [
      number(count),
      fewest === most ? "" : words.byBowl(fewest, most),
      words.over(wholeGrams(left)),
      words.baked(wholeGrams(size * (1 - shares.off))),
    ];
  });

const mixSum = shares =>
  sum("mix", { count: "24", each: number(shares.case) }, (count, size) => [
    wholeGrams(batterFor(count, size, shares.lost)),
  ]);

const leftSum = () =>
  sum("left", { asks: "300", there: "250", eggs: "4" }, (asks, there, eggs) => {
    const factor = there / asks;
    const whole = wholeEggs(eggs, factor);
    const off = number(percent(Math.abs(whole.off)));
    return [words.times(fixed(shownFactor(factor), 2)), words.become(whole.count, off)];
  });

const holder = find("#tb-sums");
const shares = handedOver("tb-small");
if (holder && shares) {
  holder.append(manySum(shares), mixSum(shares), leftSum());
  holder.hidden = false;
}
