// The first page says what was last at the bench: each visit to a mixture or technique is remembered.
import { find } from "./dom.js";
import { read, write } from "./keep.js";

const MOST = 4;

// The latest first, with the choice its address carries.
export function remember() {
  const root = find("[data-slug]");
  if (!root) return;
  const { slug } = root.dataset;
  const keep = () => {
    const name = find("h1").firstChild.textContent.trim();
    const left = find(".tb-this")?.textContent || "";
    const visit = { slug, name, page: location.pathname + location.hash, left };
    const earlier = read("recent", []).filter(entry => entry.slug !== slug);
    write("recent", [visit, ...earlier].slice(0, MOST));
  };
  keep();
  window.addEventListener("pagehide", keep);
}
