// What was at the bench last, on the first page.
import { find, make } from "./dom.js";
import { read } from "./keep.js";
import { home as words } from "./page_words.js";

function ticked(slug) {
  const count = read(`ticks ${slug}`, []).length;
  return count ? words.ticked(count) : "";
}

function row({ slug, name, page, left }) {
  const right = make("span", { class: "tb-right" }, make("b", {}, name), make("small", {}, ticked(slug)));
  return make("li", {}, make("a", { href: page }, make("span", { class: "tb-left" }, left), right));
}

const holder = find("#tb-recent");
const visits = read("recent", []);
if (holder && visits.length) {
  find(".tb-list", holder).replaceChildren(...visits.map(row));
  holder.hidden = false;
}
