// Tins at a glance: from which tin, to which, how deep. The answer stands in the page; here its figures change.
import { asked, tell } from "./address.js";
import { all, announce, find, make, pressOne } from "./dom.js";
import { tinsOf } from "./embedded.js";
import { atDepth, factorText, SAID_EGGS, sayAnswer } from "./glance_answer.js";
import { grouped } from "./grouped.js";
import { read, write } from "./keep.js";
import { matrix } from "./matrix.js";
import { glance as words } from "./page_words.js";
import { shownFactor, wholeEggs } from "./rounding.js";

const ENDS = ["from", "to"];
const DEEP = { from: "fromDeep", to: "toDeep" };
const byName = (tins, name) => tins.find(tin => tin.name === name);

export function glance() {
  const root = find("#tb-glance");
  const tins = tinsOf();
  if (!root || !tins || isElsewhere(root, tins)) return;
  const cells = all("[data-deep=from] button", root);
  const depths = cells.map(cell => cell.dataset.value);
  const usual = depths.indexOf(find("[data-deep=from] [aria-pressed=true]", root).dataset.value);
  const chosen = { depths: cells.map(cell => Number(cell.dataset.mm)), ...firstChoice(root, tins, depths, usual) };
  const selects = Object.fromEntries(
    ENDS.map(end => [end, tinSelect(root, end, tins, name => choose({ [end]: byName(tins, name) }))]),
  );
  for (const end of ENDS) {
    find(`[data-deep=${end}]`, root).addEventListener("click", ({ target }) => {
      if (target.dataset.value) choose({ [DEEP[end]]: depths.indexOf(target.dataset.value) });
    });
    find(`[data-strip=${end}]`, root)?.addEventListener("click", ({ target }) => {
      const chip = target.closest("[data-tin]");
      if (chip) choose({ [end]: byName(tins, chip.dataset.tin) });
    });
  }
  const marks = matrix({
    from: name => choose({ from: byName(tins, name) }),
    to: name => choose({ to: byName(tins, name) }),
    both: (from, to) => choose({ from: byName(tins, from), to: byName(tins, to) }),
  });
  const factorOf = (from, to) => atDepth(to, chosen.toDeep).ml / atDepth(from, chosen.fromDeep).ml;
  let figured = [usual, usual].join();

  function show() {
    for (const end of ENDS) {
      selects[end].value = chosen[end].name;
      const group = find(`[data-deep=${end}]`, root);
      pressOne(group, depths[chosen[DEEP[end]]]);
      group.classList.toggle("tb-no-depth", Boolean(chosen[end].share));
      for (const chip of all(`[data-strip=${end}] .tb-chip`, root)) {
        chip.setAttribute("aria-pressed", String(chip.dataset.tin === chosen[end].name));
      }
    }
    sayAnswer(root, chosen, factorOf(chosen.from, chosen.to));
    const now = [chosen.fromDeep, chosen.toDeep].join();
    if (now !== figured) {
      marks.figure((from, to) => {
        const factor = factorOf(byName(tins, from), byName(tins, to));
        return { text: factorText(factor, from === to), isMore: shownFactor(factor) > 1 };
      });
      figured = now;
    }
    marks.mark(chosen.from.name, chosen.to.name);
  }

  function choose(changes) {
    Object.assign(chosen, changes);
    show();
    const { from, to } = chosen;
    const told = { from: from.name, to: to.name };
    for (const end of ENDS) {
      if (chosen[DEEP[end]] !== usual) told[`${end}-deep`] = depths[chosen[DEEP[end]]];
    }
    write("glance", told);
    tell(told);
    const factor = factorOf(from, to);
    const eggs = words.eggsBecome(SAID_EGGS, wholeEggs(SAID_EGGS, factor).count);
    announce(`${from.called}, ${to.called}: ${words.by(factorText(factor, from === to))}. ${eggs}`);
  }
  // the same page, asked for other tins
  window.addEventListener("hashchange", () => {
    if (isElsewhere(root, tins)) return;
    Object.assign(chosen, firstChoice(root, tins, depths, usual));
    show();
  });
  show();
  for (const strip of all(".tb-strip", root)) {
    const chip = find("[aria-pressed=true]", strip);
    if (chip) strip.scrollLeft = chip.offsetLeft - strip.clientWidth / 2;
  }
}

// An address that asks for a tin the house does not own is answered where all tins are.
function isElsewhere({ dataset }, tins) {
  const names = ENDS.map(end => asked().get(end)).filter(Boolean);
  if (!dataset.all || names.every(name => byName(tins, name))) return false;
  location.replace(dataset.all + location.hash);
  return true;
}

// From the address, or from memory, or as it stands in the page. An address without a depth asks for the usual one.
function firstChoice({ dataset }, tins, depths, usual) {
  const address = asked();
  const kept = read("glance", {});
  const isTold = ENDS.some(end => address.get(end));
  const known = end => [address.get(end), kept[end], dataset[end]].map(name => byName(tins, name)).find(Boolean);
  const deep = end => depths.indexOf(isTold ? address.get(`${end}-deep`) : kept[`${end}-deep`]);
  const orUsual = place => (place < 0 ? usual : place);
  return { from: known("from"), to: known("to"), fromDeep: orUsual(deep("from")), toDeep: orUsual(deep("to")) };
}

// A tin of the house, in the house's own unit, which then need not be said.
function briefly({ called, inches, shape }, unit) {
  const name = unit === "in" && inches ? `${shape} ${inches}` : called;
  return name.replace(/\u00a0(cm|in)$/, "").replaceAll("\u00a0×\u00a0", "×");
}

// In the place of a tin's name, the choice of all names.
function tinSelect(root, end, tins, choose) {
  const select = make("select", { "aria-label": words[end], onchange: () => choose(select.value) });
  const both = tin => tin.called + (tin.inches ? ` (${tin.inches})` : "");
  const text = tin => (root.dataset.all ? briefly(tin, root.dataset.unit) : both(tin));
  const group = label => make("optgroup", { label });
  select.append(...grouped(tins, group, tin => make("option", { value: tin.name }, text(tin))));
  find(`[data-told="${end}"]`, root).replaceWith(select);
  return select;
}
