// Sizes that are not in the page, fetched when first opened: tins the house does not own, and any of your own.
import { anyForm } from "./anytin.js";
import { make } from "./dom.js";
import { grouped } from "./grouped.js";
import { panel as words } from "./late_words.js";
import { plan } from "./plan.js";

const REM_PER_MM = 0.0095; // as pages/mixture/chips.py has it

export const panelOf = (recipe, tins, pickTin, pickAny) =>
  make("div", { class: "tb-panel" }, anyForm(recipe, pickAny), ...groups(tins, pickTin));

const groups = (tins, pick) =>
  grouped(
    tins,
    title => make("div", { class: "tb-group" }, make("span", { class: "tb-cap" }, title)),
    tin => chip(tin, pick),
  );

function chip(tin, pick) {
  const label = [tin.name, tin.inches, words.notOwned].filter(Boolean).join(", ");
  const said = { "aria-label": label, "aria-pressed": "false", onclick: () => pick(tin) };
  return make(
    "button",
    { class: "tb-chip", "data-tin": tin.name, "data-lent": true, ...said },
    plan(tin, REM_PER_MM, "rem"),
    make("b", {}, sizeOf(tin)),
  );
}

const sizeOf = tin => tin.name.replace(tin.shape, "").trim().replace(" cm", "").replace(" x ", "×");

// A touch beside it closes it; Escape does too, by `close`.
export function closes(other, close) {
  document.addEventListener("keydown", event => {
    if (event.key === "Escape" && other.open) close(other);
  });
  document.addEventListener("click", event => {
    if (other.open && event.target.isConnected && !other.contains(event.target)) other.open = false;
  });
}
