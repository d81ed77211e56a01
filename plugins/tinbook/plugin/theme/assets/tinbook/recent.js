// What was at the bench last is told on the first page: each visit of a mixture or technique is kept.

import { find } from "./dom.js";
import { read, write } from "./keep.js";

const MOST = 4;

// The latest first, with the choice its address carries.
export function remember() {
  const root = find("[data-slug]");
  if (!root) return;
  const keep = () => {
    const entry = {
      slug: root.dataset.slug,
      name: find("h1").firstChild.textContent.trim(),
      page: location.pathname + location.hash,
      left: find(".tb-this")?.textContent || "",
    };
    write("recent", [entry, ...read("recent", []).filter(each => each.slug !== entry.slug)].slice(0, MOST));
  };
  keep();
  window.addEventListener("pagehide", keep);
}
