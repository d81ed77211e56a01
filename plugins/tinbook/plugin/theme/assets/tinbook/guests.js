// From guests to tins: the form, and the sets that serve so many.
import { announce, find, make } from "./dom.js";
import { read, write } from "./keep.js";
import { guests as words } from "./page_words.js";
import { halfUp, shownFactor } from "./rounding.js";
import { fixed, withUnit } from "./spell.js";
import { answers, setsOf } from "./tiers.js";

const USUAL = "40";
const MOST_USUAL_KIND = "dessert";

const option = (value, text) => make("option", { value }, text);
const optionsOf = texts => Object.entries(texts).map(([value, text]) => option(value, text));

// The most usual portion comes first.
function kindOptions(kinds) {
  const all = kinds.map(({ name, size }, place) => ({ name, option: option(place, `${name}, ${size}`) }));
  const isUsual = kind => kind.name === MOST_USUAL_KIND;
  return [...all.filter(isUsual), ...all.filter(kind => !isUsual(kind))].map(kind => kind.option);
}

// The fields of the form by their names, as they were left.
function fieldsFor(table, changed) {
  const kept = read("guests", {});
  const select = (name, options) => {
    const field = make("select", { onchange: changed }, ...options);
    if (options.some(({ value }) => value === kept[name])) field.value = kept[name];
    return field;
  };
  const tick = name => {
    const field = make("input", { type: "checkbox", onchange: changed });
    field.checked = kept[name] === true;
    return field;
  };
  const guests = make("input", { type: "text", inputmode: "numeric", autocomplete: "off", oninput: changed });
  guests.value = kept.guests || USUAL;
  const mixtures = table.mixtures.map(({ name }, place) => option(place, name));
  return {
    guests,
    kind: select("kind", kindOptions(table.kinds)),
    shape: select("shape", optionsOf(words.shapes)),
    beside: select("beside", optionsOf(words.besides)),
    ...(mixtures.length ? { mixture: select("mixture", mixtures) } : {}),
    top: tick("top"),
    owned: tick("owned"),
  };
}

function form(fields) {
  return make(
    "div",
    { class: "tb-asked" },
    ...Object.entries(words.fields).map(([name, label]) => fields[name] && make("label", {}, label, fields[name])),
    ...Object.entries(words.ticks).map(([name, label]) => make("label", { class: "tb-tickbox" }, fields[name], label)),
  );
}

function wishOf(fields) {
  const answerIn = field => (field.type === "checkbox" ? field.checked : field.value);
  return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, answerIn(field)]));
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
  return make("li", {}, make("b", {}, String(answer.serves)), make("span", {}, setWords(table, answer), small));
}

function ask(holder, table) {
  const out = make("div", { role: "region", "aria-label": words.fields.shape });
  const fields = fieldsFor(table, () => {
    write("guests", wishOf(fields));
    show(announce);
  });
  holder.append(form(fields), out);
  show(() => {});
  holder.hidden = false;

  function show(say) {
    const wish = wishOf(fields);
    const guests = Number(wish.guests.trim());
    if (!Number.isInteger(guests) || guests < table.fewest || guests > table.most) {
      out.replaceChildren(make("p", {}, words.bad(table.fewest, table.most)));
      return;
    }
    const sets = answers(table, { ...wish, guests, kind: Number(wish.kind) });
    const mixture = table.mixtures[wish.mixture];
    const rows = sets.map(answer => row(table, mixture, wish, answer));
    out.replaceChildren(rows.length ? make("ol", { class: "tb-found" }, ...rows) : make("p", {}, words.none));
    const [best] = sets;
    say(best ? `${setWords(table, best)}, ${words.serves(best.serves, best.over)}` : words.none);
  }
}

const holder = find("#tb-ask");
const table = setsOf();
if (holder && table) ask(holder, table);
