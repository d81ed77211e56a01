// Tins at a glance: from which tin, to which, in two touches. The matrix is the control.

import { all, announce, find, json, make, plan } from "./dom.js";
import { told } from "./glancewords.js";
import { read, write } from "./keep.js";
import { fixed, tinWords } from "./spell.js";
import { halfUp } from "./sums.js";
import { words } from "./words.js";

const EGGS = [3, 4, 5, 6, 8, 10],
  WIDE = 5; // em of the widest plan

export const become = (eggs, factor) => Math.max(1, Math.floor(eggs * factor + 0.5 + 1e-9));

function pick(tins, label, chosen) {
  const groups = new Map(),
    select = make("select", { onchange: () => chosen(select.value) });
  for (const tin of tins) {
    if (!groups.has(tin.title)) groups.set(tin.title, make("optgroup", { label: tin.title }));
    groups
      .get(tin.title)
      .append(
        make("option", { value: tin.name }, tinWords(tin.name) + (tin.inches ? ` (${tinWords(tin.inches)})` : "")),
      );
  }
  select.append(...groups.values());
  return [make("label", {}, label, select), select];
}

export function glance() {
  const root = find("#tb-glance"),
    tins = json("tb-tins");
  if (!root || !tins) return;
  const by = name => tins.find(tin => tin.name === name);
  const state = read("glance", {});
  const asked = new URLSearchParams(location.hash.startsWith("#for?") ? location.hash.slice(5) : "");
  let from = by(asked.get("from")) || by(state.from) || tins.find(tin => tin.owned) || tins[0];
  let to = by(asked.get("to")) || by(state.to) || tins.find(tin => tin.owned && tin !== from) || tins[1];
  const answer = make("div", { class: "tb-answer" });
  const [fromLabel, fromSelect] = pick(tins, told.from, name => {
    from = by(name);
    show(true);
  });
  const [toLabel, toSelect] = pick(tins, told.to, name => {
    to = by(name);
    show(true);
  });
  root.append(fromLabel, toLabel, answer);
  root.hidden = false;

  const table = find(".tb-matrix"),
    heads = all("thead th", table).slice(1),
    lines = all("tbody tr", table);
  const names = tins.filter(tin => tin.shape === "round" || tin.shape === "square").map(tin => tin.name);
  const touch = (cell, label, act) => {
    const button = make("button", { "aria-label": label, onclick: act });
    button.append(...cell.childNodes);
    cell.append(button);
  };
  lines.forEach((row, at) =>
    touch(row.cells[0], `${told.from} ${names[at]}`, () => {
      from = by(names[at]);
      show(true);
    }),
  );
  heads.forEach((head, at) =>
    touch(head, `${told.to} ${names[at]}`, () => {
      to = by(names[at]);
      show(true);
    }),
  );
  lines.forEach((row, one) =>
    all("td", row).forEach((cell, other) =>
      cell.addEventListener("click", () => {
        from = by(names[one]);
        to = by(names[other]);
        show(true);
      }),
    ),
  );

  function show(said) {
    const factor = to.ml / from.ml,
      scale = WIDE / Math.max(from.width_mm, from.length_mm, to.width_mm, to.length_mm);
    fromSelect.value = from.name;
    toSelect.value = to.name;
    answer.replaceChildren(
      make("div", { class: "tb-overlay" }, plan(to, scale, "em", " tb-to"), plan(from, scale, "em", " tb-from")),
      make("output", { class: "tb-big" }, "× ", make("b", {}, fixed(halfUp(factor, 0.01), 2))),
      make("p", { class: "tb-become" }, told.eggsBecome(4, become(4, factor))),
      make(
        "div",
        { class: "tb-facts" },
        make(
          "table",
          { class: "tb-table tb-ladder" },
          ...[
            [words.eggs, EGGS],
            [told.becomes, EGGS.map(eggs => become(eggs, factor))],
          ].map(([name, row]) =>
            make("tr", {}, make("th", { scope: "row" }, name), ...row.map(eggs => make("td", {}, String(eggs)))),
          ),
        ),
        make("p", {}, make("b", {}, told.full), make("br"), `${from.brim} ${told.becomes} ${to.brim}`),
        make(
          "p",
          {},
          make("b", {}, told.nearest(tinWords(to.name))),
          make("br"),
          to.near ? `${tinWords(to.near)}, × ${fixed(to.near_factor, 2)}` : told.none,
        ),
      ),
    );
    lines.forEach((row, at) => {
      row.classList.toggle("tb-from", names[at] === from.name);
    });
    heads.forEach((head, at) => {
      head.classList.toggle("tb-to", names[at] === to.name);
    });
    lines.forEach((row, one) =>
      all("td", row).forEach((cell, other) => {
        cell.classList.toggle("tb-chosen", names[one] === from.name && names[other] === to.name);
      }),
    );
    if (!said) return;
    write("glance", { from: from.name, to: to.name });
    history.replaceState(history.state, "", `#for?${new URLSearchParams({ from: from.name, to: to.name })}`);
    announce(
      `${from.name}, ${to.name}: ${words.by(fixed(halfUp(factor, 0.01), 2))}. ${told.eggsBecome(4, become(4, factor))}`,
    );
  }
  show(false);
}
