// What was at the bench last: told on the first page.
import { read, write } from "./keep.js";
import { all, find, make } from "./dom.js";

const MOST = 4;

// Each visit of a mixture or technique is kept, the latest first, with the choice its address carries.
export function remember() {
  const root = find("[data-slug]");
  if (!root) return;
  const keep = () => {
    const entry = { slug: root.dataset.slug, name: find("h1").firstChild.textContent.trim(), page: location.pathname + location.hash,
      left: find(".tb-this")?.textContent || "" };
    write("recent", [entry, ...read("recent", []).filter(each => each.slug !== entry.slug)].slice(0, MOST));
  };
  keep();
  window.addEventListener("pagehide", keep);
}

export function home() {
  const holder = find("#tb-recent"), entries = read("recent", []);
  if (!holder || !entries.length) return;
  const list = find(".tb-list", holder);
  list.replaceChildren(...entries.map(entry => make("li", {}, make("a", { href: entry.page },
    make("span", { class: "tb-left" }, entry.left), make("span", { class: "tb-right" }, make("b", {}, entry.name),
      make("small", {}, done(entry.slug)))))));
  holder.hidden = false;
}

const done = slug => { const ticked = read(`ticks ${slug}`, []).length; return ticked ? `${ticked} ticked` : ""; };
