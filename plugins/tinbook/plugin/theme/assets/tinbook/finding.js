// Find: one dialog over the page. It comes with its style, its search and the book's words when it is first asked for.
import { all, find, make } from "./dom.js";
import { fetched, home } from "./fetched.js";
import { ready } from "./finding_index.js";
import { answer } from "./finding_rank.js";
import { kinds, meaning, ofKind, row } from "./finding_rows.js";
import { finding as words } from "./finding_words.js";

const FEW = 20;
const everything = find(".tb-find")?.href;
const shown = { typed: "", exactly: false, kind: "", whole: false };
let book = null;
let opener = null;

const field = make("input", {
  id: "tb-asked",
  type: "text",
  inputmode: "search",
  enterkeyhint: "go",
  autocomplete: "off",
  autocapitalize: "off",
  spellcheck: "false",
  maxlength: "100",
  oninput: () => ask({ typed: field.value }),
});
const parts = {
  mean: make("p", { class: "tb-mean" }),
  kinds: make("div", { class: "tb-kinds", role: "group", "aria-label": words.kinds }),
  rows: make("ol", { class: "tb-found" }),
  told: make("p", { class: "tb-unseen", role: "status" }),
};
const dialog = make(
  "dialog",
  { class: "tb-finder", "aria-labelledby": "tb-finder-name", onclose: () => opener?.focus(), onkeydown: move },
  make("h2", { id: "tb-finder-name", class: "tb-unseen" }, words.name),
  make(
    "form",
    { class: "tb-ask", role: "search", onsubmit: follow },
    find(".tb-find svg")?.cloneNode(true) ?? null,
    make("label", { class: "tb-unseen", for: "tb-asked" }, words.field),
    field,
    make("button", { class: "tb-link", onclick: clear }, words.clear),
    make("button", { class: "tb-link", onclick: () => dialog.close() }, words.close),
  ),
  ...Object.values(parts),
);

async function prepare() {
  document.body.append(dialog);
  const search = Promise.all([fetched("script", "minisearch.js"), fetched("script", "find-index.js")]);
  await fetched("link", "find.css");
  search.then(
    () => {
      const start = performance.now();
      book = ready(self.tinbookIndex);
      performance.measure("tb-find ready", { start });
      delete self.tinbookIndex;
      show();
    },
    () => parts.mean.replaceChildren(`${words.broken} `, wholeBook()),
  );
}

const wholeBook = () => make("a", { href: everything }, words.everything);

function ask(change) {
  Object.assign(shown, { exactly: false, kind: "", whole: false }, change);
  show();
}

function show() {
  if (!book) return;
  const typed = shown.typed.trim();
  const found = answer(typed, book, shown.exactly);
  const rows = ofKind(found.rows, shown.kind);
  const most = shown.whole ? rows.length : FEW;
  const asTyped = () => ask({ typed, exactly: true });
  parts.mean.replaceChildren(...(typed ? meaning(found, typed, asTyped) : [`${words.hint}. `, wholeBook()]));
  parts.kinds.replaceChildren(...kinds(found.rows, shown.kind, kind => again({ kind }, parts.kinds)));
  parts.rows.replaceChildren(...rows.slice(0, most).map(each => row(each, new URL(each.url, home))));
  parts.rows.firstChild?.classList.toggle("tb-first", !shown.kind);
  if (rows.length > most) parts.rows.append(make("li", {}, more(rows.length)));
  parts.told.textContent = typed ? words.count(rows.length) : "";
}

const more = count =>
  make("button", { class: "tb-link", onclick: () => again({ whole: true }, parts.rows) }, words.more(count));

// The button that asked for this is drawn again too: the focus stays where it was.
function again(change, place) {
  const nth = all("a, button", place).indexOf(document.activeElement);
  Object.assign(shown, change);
  show();
  all("a, button", place)[nth]?.focus();
}

function clear() {
  field.value = "";
  ask({ typed: "" });
  field.focus();
}

function follow(event) {
  event.preventDefault();
  find("a", parts.rows)?.click();
}

// Up and down go from row to row, and from the first back to the words.
function move(event) {
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!step) return;
  const stops = [field, ...all("a", parts.rows)];
  const next = stops[stops.indexOf(document.activeElement) + step];
  if (!next) return;
  event.preventDefault();
  next.focus();
}

// On the page already open only the address changes, and what it chooses is chosen again.
parts.rows.addEventListener("click", event => {
  const link = event.target.closest("a");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const isHere = link.href.split("#")[0] === location.href.split("#")[0];
  dialog.close();
  if (!isHere || !link.hash.startsWith("#for?")) return;
  event.preventDefault();
  history.pushState(null, "", link.href);
  location.reload();
});

const prepared = prepare();
document.addEventListener("tb-find", async event => {
  await prepared.catch(() => {});
  if (dialog.open) return;
  opener = event.target;
  dialog.showModal();
  field.focus();
  field.select();
  show();
});
