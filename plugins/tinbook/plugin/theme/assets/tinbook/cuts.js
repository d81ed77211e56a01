// Plans to cut by: the page shows the plan its address asks for; here the list shows which one that is.
import { all, find } from "./dom.js";

const shown = () => all(".tb-cut").find(plan => plan.checkVisibility());

function mark() {
  const open = shown();
  for (const link of all(".tb-which td a")) {
    const isOpen = link.hash === `#${open?.id}`;
    link.toggleAttribute("aria-current", false);
    if (isOpen) link.setAttribute("aria-current", "true");
    link.closest("td").classList.toggle("tb-open", isOpen);
  }
}

if (find(".tb-which")) {
  window.addEventListener("hashchange", mark);
  mark();
}
