// The tins to choose from, drawn to one scale, those of the house first; or batches and grams where there are no tins.
import { anyForm } from "./anytin.js";
import { all, find, grouped, make } from "./dom.js";
import { plan } from "./plan.js";
import { nameStepper, stepper } from "./stepper.js";
import { tins as words } from "./words.js";

const REM_PER_MM = 0.011; // a 30 cm tin is 66 px wide
const MOST_GRAMS = 99999;

// What to choose with; `chose` is called after `choice` has changed.
export const chips = (recipe, choice, chose) => (recipe.tins.length ? byTin : byWeight)(recipe, choice, chose);

function byWeight(recipe, choice, chose) {
  const onchange = () => {
    const asked = Number(grams.value);
    if (!(asked >= 1 && asked <= MOST_GRAMS)) return;
    choice.grams = asked;
    choice.count = asked / recipe.makes_g;
    chose();
  };
  const range = { min: "1", max: String(MOST_GRAMS) };
  const grams = make("input", { type: "number", inputmode: "numeric", ...range, value: choice.grams, onchange });
  const batches = stepper(words.counted.batches, 0.5, 0.5, next => {
    if (next !== undefined) {
      delete choice.grams;
      grams.value = "";
      choice.count = next;
      chose();
    }
    return choice.count;
  });
  return [batches, make("label", { class: "tb-grams" }, words.weight, grams)];
}

function byTin(recipe, choice, chose) {
  const isCups = tin => tin?.holes > 1;
  const chosenTin = () => (choice.any ? null : recipe.tins.find(tin => tin.name === choice.tin));
  const count = stepper(words.counted.tins, 1, 1, next => {
    if (next !== undefined) {
      choice.count = next;
      chose();
    }
    return choice.count;
  });
  const mark = () => {
    for (const chip of all(".tb-chip")) {
      chip.setAttribute("aria-pressed", String(!choice.any && chip.dataset.tin === choice.tin));
    }
    nameStepper(count, isCups(chosenTin()) ? words.counted.cups : words.counted.tins);
  };
  const pickTin = tin => {
    if (choice.any || isCups(chosenTin()) !== isCups(tin)) choice.count = tin.count;
    delete choice.any;
    choice.tin = tin.name;
    mark();
    chose();
  };
  const pickAny = any => {
    if (isCups(chosenTin())) choice.count = 1;
    choice.any = any;
    mark();
    chose();
  };
  const strip = tinStrip(recipe, pickTin);
  // once they stand on the page
  queueMicrotask(() => {
    mark();
    const chosen = find("[aria-pressed=true]", strip);
    if (chosen) strip.scrollLeft = chosen.offsetLeft - strip.clientWidth / 2;
  });
  return [strip, everyTinButton(strip), anyForm(recipe, pickAny), count];
}

function tinStrip(recipe, pick) {
  const ofTheHouse = tin => tin.owned || tin.name === recipe.tin;
  const inOrder = [...recipe.tins.filter(ofTheHouse), ...recipe.tins.filter(tin => !ofTheHouse(tin))];
  const groups = grouped(
    inOrder,
    title => make("div", { class: "tb-group" }, make("span", { class: "tb-cap" }, title)),
    tin => chip(tin, !ofTheHouse(tin), pick),
  );
  for (const group of groups) if (!find(".tb-chip:not([data-lent])", group)) group.dataset.lent = "";
  return make("div", { class: "tb-strip", role: "group", "aria-label": words.counted.tins }, ...groups);
}

function chip(tin, lent, pick) {
  const label = [tin.name, tin.inches, tin.owned ? "" : words.notOwned].filter(Boolean).join(", ");
  const pressed = { "aria-pressed": "false", onclick: () => pick(tin) };
  return make(
    "button",
    { class: "tb-chip", "data-tin": tin.name, "data-lent": lent, "aria-label": label, ...pressed },
    plan(tin, REM_PER_MM, "rem"),
    make("b", {}, sizeOf(tin)),
  );
}

const sizeOf = tin => tin.name.replace(tin.shape, "").trim().replace(" cm", "").replace(" x ", "×");

function everyTinButton(strip) {
  const onclick = () => {
    const open = strip.classList.toggle("tb-every");
    button.setAttribute("aria-expanded", String(open));
    button.textContent = open ? words.fewer : words.all;
  };
  const button = make("button", { class: "tb-link", "aria-expanded": "false", onclick }, words.all);
  return button;
}
