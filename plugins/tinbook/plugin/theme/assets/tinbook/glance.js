// Tins at a glance: from which tin, to which, in two touches. The matrix is the control.
import { asked, tell } from "./address.js";
import { announce, find, grouped, make } from "./dom.js";
import { tinsOf } from "./embedded.js";
import { read, write } from "./keep.js";
import { matrix } from "./matrix.js";
import { glance as words } from "./page_words.js";
import { plan } from "./plan.js";
import { shownFactor, wholeEggs } from "./rounding.js";
import { fixed, tinWords } from "./spell.js";

const EGGS = [3, 4, 5, 6, 8, 10];
const SAID_EGGS = 4;
const WIDEST_EM = 5;

const become = (eggs, factor) => wholeEggs(eggs, factor).count;
const eggWords = factor => words.eggsBecome(SAID_EGGS, become(SAID_EGGS, factor));
const factorText = factor => fixed(shownFactor(factor), 2);

export function glance() {
  const root = find("#tb-glance");
  const tins = tinsOf();
  if (!root || !tins) return;
  const chosen = firstChoice(tins);
  const selects = {
    from: tinSelect(tins, name => choose("from", name)),
    to: tinSelect(tins, name => choose("to", name)),
  };
  const answer = make("div", { class: "tb-answer" });
  root.append(make("label", {}, words.from, selects.from), make("label", {}, words.to, selects.to), answer);
  root.hidden = false;
  const mark = matrix(tins, {
    from: name => choose("from", name),
    to: name => choose("to", name),
    both: (from, to) => {
      chosen.from = byName(tins, from);
      choose("to", to);
    },
  });

  function show() {
    const { from, to } = chosen;
    selects.from.value = from.name;
    selects.to.value = to.name;
    answer.replaceChildren(...answerTo(from, to));
    mark(from.name, to.name);
  }

  function choose(end, name) {
    chosen[end] = byName(tins, name);
    show();
    const names = { from: chosen.from.name, to: chosen.to.name };
    write("glance", names);
    tell(names);
    const factor = chosen.to.ml / chosen.from.ml;
    announce(`${names.from}, ${names.to}: ${words.by(factorText(factor))}. ${eggWords(factor)}`);
  }
  show();
}

const byName = (tins, name) => tins.find(tin => tin.name === name);

// From the address, else from memory, else tins of the house.
function firstChoice(tins) {
  const address = asked();
  const kept = read("glance", {});
  const known = end => byName(tins, address.get(end)) || byName(tins, kept[end]);
  const from = known("from") || tins.find(tin => tin.owned) || tins[0];
  const to = known("to") || tins.find(tin => tin.owned && tin !== from) || tins[1];
  return { from, to };
}

function tinSelect(tins, choose) {
  const select = make("select", { onchange: () => choose(select.value) });
  const text = tin => tinWords(tin.name) + (tin.inches ? ` (${tinWords(tin.inches)})` : "");
  const group = label => make("optgroup", { label });
  select.append(...grouped(tins, group, tin => make("option", { value: tin.name }, text(tin))));
  return select;
}

function answerTo(from, to) {
  const factor = to.ml / from.ml;
  const scale = WIDEST_EM / Math.max(from.width_mm, from.length_mm, to.width_mm, to.length_mm);
  const near = to.near ? `${tinWords(to.near)}, ${words.by(fixed(to.near_factor, 2))}` : words.none;
  return [
    make("div", { class: "tb-overlay" }, plan(to, scale, "em", " tb-to"), plan(from, scale, "em", " tb-from")),
    make("output", { class: "tb-big" }, words.by(""), make("b", {}, factorText(factor))),
    make("p", { class: "tb-become" }, eggWords(factor)),
    make(
      "div",
      { class: "tb-facts" },
      eggLadder(factor),
      fact(words.full, `${from.brim} ${words.becomes} ${to.brim}`),
      fact(words.nearest(tinWords(to.name)), near),
    ),
  ];
}

const fact = (name, text) => make("p", {}, make("b", {}, name), make("br"), text);

function eggLadder(factor) {
  const row = (name, counts) =>
    make("tr", {}, make("th", { scope: "row" }, name), ...counts.map(count => make("td", {}, String(count))));
  const becoming = EGGS.map(eggs => become(eggs, factor));
  return make("table", { class: "tb-table tb-ladder" }, row(words.eggs, EGGS), row(words.becomes, becoming));
}
