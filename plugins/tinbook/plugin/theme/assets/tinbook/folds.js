// On paper nothing can be unfolded: what is folded opens for it, and closes again.
import { all } from "./dom.js";

export function folds() {
  let opened = [];
  const open = () => {
    const closed = all("details:not([open])");
    for (const fold of closed) fold.open = true;
    opened = [...opened, ...closed];
  };
  const close = () => {
    for (const fold of opened) fold.open = false;
    opened = [];
  };
  window.addEventListener("beforeprint", open);
  window.addEventListener("afterprint", close);
  matchMedia("print").addEventListener("change", event => (event.matches ? open : close)());
}
