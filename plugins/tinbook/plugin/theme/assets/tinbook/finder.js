// Find, asked for by its button or by "/": the dialog, its search and the book's words are fetched only then.
import { all, find } from "./dom.js";
import { fetched } from "./fetched.js";

const OPENERS = ".tb-find, .tb-seek";
let asked = null;

// If it cannot be fetched, the link leads to the list of everything, as it does without scripts.
function open(opener) {
  asked ||= fetched("script", "find.js");
  asked.then(
    () => opener.dispatchEvent(new CustomEvent("tb-find", { bubbles: true })),
    () => location.assign(opener.href),
  );
}

export function finder() {
  for (const opener of all(OPENERS)) {
    opener.setAttribute("role", "button");
    opener.setAttribute("aria-haspopup", "dialog");
  }
  document.addEventListener("click", event => {
    const opener = event.target.closest(OPENERS);
    if (!opener || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    open(opener);
  });
  document.addEventListener("keydown", event => {
    const { key, target, ctrlKey, metaKey, altKey } = event;
    const onOpener = key === " " && target.matches(OPENERS);
    const isWriting = target.closest("input, textarea, select, [contenteditable], dialog[open]");
    const slash = key === "/" && !(ctrlKey || metaKey || altKey || isWriting);
    const opener = onOpener ? target : find(OPENERS);
    if (!(onOpener || slash) || !opener) return;
    event.preventDefault();
    open(opener);
  });
}
