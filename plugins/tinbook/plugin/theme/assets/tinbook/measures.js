// The small sums of a bake: how many, how much to mix, what to multiply by. The same as engine/pieces.py.

import { find, json, make } from "./dom.js";
import { read, write } from "./keep.js";
import { fixed, number, withUnit } from "./spell.js";
import { halfUp, wholeEggs } from "./sums.js";

const GRAIN = 1e-9;
const words = {
  many: "How many",
  batter: "Batter, g",
  each: "One weighs, g",
  mix: "How much to mix",
  count: "How many",
  left: "From what is left",
  asks: "The recipe asks",
  there: "There is left",
  eggs: "Eggs in it",
  times: factor => `× ${factor}`,
  met: (low, high) => (low === high ? "" : `${low} to ${high}, by how clean the bowl is`),
  over: grams => `${withUnit(number(grams), "g")} left over`,
  baked: grams => `about ${withUnit(number(grams), "g")} each when baked`,
  become: (count, off) => `${count} ${count === 1 ? "egg" : "eggs"}${off ? `, ${off} % off` : ""}`,
  none: "Write figures above nought.",
};

export function piecesFrom(batter, each, lost) {
  const out = batter * (1 - lost),
    count = Math.floor(out / each + GRAIN);
  return { count, left: Math.max(0, out - count * each) };
}
export const batterFor = (count, each, lost) => (count * each) / (1 - lost);

// A comma is a point to some; nothing, a word or nought is no figure.
export const figure = text => {
  const value = Number(text.trim().replace(",", "."));
  return value > 0 && value < 1e6 ? value : null;
};

function sum(name, title, fields, answer) {
  const kept = read(`sum ${name}`, {}),
    inputs = {},
    out = make("output", { class: "tb-sum" });
  const row = make(
    "div",
    { class: "tb-any" },
    ...fields.map(([key, label, usual]) => {
      inputs[key] = make("input", {
        type: "text",
        inputmode: "decimal",
        autocomplete: "off",
        oninput: () => show(true),
      });
      inputs[key].value = kept[key] || usual;
      return make("label", {}, label, inputs[key]);
    }),
  );
  function show(told) {
    const texts = Object.fromEntries(fields.map(([key]) => [key, inputs[key].value]));
    const values = fields.map(([key]) => figure(texts[key]));
    const [big, ...small] = values.includes(null) ? ["", words.none] : answer(...values);
    out.replaceChildren(make("b", {}, big), ...small.filter(Boolean).map(text => make("span", {}, text)));
    if (told) write(`sum ${name}`, texts);
  }
  show(false);
  return make("div", {}, make("h3", {}, title), row, out);
}

export function small() {
  const holder = find("#tb-sums"),
    shares = json("tb-small");
  if (!holder || !shares) return;
  holder.append(
    sum(
      "many",
      words.many,
      [
        ["batter", words.batter, "1200"],
        ["each", words.each, "45"],
      ],
      (batter, each) => {
        const { count, left } = piecesFrom(batter, each, shares.lost);
        const [low, high] = [shares.lost_high, shares.lost_low].map(lost => piecesFrom(batter, each, lost).count);
        return [
          number(count),
          words.met(low, high),
          words.over(halfUp(left, 1)),
          words.baked(halfUp(each * (1 - shares.off), 1)),
        ];
      },
    ),
    sum(
      "mix",
      words.mix,
      [
        ["count", words.count, "24"],
        ["each", words.each, "45"],
      ],
      (count, each) => [withUnit(number(halfUp(batterFor(count, each, shares.lost), 1)), "g")],
    ),
    sum(
      "left",
      words.left,
      [
        ["asks", words.asks, "340"],
        ["there", words.there, "250"],
        ["eggs", words.eggs, "4"],
      ],
      (asks, there, eggs) => {
        const whole = wholeEggs(eggs, there / asks);
        return [
          words.times(fixed(halfUp(there / asks, 0.01), 2)),
          words.become(whole.count, number(halfUp(Math.abs(whole.off) * 100, 0.1))),
        ];
      },
    ),
  );
  holder.hidden = false;
}
small();
