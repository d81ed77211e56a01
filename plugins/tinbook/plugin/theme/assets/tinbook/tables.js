// The tables of a mixture in the measure chosen.
import { all } from "./dom.js";
import { recipeOf } from "./embedded.js";
import { measured, onMeasure } from "./measure.js";
import { withUnit } from "./spell.js";
import { raisingKept, versions } from "./sums.js";

// What is counted stays; grams come back as written.
export function tables() {
  const recipe = recipeOf();
  const rows = all("tr[data-factor], [data-eggs] tr");
  if (!recipe || !rows.length) return;
  const cells = rows.flatMap(row => {
    const { factor, width } = madeOf(recipe, row);
    const keep = raisingKept(recipe.raising, width);
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

// A row carries its factor and width, or is of the tin in the same place.
function madeOf(recipe, row) {
  const { factor, width } = row.dataset;
  if (factor) return { factor: Number(factor), width: Number(width) };
  const tin = recipe.tins[row.sectionRowIndex];
  const exact = (tin.count * tin.unit_ml) / recipe.batter_ml;
  const inWholeEggs = row.parentNode.dataset.eggs === "whole";
  return {
    factor: inWholeEggs ? versions(recipe, exact, tin.width_mm).whole.factor : exact,
    width: tin.width_mm,
  };
}
