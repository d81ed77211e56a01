// How much, where there are no tins: by batches, or by grams.
import { find } from "./dom.js";
import { steps } from "./stepper.js";

const MOST_GRAMS = 99999;

// Makes the controls in `root` work; `chose` is called after `choice` has changed.
export function batches(root, recipe, choice, chose) {
  const grams = find(".tb-grams input", root);
  grams.value = choice.grams ?? "";
  grams.addEventListener("change", () => {
    const asked = Number(grams.value);
    if (!(asked >= 1 && asked <= MOST_GRAMS)) return;
    choice.grams = asked;
    choice.count = asked / recipe.makes_g;
    chose();
  });
  steps(find(".tb-stepper", root), 0.5, 0.5, next => {
    if (next !== undefined) {
      delete choice.grams;
      grams.value = "";
      choice.count = next;
      chose();
    }
    return choice.count;
  });
}
