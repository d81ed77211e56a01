// What a page hands over, read here alone. To be short, what is alike comes by its place: where it is read it gets its
// names, by a function for each key.

// Rows come under heads, so that names are not told again for each.
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

// A tin that width and length do not tell.
const drawn = ([width, height, ...paths]) => ({ width, height, paths });

const RECIPE = {
  drawn,
  // the raising agent kept in tins so wide
  raising: points => points.map(([width, kept]) => ({ width, kept })),
  // how many tenths as wide and as deep as the bake nearest to it each tin is
  // when each tin is looked at first, and when it is done
  times: tins => tins.map(([minutes, span]) => ({ minutes, span })),
  far: tins => tins.map(([wide, deep, bake]) => ({ wide, deep, bake })),
};

export const recipeOf = page => handedOver("tb-recipe", RECIPE, page);
export const tinsOf = page => handedOver("tb-tins", { drawn }, page);
