// From guests to tins: the form, and the sets that serve that many, those of the house's own tins first.
import { all, announce, find, make } from "./dom.js";
import { read, write } from "./keep.js";
import { guests as words } from "./page_words.js";
import { halfUp, shownFactor } from "./rounding.js";
import { fixed, withUnit } from "./spell.js";
import { answers, setsOf } from "./tiers.js";

const SHOWN = 4;

// The mixture last at the bench, if a cake can be baked from it.
const atTheBench = table => {
  const baked = new Set(table.mixtures.map(({ slug }) => slug));
  return read("recent", []).find(({ slug }) => baked.has(slug))?.slug;
};

// The form as it was left; what is baked is what was last at the bench, unless another was chosen since.
function fill(form, bench) {
  const kept = read("guests", {});
  const isOption = (field, value) => [...field.options].some(option => option.value === value);
  for (const field of form.elements) {
    const value = kept[field.name];
    if (field.type === "checkbox") field.checked = value === true;
    else if (field.type === "text") field.value = value || field.value;
    else if (field.options && isOption(field, value)) field.value = value;
  }
  if (bench && kept.bench !== bench) form.elements.mixture.value = bench;
}

function wishOf(form) {
  const fields = [...form.elements].filter(field => field.name);
  const answerIn = field => (field.type === "checkbox" ? field.checked : field.value);
  return Object.fromEntries(fields.map(field => [field.name, answerIn(field)]));
}

function setWords(table, { tiers, tray, cups }) {
  const cake = tiers.map(place => table.tins[place].name).join(" + ");
  if (tray !== null) return words.and(cake, table.tins[tray].name);
  return cups ? words.and(cake, `${cups * table.cups.serves} ${table.cups.name}`) : cake;
}

// How much of the mixture the set takes.
function mixtureWords(table, mixture, { area, cups }) {
  const ml = (area * mixture.deep_mm) / 1000 + cups * (table.cups?.ml ?? 0);
  const litres = withUnit(fixed(halfUp(ml / 1000, 0.1), 1), "l");
  return words.recipes(fixed(shownFactor(ml / mixture.batter_ml), 2), litres);
}

function row(table, mixture, wish, answer) {
  const notes = [
    words.serves(answer.serves, answer.over),
    wish.top && words.kept,
    mixture && mixtureWords(table, mixture, answer),
  ];
  const small = make("small", {}, notes.filter(Boolean).join("; "));
  const tier = place => make("i", { style: `--w:${table.tins[place].width_mm}` });
  const drawn = make("span", { class: "tb-tiers", "aria-hidden": "true" }, ...answer.tiers.map(tier).reverse());
  const cake = make("span", {}, setWords(table, answer), small);
  return make("li", {}, drawn, make("b", {}, String(answer.serves)), cake);
}

function ask(holder, table) {
  const form = find("form", holder);
  const bench = atTheBench(table);
  const bad = find(".tb-bad", holder);
  const found = find("#tb-found", holder);
  const [own, other] = all("ol", found);
  fill(form, bench);
  form.addEventListener("input", () => {
    write("guests", { ...wishOf(form), bench });
    show(announce);
  });
  form.addEventListener("submit", event => event.preventDefault());
  show(() => {});

  function tell(problem) {
    bad.textContent = problem;
    bad.hidden = !problem;
    found.hidden = Boolean(problem);
  }

  function show(say) {
    const wish = wishOf(form);
    find("summary span", form).textContent = form.elements.kind.selectedOptions[0].textContent;
    const guests = Number(wish.guests.trim());
    if (!Number.isInteger(guests) || guests < table.fewest || guests > table.most) {
      tell(words.bad(table.fewest, table.most));
      return;
    }
    const sets = answers(table, { ...wish, guests, kind: Number(wish.kind) }, Number.POSITIVE_INFINITY);
    tell(sets.length ? "" : words.none);
    const mixture = table.mixtures.find(({ slug }) => slug === wish.mixture);
    const rowsOf = lent =>
      sets
        .filter(answer => answer.lent === lent)
        .slice(0, SHOWN)
        .map(answer => row(table, mixture, wish, answer));
    own.replaceChildren(...rowsOf(false));
    other.replaceChildren(...rowsOf(true));
    own.previousElementSibling.hidden = own.children.length > 0;
    other.parentElement.hidden = other.children.length === 0;
    const best = sets.find(answer => !answer.lent) || sets[0];
    say(best ? `${setWords(table, best)}, ${words.serves(best.serves, best.over)}` : words.none);
  }
}

const holder = find("#tb-ask");
const table = setsOf();
if (holder && table) ask(holder, table);
