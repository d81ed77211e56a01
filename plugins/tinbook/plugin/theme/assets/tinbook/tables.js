// The tables of a mixture in the measure chosen.
import { kept } from "./sums.js";
import { all, json } from "./dom.js";
import { measured, onMeasure } from "./measure.js";
import { withUnit } from "./spell.js";

// A row carries its factor. What is counted stays; grams come back as they were written.
export function tables() {
  const recipe = json("tb-recipe"), rows = all("tr[data-factor]");
  if (!recipe || !rows.length) return;
  const cells = rows.map(row => recipe.lines.map((_, at) => row.cells[at + 1]));
  const grams = cells.map(row => row.map(cell => cell.textContent));
  const show = () => rows.forEach((row, index) => {
    const keep = kept(recipe.raising, Number(row.dataset.width));
    recipe.lines.forEach((line, at) => {
      const factor = Number(row.dataset.factor) * (line.raises ? keep : 1);
      const got = line.unit === "" ? null : measured(recipe, line, factor);
      cells[index][at].textContent = got ? withUnit(...got) : grams[index][at];
    });
  });
  onMeasure(show);
  show();
}
