// What was at the bench last, on the first page.

import { find, make } from "./dom.js";
import { read } from "./keep.js";

const done = slug => {
  const ticked = read(`ticks ${slug}`, []).length;
  return ticked ? `${ticked} ticked` : "";
};

const holder = find("#tb-recent"),
  entries = read("recent", []);
if (holder && entries.length) {
  find(".tb-list", holder).replaceChildren(
    ...entries.map(entry =>
      make(
        "li",
        {},
        make(
          "a",
          { href: entry.page },
          make("span", { class: "tb-left" }, entry.left),
          make("span", { class: "tb-right" }, make("b", {}, entry.name), make("small", {}, done(entry.slug))),
        ),
      ),
    ),
  );
  holder.hidden = false;
}
