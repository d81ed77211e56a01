// What a page passes to its scripts, read only here. To keep it short, like things come by position; here they get
// their names, by a function for each key.

// Rows come under heads, so that names are not repeated for each. Walked by hand: it takes a slow
// device half as long as a JSON.parse that asks after every value.
function named(value, names, key = "") {
  if (!value || typeof value !== "object") return value;
  if (value.heads) return value.rows.map(row => underHeads(value.heads, row, names));
  const inside = Array.isArray(value)
    ? value.map(each => named(each, names))
    : underHeads(Object.keys(value), Object.values(value), names);
  return Object.hasOwn(names, key) ? names[key](inside) : inside;
}

function underHeads(heads, row, names) {
  const made = {};
  heads.forEach((head, place) => {
    made[head] = named(row[place], names, head);
  });
  return made;
}

export function handedOver(id, names = {}, page = document) {
  const holder = page.getElementById(id);
  return holder ? named(JSON.parse(holder.textContent), names) : null;
}

// A tin that width and length do not describe.
const drawn = ([width, height, ...paths]) => ({ width, height, paths });

const RECIPE = {
  drawn,
  // the raising agent kept in tins of these widths
  raising: points => points.map(([width, kept]) => ({ width, kept })),
  // how many tenths as wide and as deep as the bake nearest to it each tin is
  // when to look at each tin first, and when it is done
  times: tins => tins.map(([minutes, span]) => ({ minutes, span })),
  far: tins => tins.map(([wide, deep, bake]) => ({ wide, deep, bake })),
};

export const recipeOf = page => handedOver("tb-recipe", RECIPE, page);
export const tinsOf = page => handedOver("tb-tins", { drawn }, page);
