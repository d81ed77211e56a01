// What was chosen for a mixture: from the address, or from memory, or as written.
import { asked, isAsked, tell } from "./address.js";
import { read, write } from "./keep.js";

export function load(slug, recipe) {
  const choice = isAsked() ? fromAddress(recipe) : read(`bench ${slug}`, null);
  return isSound(choice, recipe) ? choice : { tin: recipe.tin, count: recipe.count, exact: false };
}

export function save(slug, choice) {
  write(`bench ${slug}`, choice);
  const { any, tin, grams, count, exact, times, look, done } = choice;
  tell({
    ...(any || (tin ? { tin } : {})),
    ...(grams ? { grams } : { count }),
    ...(exact ? { eggs: "exact" } : {}),
    ...(times ? { times, ...(look ? { look, done } : {}) } : {}),
  });
}

function fromAddress(recipe) {
  const address = asked();
  const amountOf = name => Number(address.get(name));
  const choice = { count: Number(address.get("count") || recipe.count), exact: address.get("eggs") === "exact" };
  const grams = amountOf("grams");
  if (grams && !recipe.tins.length) return { ...choice, tin: "", grams, count: grams / recipe.makes_g };
  if (address.get("ml")) return { ...choice, any: { ml: amountOf("ml") } };
  const shape = address.get("shape");
  if (shape) return { ...choice, any: { shape, width: amountOf("width"), length: amountOf("length") } };
  return { ...choice, ...tierOf(address), tin: address.get("tin") || recipe.tin };
}

// A tier of a cake: how many times the recipe it takes, when to look at it first, how long it is likely to bake.
function tierOf(address) {
  const [times, look, done] = ["times", "look", "done"].map(name => address.get(name));
  if (!times) return {};
  return { times: Number(times), ...(look && /^\d+(–\d+)?$/.test(done) ? { look: Number(look), done } : {}) };
}

const between = (value, low, high) => typeof value === "number" && value >= low && value <= high;

// An address or a memory may come from an earlier version of the book: only what still makes sense counts.
function isSound(choice, recipe) {
  const inTins = recipe.tins.length > 0;
  if (!choice || !between(choice.count, inTins ? 1 : 0.001, 999)) return false;
  if (inTins && !Number.isInteger(choice.count)) return false;
  if ("times" in choice && !(inTins && between(choice.times, 0.001, 999))) return false;
  if (choice.any) return isSoundAny(choice.any, recipe);
  return !inTins || recipe.tins.some(tin => tin.name === choice.tin);
}

export function isSoundAny(any, recipe) {
  if ("ml" in any) return between(any.ml, 20, 50000);
  return Object.hasOwn(recipe.shapes, any.shape) && between(any.width, 50, 1000) && between(any.length, 50, 1000);
}

// An address typed in while the page is open counts like one the page was opened with.
export function watchAddress() {
  window.addEventListener("hashchange", () => {
    if (isAsked()) location.reload();
  });
}
