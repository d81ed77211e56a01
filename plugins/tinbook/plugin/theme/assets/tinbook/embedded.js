// What a page passes to its scripts, read only here. To keep it short, like things come by position; here they get
// their names, by a function for each key.

// Rows come under heads, so that names are not repeated for each.
const naming = names => {
  const named = (key, value) => {
    if (!value) return value;
    if (value.heads) {
      return value.rows.map(row =>
        Object.fromEntries(value.heads.map((head, place) => [head, named(head, row[place])])),
      );
    }
    return Object.hasOwn(names, key) ? names[key](value) : value;
  };
  return named;
};

export function handedOver(id, names = {}, page = document) {
  const holder = page.getElementById(id);
  return holder ? JSON.parse(holder.textContent, naming(names)) : null;
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
