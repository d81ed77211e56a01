// The tables of a mixture in the measure chosen.
import { all, find } from "./dom.js";
import { recipeOf } from "./embedded.js";
import { measured, onMeasure } from "./measure.js";
import { withUnit } from "./spell.js";
import { raisingKept } from "./sums.js";

// What is counted stays; grams come back as written. A row carries its factor, and the width of its tin where that is
// wide enough to change the raising agent.
function tables() {
  const recipe = all(".tb-bench").length ? null : recipeOf();
  if (!recipe) return;
  const cells = all("tr[data-factor]").flatMap(row => {
    const factor = Number(row.dataset.factor);
    const keep = raisingKept(recipe.raising, Number(row.dataset.width ?? 0));
    return recipe.lines.map((line, place) => {
      const cell = row.cells[place + 1];
      return { cell, line, factor: line.raises ? factor * keep : factor, written: cell.textContent };
    });
  });
  const show = () => {
    for (const { cell, line, factor, written } of cells) {
      const chosen = line.unit === "" ? null : measured(recipe, line, factor);
      cell.textContent = chosen ? withUnit(...chosen) : written;
    }
  };
  onMeasure(show);
  show();
}

tables();
find(".tb-wall [data-act=print]")?.addEventListener("click", () => window.print());
