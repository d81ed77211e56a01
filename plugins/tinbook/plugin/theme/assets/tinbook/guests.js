// From guests to tins: the form, and the sets that serve so many.
import { announce, find, make } from "./dom.js";
import { read, write } from "./keep.js";
import { halfUp, shownFactor } from "./rounding.js";
import { fixed, withUnit } from "./spell.js";
import { answers, setsOf } from "./tiers.js";
import { guests as words } from "./words.js";

const USUAL = "40";
const MOST_USUAL_KIND = "dessert";

const option = (value, text) => make("option", { value }, text);
const options = texts => Object.entries(texts).map(([value, text]) => option(value, text));

// The most usual portion comes first.
function kindOptions(kinds) {
  const all = kinds.map(({ name, size }, place) => ({ name, option: option(place, `${name}, ${size}`) }));
  const isUsual = kind => kind.name === MOST_USUAL_KIND;
  return [...all.filter(isUsual), ...all.filter(kind => !isUsual(kind))].map(kind => kind.option);
}

// The fields of the form by their names, as they were left.
function fieldsFor(made, changed) {
  const kept = read("guests", {});
  const select = (name, choices) => {
    const field = make("select", { onchange: changed }, ...choices);
    if (choices.some(({ value }) => value === kept[name])) field.value = kept[name];
    return field;
  };
  const tick = name => {
    const field = make("input", { type: "checkbox", onchange: changed });
    field.checked = kept[name] === true;
    return field;
  };
  const guests = make("input", { type: "text", inputmode: "numeric", autocomplete: "off", oninput: changed });
  guests.value = kept.guests || USUAL;
  const mixtures = made.mixtures.map(({ name }, place) => option(place, name));
  return {
    guests,
    kind: select("kind", kindOptions(made.kinds)),
    shape: select("shape", options(words.cakes)),
    beside: select("beside", options(words.besides)),
    ...(mixtures.length ? { mixture: select("mixture", mixtures) } : {}),
    top: tick("top"),
    owned: tick("owned"),
  };
}

function form(fields) {
  const labelled = { guests: words.guests, kind: words.portion, shape: words.cake, beside: words.beside };
  if (fields.mixture) labelled.mixture = words.mixture;
  const ticked = { top: words.top, owned: words.owned };
  return make(
    "div",
    { class: "tb-asked" },
    ...Object.entries(labelled).map(([name, label]) => make("label", {}, label, fields[name])),
    ...Object.entries(ticked).map(([name, label]) => make("label", { class: "tb-tickbox" }, fields[name], label)),
  );
}

function wishOf(fields) {
  const answerIn = field => (field.type === "checkbox" ? field.checked : field.value);
  return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, answerIn(field)]));
}

function setWords(made, { tiers, tray, cups }) {
  const cake = tiers.map(place => made.tins[place].name).join(" + ");
  if (tray !== null) return words.and(cake, made.tins[tray].name);
  return cups ? words.and(cake, `${cups * made.cups.serves} ${made.cups.name}`) : cake;
}

// How much of the mixture the set takes.
function mixtureWords(made, mixture, { area, cups }) {
  const ml = (area * mixture.deep_mm) / 1000 + cups * (made.cups?.ml ?? 0);
  const litres = withUnit(fixed(halfUp(ml / 1000, 0.1), 1), "l");
  return words.recipes(fixed(shownFactor(ml / mixture.batter_ml), 2), litres);
}

function row(made, mixture, wish, answer) {
  const notes = [
    words.serves(answer.serves, answer.over),
    wish.top && words.kept,
    mixture && mixtureWords(made, mixture, answer),
  ];
  const small = make("small", {}, notes.filter(Boolean).join("; "));
  return make("li", {}, make("b", {}, String(answer.serves)), make("span", {}, setWords(made, answer), small));
}

function ask(holder, made) {
  const out = make("div", { role: "region", "aria-label": words.cake });
  const fields = fieldsFor(made, () => {
    write("guests", wishOf(fields));
    show(announce);
  });
  holder.append(form(fields), out);
  show(() => {});
  holder.hidden = false;

  function show(say) {
    const wish = wishOf(fields);
    const guests = Number(wish.guests.trim());
    if (!Number.isInteger(guests) || guests < made.fewest || guests > made.most) {
      out.replaceChildren(make("p", {}, words.bad(made.fewest, made.most)));
      return;
    }
    const found = answers(made, { ...wish, guests, kind: Number(wish.kind) });
    const mixture = made.mixtures[wish.mixture];
    const rows = found.map(answer => row(made, mixture, wish, answer));
    out.replaceChildren(rows.length ? make("ol", { class: "tb-found" }, ...rows) : make("p", {}, words.none));
    const [best] = found;
    say(best ? `${setWords(made, best)}, ${words.serves(best.serves, best.over)}` : words.none);
  }
}

const holder = find("#tb-ask");
const made = setsOf();
if (holder && made) ask(holder, made);
