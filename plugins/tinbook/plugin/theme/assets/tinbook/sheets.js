// A list that goes on over sheets, pages of their own. It narrows once the others have been fetched; until then, and
// where they cannot be, as in a book opened from a folder, there are links to them.
import { all, find, make } from "./dom.js";
import { sheets as words } from "./page_words.js";

const LISTS = ".md-content [data-narrow]";
const headingOf = list => (list.previousElementSibling?.matches("h2") ? list.previousElementSibling : null);

// A sheet that is not this page: its links are seen from where it is.
async function fetchedFrom(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${answer.status} ${address}`);
  const sheet = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const link of all("[data-narrow] a", sheet)) link.href = new URL(link.getAttribute("href"), answer.url);
  return sheet;
}

// The rows of all sheets, in order, under one heading each.
function joined(sheets, end) {
  const whole = new Map();
  for (const list of sheets.flatMap(sheet => all(LISTS, sheet))) {
    const heading = headingOf(list);
    const name = heading?.id || "";
    const known = whole.get(name);
    if (known) {
      known.append(...list.children);
      heading?.remove();
      list.remove();
    } else {
      whole.set(name, list);
      end.before(...[heading, list].filter(Boolean));
    }
  }
  return [...whole.values()];
}

// Where the list `name` is one of several sheets: a button to fetch the others, and then `narrowed` with the whole list,
// which returns the field to type in. False where it is all on this page.
export function inSheets(name, narrowed, asked) {
  const ways = find(".tb-sheets");
  const place = all(".tb-narrow-at").find(({ dataset }) => dataset.for === name);
  if (!(ways && place)) return false;
  const said = make("p", { role: "status" });
  const button = make("button", { class: "tb-button", onclick: () => search(true) }, words.all(ways.dataset.rows));
  const box = make("div", { class: "tb-whole tb-noprint" }, button, said);

  async function search(wanted) {
    button.disabled = true;
    said.textContent = words.coming;
    try {
      const links = all("a", ways);
      const sheets = await Promise.all(links.map(link => (link.ariaCurrent ? document : fetchedFrom(link.href))));
      const end = make("span");
      ways.after(end);
      const lists = joined(sheets, end);
      for (const old of [end, ways, box, ...all(".tb-next-sheet")]) old.remove();
      const field = narrowed(name, lists);
      if (wanted) field.focus();
    } catch {
      button.remove();
      said.textContent = words.none;
    }
  }

  place.append(box);
  if (asked) search(false);
  return true;
}
