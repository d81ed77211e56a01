// A bench or a technique that was opened from a cake: the way back to it, in the size it was left in.
import { asked } from "./address.js";
import { find, make } from "./dom.js";
import { way as words } from "./late_words.js";

export function cakeWay() {
  const slug = asked().get("cake");
  if (!slug || !/^[\p{L}\p{N}-]+$/u.test(slug)) return;
  const home = find("meta[name=tinbook]")?.content || "";
  const size = encodeURIComponent(asked().get("size") || "");
  // a book opened from a folder has files where a host has folders
  const end = /\/(?!index\.html)[^/]+\.html$/.test(location.pathname) ? ".html" : "/";
  const href = `${home}cakes/${slug}${end}#for?size=${size}`;
  (find(".tb-top") || find("h1")).after(
    make("p", { class: "tb-note tb-noprint" }, make("a", { href }, words.backToCake)),
  );
}
