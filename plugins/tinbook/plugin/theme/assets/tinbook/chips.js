// The tins to choose from: those of the house stand in the page, the rest and any size of your own in a panel over it.
import { all, find } from "./dom.js";
import { fetched } from "./fetched.js";
import { nameStepper, steps } from "./stepper.js";
import { tins as words } from "./words.js";

// Makes the controls in `root` work; `chose` is called after `choice` has changed.
export function chips(root, recipe, choice, chose) {
  const strip = find(".tb-strip", root);
  const other = find(".tb-other", root);
  const isCups = tin => tin?.holes > 1;
  const named = name => recipe.tins.find(tin => tin.name === name);
  // in other tins it is no longer the tier of a cake
  const noTier = () => {
    for (const name of ["times", "look", "done"]) delete choice[name];
  };
  const chosenTin = () => (choice.any ? null : named(choice.tin));
  const count = steps(find(".tb-stepper", root), 1, 1, next => {
    if (next !== undefined) {
      choice.count = next;
      noTier();
      chose();
    }
    return choice.count;
  });
  const mark = () => {
    for (const chip of all(".tb-chip", root)) {
      chip.setAttribute("aria-pressed", String(!choice.any && chip.dataset.tin === choice.tin));
    }
    other.classList.toggle("tb-chosen", !find("[aria-pressed=true]", strip));
    nameStepper(count, isCups(chosenTin()) ? words.counted.cups : words.counted.tins);
  };
  const done = () => {
    if (other.open) close(other);
    mark();
    chose();
  };
  const pickTin = tin => {
    if (choice.any || isCups(chosenTin()) !== isCups(tin)) choice.count = tin.count;
    delete choice.any;
    choice.tin = tin.name;
    noTier();
    done();
  };
  const pickAny = any => {
    if (isCups(chosenTin())) choice.count = 1;
    choice.any = any;
    noTier();
    done();
  };
  strip.addEventListener("click", event => {
    const chip = event.target.closest(".tb-chip");
    if (chip) pickTin(named(chip.dataset.tin));
  });
  panel(other, ({ panelOf, closes }) => {
    const inStrip = new Set(all(".tb-chip", strip).map(chip => chip.dataset.tin));
    const lent = recipe.tins.filter(tin => !inStrip.has(tin.name));
    other.append(panelOf(recipe, lent, pickTin, pickAny));
    closes(other, close);
    mark();
  });
  mark();
  const chosen = find("[aria-pressed=true]", strip);
  if (chosen && strip.scrollWidth > strip.clientWidth) strip.scrollLeft = chosen.offsetLeft - strip.clientWidth / 2;
}

// Filled as it is first opened.
function panel(other, fill) {
  let asked = null;
  other.addEventListener("toggle", async () => {
    if (!other.open || asked) return;
    asked = Promise.all([import("./panel.js"), fetched("link", "panel.css")]).then(([panel]) => fill(panel));
    await asked.catch(() => {
      asked = null;
    });
  });
}

function close(other) {
  other.open = false;
  find("summary", other).focus();
}
