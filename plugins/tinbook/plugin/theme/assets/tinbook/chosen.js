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
  if (choice.grams) asked.set("grams", String(choice.grams));
  else asked.set("count", String(choice.count));
  if (choice.exact) asked.set("eggs", "exact");
  history.replaceState(history.state, "", `#for?${asked}`);
}

function fromAddress(recipe) {
  if (!location.hash.startsWith("#for?")) return null;
  const asked = new URLSearchParams(location.hash.slice(5));
  const choice = { count: Number(asked.get("count") || recipe.count), exact: asked.get("eggs") === "exact" },
    grams = Number(asked.get("grams"));
  if (grams && !recipe.tins.length) return { ...choice, tin: "", grams, count: grams / recipe.makes_g };
  if (asked.get("ml")) return { ...choice, any: { ml: Number(asked.get("ml")) } };
  if (asked.get("shape")) {
    return {
      ...choice,
      any: { shape: asked.get("shape"), width: Number(asked.get("width")), length: Number(asked.get("length")) },
    };
  }
  return { ...choice, tin: asked.get("tin") || recipe.tin };
}

const between = (value, low, high) => typeof value === "number" && value >= low && value <= high;

// An address or a memory may come from another day of the book: only what still makes sense is taken.
function sound(choice, recipe) {
  if (!choice || !between(choice.count, recipe.tins.length ? 1 : 0.001, 999)) return false;
  if (recipe.tins.length && !Number.isInteger(choice.count)) return false;
  if (choice.any) return soundAny(choice.any, recipe);
  return !recipe.tins.length || recipe.tins.some(tin => tin.name === choice.tin);
}

export function soundAny(any, recipe) {
  if ("ml" in any) return between(any.ml, 20, 50000);
  return Object.hasOwn(recipe.shapes, any.shape) && between(any.width, 50, 1000) && between(any.length, 50, 1000);
}

// An address put in by hand while the page is open counts like one the page was opened with.
export function watchAddress() {
  window.addEventListener("hashchange", () => {
    if (location.hash.startsWith("#for?")) location.reload();
  });
}
