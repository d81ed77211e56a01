// What the theme's drawer leaves out for who works by keyboard: Space opens, Escape closes, and the focus comes back.
import { announce, find } from "./dom.js";

const OPENER = ".tb-contents";

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
  find("#__drawer")?.addEventListener("change", () => {
    setTimeout(() => find(OPENER)?.focus());
  });
}
