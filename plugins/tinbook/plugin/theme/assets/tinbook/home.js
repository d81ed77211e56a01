// What was at the bench last, on the first page: how much of what as a figure, then how far it has come.
import { timeOfDay } from "./clock.js";
import { find, make } from "./dom.js";
import { read } from "./keep.js";
import { home as words } from "./page_words.js";
import { isPaused, running, secondsLeft } from "./running.js";

// "2 × round 20 cm" is shown as 2 × 20, then round. Anything else stays in its own words.
function figureOf(left) {
  const [, many = "", shape, size] = left.match(/^(\d+\s×\s)?([a-z]+)\s([\d.]+)\scm$/) || [];
  if (size) return { figure: many + size, unit: "", rest: shape };
  const [, figure, unit] = left.match(/^([\d.,½¼¾⅓⅔⅛⅜⅝⅞]+)\s(g|batch|batches)$/) || [];
  return { figure, unit, rest: "" };
}

function timer(page) {
  const own = running().find(each => page.startsWith(each.page) && !isPaused(each) && secondsLeft(each) > 0);
  return own && words.till(own.name, timeOfDay(own.ends));
}

function row({ slug, name, page, left }) {
  const { figure, unit, rest } = figureOf(left);
  const count = read(`ticks ${slug}`, []).length;
  const told = [rest, count && words.ticked(count), timer(page)].filter(Boolean).join("; ");
  const figures = figure ? [make("b", { class: "tb-figure" }, figure), unit && ` ${unit}`] : [left];
  return make(
    "li",
    { class: count || timer(page) ? "tb-begun" : null },
    make(
      "a",
      { href: page },
      make("span", { class: "tb-left" }, ...figures),
      make("span", { class: "tb-right" }, make("b", {}, name), make("small", {}, told)),
    ),
  );
}

const holder = find("#tb-recent");
const visits = read("recent", []);
if (holder && visits.length) {
  find(".tb-list", holder).replaceChildren(...visits.map(row));
  holder.hidden = false;
}
