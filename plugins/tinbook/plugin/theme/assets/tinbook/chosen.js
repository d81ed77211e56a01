// What was chosen for a mixture: from the address, else from memory, else as written.
import { read, write } from "./keep.js";

export function load(slug, recipe) {
  const address = fromAddress(recipe);
  const choice = address || read(`bench ${slug}`, null);
  return sound(choice, recipe) ? choice : written(recipe);
}

export const written = recipe => ({ tin: recipe.tin, count: recipe.count, exact: false });

export function save(slug, choice) {
  write(`bench ${slug}`, choice);
  const asked = new URLSearchParams();
  if (choice.any) {
    for (const [key, value] of Object.entries(choice.any)) asked.set(key, String(value));
  } else if (choice.tin) asked.set("tin", choice.tin);
  asked.set("count", String(choice.count));
  if (choice.exact) asked.set("eggs", "exact");
  history.replaceState(history.state, "", `#for?${asked}`);
}

function fromAddress(recipe) {
  if (!location.hash.startsWith("#for?")) return null;
  const asked = new URLSearchParams(location.hash.slice(5));
  const choice = { count: Number(asked.get("count") || 1), exact: asked.get("eggs") === "exact" };
  if (asked.get("ml")) return { ...choice, any: { ml: Number(asked.get("ml")) } };
  if (asked.get("shape")) {
    return { ...choice, any: { shape: asked.get("shape"), width: Number(asked.get("width")), length: Number(asked.get("length")) } };
  }
  return { ...choice, tin: asked.get("tin") || recipe.tin };
}

const between = (value, low, high) => typeof value === "number" && value >= low && value <= high;

// An address or a memory may come from another day of the book: only what still makes sense is taken.
function sound(choice, recipe) {
  if (!choice || !between(choice.count, recipe.tins.length ? 1 : 0.01, 999)) return false;
  if (choice.any) return soundAny(choice.any, recipe);
  return !recipe.tins.length || recipe.tins.some(tin => tin.name === choice.tin);
}

export function soundAny(any, recipe) {
  if (any.ml) return between(any.ml, 20, 50000);
  return any.shape in recipe.shapes && between(any.width, 50, 1000) && between(any.length, 50, 1000);
}
