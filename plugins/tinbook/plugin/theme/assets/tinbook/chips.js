// The tins to choose from, drawn to one scale, those of the house first; and a tin that is in no table.
import { all, find, make } from "./dom.js";
import { number } from "./spell.js";
import { soundAny } from "./chosen.js";
import { words } from "./words.js";

const SCALE = 0.22;  // px for a mm: a 30 cm tin is 66 px wide

function plan(tin) {
  const round = ["round", "ring", "cups"].includes(tin.shape);
  const long = Math.max(tin.width_mm, tin.length_mm), short = Math.min(tin.width_mm, tin.length_mm);
  const style = `width:${Math.max(8, long * SCALE)}px;height:${Math.max(8, short * SCALE)}px`;
  return make("span", { class: `tb-plan${round ? " tb-round" : ""}${tin.shape === "ring" ? " tb-tube" : ""}`, style, "aria-hidden": "true" });
}

const size = tin => tin.name.replace(/^(round|square|rectangle|ring) /, "").replace(/ (cups|loaf)$/, "").replace(" cm", "").replace(" x ", "×");

export function stepper(label, value, step, least, set) {
  const shown = make("output", {}, String(value));
  const go = by => { const next = Math.max(least, Number((Number(set()) + by).toFixed(2))); shown.textContent = String(next); set(next); };
  return make("div", { class: "tb-stepper", role: "group", "aria-label": label },
    make("button", { type: "button", "aria-label": `${label}: ${words.less}`, onclick: () => go(-step) }, "−"),
    make("span", {}, label), make("button", { type: "button", "aria-label": `${label}: ${words.more}`, onclick: () => go(step) }, "+"));
}

function tinChips(recipe, choice, pick) {
  const strip = make("div", { class: "tb-strip", role: "group", "aria-label": words.tins });
  const written = recipe.tins.filter(tin => tin.owned || tin.name === recipe.tin);
  const groups = new Map();
  for (const tin of [...written, ...recipe.tins.filter(tin => !written.includes(tin))]) {
    if (!groups.has(tin.title)) groups.set(tin.title, make("div", { class: "tb-group" }, make("span", { class: "tb-cap" }, tin.title)));
    groups.get(tin.title).append(make("button", { type: "button", class: "tb-chip", "data-tin": tin.name, "data-lent": !tin.owned && !written.includes(tin),
      "aria-label": `${tin.name}${tin.inches ? `, ${tin.inches}` : ""}${tin.owned ? "" : `, ${words.notOwned}`}`, "aria-pressed": "false",
      onclick: () => pick(tin) }, plan(tin), make("b", {}, size(tin))));
  }
  for (const group of groups.values()) if (!find(".tb-chip:not([data-lent])", group)) group.dataset.lent = "";
  strip.append(...groups.values());
  const more = make("button", { type: "button", class: "tb-link", "aria-expanded": "false", onclick: () => {
    const open = strip.classList.toggle("tb-every");
    more.setAttribute("aria-expanded", String(open)); more.textContent = open ? words.fewer : words.all;
  } }, words.all);
  return [strip, more];
}

function anyForm(recipe, pick) {
  const field = (label, input) => make("label", {}, label, input);
  const shape = make("select", {}, ...Object.keys(recipe.shapes).map(key => make("option", { value: key }, words.shapes[key])));
  const box = () => make("input", { type: "number", inputmode: "decimal", min: "0", step: "any" });
  const width = box(), length = box(), ml = box();
  const unit = make("select", {}, make("option", { value: "10" }, "cm"), make("option", { value: "25.4" }, "inches"));
  const long = field(words.anyLength, length), wrong = make("p", { class: "tb-wrong", role: "alert" });
  const only = () => { long.hidden = shape.value !== "rectangle"; };
  shape.addEventListener("change", only); only();
  const form = make("form", { class: "tb-any", onsubmit: event => {
    event.preventDefault();
    const mm = input => Number(input.value) * Number(unit.value);
    const any = Number(ml.value) ? { ml: Number(ml.value) }
      : { shape: shape.value, width: mm(width), length: shape.value === "rectangle" ? mm(length) : mm(width) };
    wrong.textContent = soundAny(any, recipe) ? "" : words.anyWrong;
    if (!wrong.textContent) pick(any);
  } }, field(words.anyShape, shape), field(words.anyWidth, width), long, field(words.anyUnit, unit), field(words.anyMl, ml),
    make("button", { type: "submit", class: "tb-button" }, words.anyShow), wrong);
  return make("details", { class: "tb-worked tb-other" }, make("summary", {}, words.other), form);
}

// Chips, steppers and the form; `chose` is called after `choice` has changed.
export function chips(recipe, choice, chose) {
  const made = [];
  const mark = () => { for (const chip of all(".tb-chip")) chip.setAttribute("aria-pressed", String(!choice.any && chip.dataset.tin === choice.tin)); };
  const count = next => { if (next !== undefined) { choice.count = next; chose(); } return choice.count; };
  if (recipe.tins.length) {
    const pick = tin => {
      const was = recipe.tins.find(each => each.name === choice.tin);
      if (choice.any || !was || (was.holes > 1) !== (tin.holes > 1)) choice.count = tin.count;
      delete choice.any; choice.tin = tin.name; mark(); chose();
    };
    made.push(...tinChips(recipe, choice, pick));
    made.push(anyForm(recipe, any => { choice.any = any; if (!Number.isInteger(choice.count)) choice.count = 1; mark(); chose(); }));
    made.push(stepper(words.tins, choice.count, 1, 1, count));
    queueMicrotask(mark);
  } else {
    const grams = make("input", { type: "number", inputmode: "numeric", min: "1", max: "99999", onchange: () => {
      if (grams.value > 0) { choice.count = Number(grams.value) / recipe.makes_g; chose(); }
    } });
    made.push(stepper(words.batches, choice.count, 0.5, 0.5, count), make("label", { class: "tb-grams" }, words.weightLabel, grams));
  }
  return made;
}
