// What the theme's menus leave out for who works by keyboard: Space opens, Escape closes, and the focus comes back.
import { announce, find } from "./dom.js";

// `first` takes the focus when the menu opens; the drawer has none.
const MENUS = [
  { menu: "#__search", opener: ".tb-find", first: ".md-search__input" },
  { menu: "#__drawer", opener: ".tb-contents", first: ".tb-contents" },
];

export function keys() {
  announce("");
  document.addEventListener("keydown", event => {
    const drawer = find("#__drawer");
    if (event.key === " " && event.target.matches("label[tabindex]")) {
      event.preventDefault();
      event.target.click();
    }
    if (event.key === "Escape" && drawer?.checked) drawer.click();
  });
  for (const { menu, opener, first } of MENUS) {
    find(menu)?.addEventListener("change", event => {
      setTimeout(() => find(event.target.checked ? first : opener)?.focus());
    });
  }
}
