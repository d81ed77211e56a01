// The tins to choose from, drawn to one scale, those of the house first; and a tin that is in no table.

import { soundAny } from "./chosen.js";
import { all, find, make, plan } from "./dom.js";
import { words } from "./words.js";

const SCALE = 0.011,
  MOST = 999; // rem for a mm: a 30 cm tin is 66 px wide

const size = tin => tin.name.replace(tin.shape, "").trim().replace(" cm", "").replace(" x ", "×");

function name(group, label) {
  const [less, shown, more] = group.children;
  shown.textContent = label;
  group.setAttribute("aria-label", label);
  less.setAttribute("aria-label", `${words.less}: ${label}`);
  more.setAttribute("aria-label", `${words.more}: ${label}`);
}

// set() tells the number, set(next) changes it. Goes by whole steps, also from a number between two.
export function stepper(label, step, least, set) {
  const go = by =>
    set(Math.min(MOST, Math.max(least, Math[by > 0 ? "floor" : "ceil"](set() / step + by * 1e-6) * step + by * step)));
  const button = (text, by) => make("button", { onclick: () => go(by) }, text);
  const group = make("div", { class: "tb-stepper", role: "group" }, button("−", -1), make("span"), button("+", 1));
  name(group, label);
  return group;
}

function tinChips(recipe, pick) {
  const strip = make("div", { class: "tb-strip", role: "group", "aria-label": words.tins });
  const written = recipe.tins.filter(tin => tin.owned || tin.name === recipe.tin);
  const groups = new Map();
  for (const tin of [...written, ...recipe.tins.filter(tin => !written.includes(tin))]) {
    if (!groups.has(tin.title))
      groups.set(tin.title, make("div", { class: "tb-group" }, make("span", { class: "tb-cap" }, tin.title)));
    groups
      .get(tin.title)
      .append(
        make(
          "button",
          {
            class: "tb-chip",
            "data-tin": tin.name,
            "data-lent": !tin.owned && !written.includes(tin),
            "aria-label": `${tin.name}${tin.inches ? `, ${tin.inches}` : ""}${tin.owned ? "" : `, ${words.notOwned}`}`,
            "aria-pressed": "false",
            onclick: () => pick(tin),
          },
          plan(tin, SCALE, "rem"),
          make("b", {}, size(tin)),
        ),
      );
  }
  for (const group of groups.values()) if (!find(".tb-chip:not([data-lent])", group)) group.dataset.lent = "";
  strip.append(...groups.values());
  const more = make(
    "button",
    {
      class: "tb-link",
      "aria-expanded": "false",
      onclick: () => {
        const open = strip.classList.toggle("tb-every");
        more.setAttribute("aria-expanded", String(open));
        more.textContent = open ? words.fewer : words.all;
      },
    },
    words.all,
  );
  return [strip, more];
}

function anyForm(recipe, pick) {
  const field = (label, input) => make("label", {}, label, input);
  const shape = make("select", {}, ...Object.keys(recipe.shapes).map(key => make("option", { value: key }, key)));
  const box = () => make("input", { type: "number", inputmode: "decimal", min: "0", step: "any" });
  const width = box(),
    length = box(),
    ml = box();
  const unit = make("select", {}, make("option", { value: "10" }, "cm"), make("option", { value: "25.4" }, "inches"));
  const long = field(words.anyLength, length),
    wrong = make("p", { class: "tb-wrong", role: "alert" });
  const only = () => {
    long.hidden = !words.long.includes(shape.value);
  };
  shape.addEventListener("change", only);
  only();
  const form = make(
    "form",
    {
      class: "tb-any",
      novalidate: true,
      onsubmit: event => {
        event.preventDefault();
        const mm = input => Number((Number(input.value) * Number(unit.value)).toFixed(3));
        const any = ml.value
          ? { ml: Number(ml.value) }
          : { shape: shape.value, width: mm(width), length: mm(long.hidden ? width : length) };
        wrong.textContent = soundAny(any, recipe) ? "" : words.anyWrong;
        if (!wrong.textContent) pick(any);
      },
    },
    field(words.anyShape, shape),
    field(words.anyWidth, width),
    long,
    field(words.anyUnit, unit),
    field(words.anyMl, ml),
    make("button", { type: "submit", class: "tb-button" }, words.anyShow),
    wrong,
  );
  return make("details", { class: "tb-worked tb-other" }, make("summary", {}, words.other), form);
}

// Chips, steppers and the form; `chose` is called after `choice` has changed.
export function chips(recipe, choice, chose) {
  if (!recipe.tins.length) {
    const grams = make("input", {
      type: "number",
      inputmode: "numeric",
      min: "1",
      max: "99999",
      value: choice.grams,
      onchange: () => {
        const asked = Number(grams.value);
        if (asked >= 1 && asked <= 99999) {
          choice.grams = asked;
          choice.count = asked / recipe.makes_g;
          chose();
        }
      },
    });
    return [
      stepper(words.batches, 0.5, 0.5, next => {
        if (next !== undefined) {
          delete choice.grams;
          grams.value = "";
          choice.count = next;
          chose();
        }
        return choice.count;
      }),
      make("label", { class: "tb-grams" }, words.weightLabel, grams),
    ];
  }
  const tinOf = () => (choice.any ? null : recipe.tins.find(each => each.name === choice.tin));
  const many = tin => tin?.holes > 1;
  const group = stepper(words.tins, 1, 1, next => {
    if (next !== undefined) {
      choice.count = next;
      chose();
    }
    return choice.count;
  });
  const mark = () => {
    for (const chip of all(".tb-chip"))
      chip.setAttribute("aria-pressed", String(!choice.any && chip.dataset.tin === choice.tin));
    name(group, many(tinOf()) ? words.cups : words.tins);
  };
  const pick = tin => {
    if (choice.any || many(tinOf()) !== many(tin)) choice.count = tin.count;
    delete choice.any;
    choice.tin = tin.name;
    mark();
    chose();
  };
  queueMicrotask(() => {
    mark();
    const strip = find(".tb-strip"),
      chosen = find("[aria-pressed=true]", strip);
    if (chosen) strip.scrollLeft = chosen.offsetLeft - strip.clientWidth / 2;
  });
  return [
    ...tinChips(recipe, pick),
    anyForm(recipe, any => {
      if (many(tinOf())) choice.count = 1;
      choice.any = any;
      mark();
      chose();
    }),
    group,
  ];
}
