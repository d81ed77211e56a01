// What narrowing lists hold: their rows, the rows' marks, what there is to choose, and what was asked.
import { all, find } from "./dom.js";
import { narrow as words } from "./page_words.js";

export const GROUPS = ["kind", "season", "keeps", "tag"];

export const plain = text => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
export const valuesOf = (row, group) => (row.dataset[group] || "").split("|").filter(Boolean);

// A row in several lists counts once.
export const countOf = rows => new Set(rows.map(row => find("a", row)?.href || row)).size;

// Each list with what is hidden when it is empty: all around it, and its heading where there are several.
export function partsOf(lists) {
  return lists.map(list => {
    const outside = list.closest(".tb-scroll") || list;
    const before = outside.previousElementSibling;
    const heading = lists.length > 1 && before?.matches("h2, h3") ? before : null;
    return { outside, heading, rows: all(":scope > li, :scope > tr, :scope > tbody > tr", list) };
  });
}

// In a table, the heads of its rows are searched, not its figures.
export function searchTexts(rows) {
  const textOf = row => [(find("th", row) || row).textContent, ...Object.values(row.dataset)].join(" ");
  return new Map(rows.map(row => [row, plain(textOf(row))]));
}

// The values of one group, if there is anything to choose between them.
export function choicesOf(rows, group) {
  const rowValues = rows.map(row => valuesOf(row, group));
  // a tag on only one row is found by its words
  const least = group === "tag" ? 2 : 1;
  const values = [...new Set(rowValues.flat())].filter(
    value => rowValues.filter(own => own.includes(value)).length >= least,
  );
  const narrows = values.some(value => rowValues.some(own => !own.includes(value)));
  return narrows ? values.sort(group === "tag" ? byOrderThenName : byOrder) : [];
}

const byOrder = (one, other) => words.order.indexOf(one) - words.order.indexOf(other);
const byOrderThenName = (one, other) => byOrder(one, other) || one.localeCompare(other);

// What was asked, until the tab is closed; an address with an anchor starts afresh.
export function memory(name) {
  const key = `tinbook narrow ${location.pathname} ${name}`;
  return {
    read: () => {
      try {
        return (location.hash ? null : JSON.parse(sessionStorage.getItem(key))) || {};
      } catch {
        return {};
      }
    },
    write: asked => {
      try {
        sessionStorage.setItem(key, JSON.stringify(asked));
      } catch {
        // it is not kept
      }
    },
  };
}
