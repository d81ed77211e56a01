// Tins at a glance: from which tin, to which, in two touches. The answer stands in the page; here its figures change.
import { asked, tell } from "./address.js";
import { all, announce, find, make } from "./dom.js";
import { tinsOf } from "./embedded.js";
import { grouped } from "./grouped.js";
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
const factorText = factor => fixed(shownFactor(factor), 2);
const byName = (tins, name) => tins.find(tin => tin.name === name);

export function glance() {
  const root = find("#tb-glance");
  const tins = tinsOf();
  if (!root || !tins || isElsewhere(root, tins)) return;
  const chosen = firstChoice(root, tins);
  const selects = {
    from: tinSelect(root, "from", tins, name => choose("from", name)),
    to: tinSelect(root, "to", tins, name => choose("to", name)),
  };
  const mark = matrix({
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
    answer(root, from, to);
    mark(from.name, to.name);
  }

  function choose(end, name) {
    chosen[end] = byName(tins, name);
    show();
    const { from, to } = chosen;
    const names = { from: from.name, to: to.name };
    write("glance", names);
    tell(names);
    const factor = to.ml / from.ml;
    const eggs = words.eggsBecome(SAID_EGGS, become(SAID_EGGS, factor));
    announce(`${from.called}, ${to.called}: ${words.by(factorText(factor))}. ${eggs}`);
  }
  // the same page, asked for other tins
  window.addEventListener("hashchange", () => {
    if (isElsewhere(root, tins)) return;
    Object.assign(chosen, firstChoice(root, tins));
    show();
  });
  show();
}

// An address that asks for a tin the house does not own is answered where all tins are.
function isElsewhere({ dataset }, tins) {
  const names = ["from", "to"].map(end => asked().get(end)).filter(Boolean);
  if (!dataset.all || names.every(name => byName(tins, name))) return false;
  location.replace(dataset.all + location.hash);
  return true;
}

// From the address, or from memory, or as it stands in the page.
function firstChoice({ dataset }, tins) {
  const address = asked();
  const kept = read("glance", {});
  const known = end => [address.get(end), kept[end], dataset[end]].map(name => byName(tins, name)).find(Boolean);
  return { from: known("from"), to: known("to") };
}

// In the place of a tin's name, the choice of all names.
function tinSelect(root, end, tins, choose) {
  const select = make("select", { "aria-label": words[end], onchange: () => choose(select.value) });
  const text = tin => tin.called + (tin.inches ? ` (${tin.inches})` : "");
  const group = label => make("optgroup", { label });
  select.append(...grouped(tins, group, tin => make("option", { value: tin.name }, text(tin))));
  find(`[data-told="${end}"]`, root).replaceWith(select);
  return select;
}

function answer(root, from, to) {
  const factor = to.ml / from.ml;
  const scale = WIDEST_EM / Math.max(from.width_mm, from.length_mm, to.width_mm, to.length_mm);
  find(".tb-overlay", root).replaceChildren(plan(to, scale, "em", " tb-to"), plan(from, scale, "em", " tb-from"));
  const told = {
    factor: factorText(factor),
    "brim-from": from.brim,
    "brim-to": to.brim,
    name: to.called,
    near: to.near ? `${tinWords(to.near)}, ${words.by(fixed(to.near_factor, 2))}` : words.none,
  };
  for (const [key, text] of Object.entries(told)) find(`[data-told="${key}"]`, root).textContent = text;
  for (const eggs of EGGS) {
    for (const place of all(`[data-told="become-${eggs}"]`, root)) place.textContent = String(become(eggs, factor));
  }
  const alike = from.share ? "share" : "depth";
  const by = from.share === to.share ? alike : "both";
  for (const each of all("[data-by]", root)) each.hidden = each.dataset.by !== by;
}
