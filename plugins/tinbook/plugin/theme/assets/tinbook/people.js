// A technique for more than one pair of hands: kit, materials, parts and colours multiplied.
import { asked, tell } from "./address.js";
import { all, announce, find, put } from "./dom.js";
import { handedOver } from "./embedded.js";
import { measure, measured, onMeasure } from "./measure.js";
import { technique as words } from "./page_words.js";
import { partGrams, potGrams, scales } from "./rounding.js";
import { figure, mixed, number, withUnit } from "./spell.js";
import { steps } from "./stepper.js";
import { amount } from "./sums.js";

const NAMES = { tools: tools => tools.map(([each, shared]) => ({ each, shared })) };

function spelt(kit, line, people, share) {
  const factor = (line.shared ? 1 : people) * share;
  if (line.unit === "") return [mixed(line.amount * factor), ""];
  return (line.mass_g && measured(kit, line, factor)) || [figure(amount(line, factor, kit.steps)), line.unit];
}

function showKit(kit, people) {
  for (const place of all("[data-line]")) {
    const { line, share } = place.dataset;
    const [text, unit] = spelt(kit, kit.lines[line], people, Number(share || 1));
    put(place, text, unit, withUnit);
  }
  for (const place of all("[data-tool]")) {
    const { each, shared } = kit.tools[place.dataset.tool];
    const count = each * (shared ? 1 : people);
    place.textContent = count > 1 ? words.times(count) : "";
  }
}

// Parts, paste, colours, cutters and what is not food, for every cake that stands ready.
function showParts({ steps }, people) {
  for (const place of all("[data-many]")) place.textContent = place.dataset.many * people;
  for (const place of all("[data-grams]")) place.textContent = number(partGrams(place.dataset.grams * people));
  for (const place of all("[data-pot]")) place.textContent = number(potGrams(place.dataset.pot * people));
  for (const place of all("[data-cutters]")) {
    const { cutters, shared } = place.dataset;
    const wanted = shared === undefined ? people : 1;
    const few = Number(cutters) < wanted ? words.have(cutters) : "";
    place.firstChild.textContent = wanted > 1 ? words.times(wanted) : "";
    place.lastChild.textContent = wanted < people ? words.share : few;
  }
  for (const place of all("[data-each]")) place.textContent = inedible(place.dataset, people, steps);
}

// As formats.counted spells it: `5 dowels`, `2 × cake card`.
function inedible({ each, all: shared, unit, name, several }, people, steps) {
  const exact = each * people + Number(shared);
  const count = unit === "g" || unit === "ml" ? number(scales(exact, steps)) : mixed(exact);
  return `${withUnit(count, unit)} ${unit || exact <= 1 ? name : several}`;
}

export function people() {
  const kit = handedOver("tb-kit", NAMES);
  if (!kit) return;
  const note = find(".tb-for");
  let count = Math.min(kit.most, Math.max(1, Math.round(Number(asked().get("people")) || 1)));
  const show = () => {
    showKit(kit, count);
    showParts(kit, count);
    note.hidden = count === 1;
    note.textContent = words.forPeople(count);
  };
  const set = next => {
    if (next !== undefined) {
      count = Math.min(kit.most, next);
      show();
      tell({ people: count });
      announce(words.forPeople(count));
    }
    return count;
  };
  steps(find(".tb-people .tb-stepper"), 1, 1, set);
  onMeasure(show);
  // for one, and weighed, the page says it already
  if (count > 1 || measure() !== "grams") show();
}
