// The tables of a mixture in the measure chosen.

import { all, json } from "./dom.js";
import { measured, onMeasure } from "./measure.js";
import { withUnit } from "./spell.js";
import { kept, versions } from "./sums.js";

// A row carries its factor and width, or is of the tin in the same place. What is counted stays; grams come back as written.
export function tables() {
  const recipe = json("tb-recipe"),
    rows = all("tr[data-factor], [data-eggs] tr");
  if (!recipe || !rows.length) return;
  const cells = rows.map(row => recipe.lines.map((_, at) => row.cells[at + 1]));
  const grams = cells.map(row => row.map(cell => cell.textContent));
  const madeOf = row => {
    const { factor, width } = row.dataset,
      tin = recipe.tins[row.sectionRowIndex];
    if (factor) return [Number(factor), Number(width)];
    const exact = (tin.count * tin.unit_ml) / recipe.batter_ml;
    return [
      row.parentNode.dataset.eggs === "whole" ? versions(recipe, exact, tin.width_mm).whole.factor : exact,
      tin.width_mm,
    ];
  };
  const show = () =>
    rows.forEach((row, index) => {
      const [made, width] = madeOf(row),
        keep = kept(recipe.raising, width);
      recipe.lines.forEach((line, at) => {
        const factor = made * (line.raises ? keep : 1);
        const got = line.unit === "" ? null : measured(recipe, line, factor);
        cells[index][at].textContent = got ? withUnit(...got) : grams[index][at];
      });
    });
  onMeasure(show);
  show();
}
