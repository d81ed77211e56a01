// The form for a tin that is in no table: by its size, or by the water it holds.
import { isSoundAny } from "./chosen.js";
import { make } from "./dom.js";
import { panel as words } from "./late_words.js";
import { inTwoSizes } from "./sums.js";

const MM = { cm: 10, inches: 25.4 };

const box = () => make("input", { type: "number", inputmode: "decimal", min: "0", step: "any" });
const option = (value, text) => make("option", { value }, text);
const field = (label, input) => make("label", {}, label, input);

export function anyForm(recipe, pick) {
  const shape = make("select", {}, ...Object.keys(recipe.shapes).map(name => option(name, name)));
  const unit = make("select", {}, ...Object.keys(MM).map(name => option(name, words.units[name])));
  const width = box();
  const length = box();
  const water = box();
  const lengthField = field(words.fields.length, length);
  const wrong = make("p", { class: "tb-wrong", role: "alert" });

  const showLength = () => {
    lengthField.hidden = !inTwoSizes(shape.value);
  };
  shape.addEventListener("change", showLength);
  showLength();

  // a trade length is as long as the house's tins are sold; inches make tenths that floats cannot hold
  const mm = input => {
    const number = Number(input.value);
    return recipe.named[unit.value]?.[number] ?? Number((number * MM[unit.value]).toFixed(3));
  };
  const written = () =>
    water.value
      ? { ml: Number(water.value) }
      : { shape: shape.value, width: mm(width), length: mm(lengthField.hidden ? width : length) };
  const onsubmit = event => {
    event.preventDefault();
    const any = written();
    const sound = isSoundAny(any, recipe);
    wrong.textContent = sound ? "" : words.wrong;
    if (sound) pick(any);
  };
  return make(
    "form",
    { class: "tb-any", novalidate: true, onsubmit },
    field(words.fields.shape, shape),
    field(words.fields.width, width),
    lengthField,
    field(words.fields.unit, unit),
    field(words.water, water),
    make("button", { type: "submit", class: "tb-button" }, words.show),
    wrong,
  );
}
