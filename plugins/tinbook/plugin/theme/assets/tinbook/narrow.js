// Lists that narrow by words and by what their rows say of themselves. Without this script nothing is hidden.
// Of a table the heads of its rows are looked through, not its figures.
// Lists of one data-narrow name go together; a row may carry data-kind, -season, -keeps, -tag and -also, values parted by |.
import { all, find, make, press } from "./dom.js";

const words = {
  field: "Words to look for",
  kind: "Kind",
  season: "Season",
  keeps: "Keeps",
  tag: "Tag",
  any: "any",
  of: (left, whole) => (left === whole ? String(whole) : `${left} of ${whole}`),
  all: "Show all",
  none: "None is left. Take a word or a choice away.",
};
const ORDER = [
  "spring",
  "summer",
  "autumn",
  "winter",
  "3 days",
  "a week",
  "a month",
  "frozen",
  "first steps",
  "steady hands",
  "practised",
];
const GROUPS = ["kind", "season", "keeps", "tag"];
// More choices than this are folded; on a phone all are, or the list would begin below the screen.
const FEW = matchMedia("(max-width: 44.9375em)").matches ? 0 : 6;

const plain = text => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
const values = (row, name) => (row.dataset[name] || "").split("|").filter(Boolean);
const identity = row => find("a", row)?.href || row;

// What a set of lists holds: [list, its heading or none, its rows].
function parts(lists) {
  return lists.map(list => {
    const outside = list.closest(".tb-scroll") || list,
      before = outside.previousElementSibling;
    return {
      outside,
      heading: lists.length > 1 && before?.matches("h2, h3") ? before : null,
      rows: all(":scope > li, :scope > tr, :scope > tbody > tr", list),
    };
  });
}

// The values of one group, if there is anything to choose between them.
function options(rows, name) {
  let found = [...new Set(rows.flatMap(row => values(row, name)))];
  // a tag of one row only is found by its words
  if (name === "tag") found = found.filter(value => rows.filter(row => values(row, name).includes(value)).length > 1);
  if (!found.some(value => rows.some(row => !values(row, name).includes(value)))) return [];
  return found.sort(
    (one, other) => ORDER.indexOf(one) - ORDER.indexOf(other) || (name === "tag" ? one.localeCompare(other) : 0),
  );
}

function narrowed(name, lists) {
  const made = parts(lists),
    rows = made.flatMap(part => part.rows),
    whole = new Set(rows.map(identity)).size;
  const hay = new Map(
    rows.map(row => [row, plain([(find("th", row) || row).textContent, ...Object.values(row.dataset)].join(" "))]),
  );
  const key = `tinbook narrow ${location.pathname} ${name}`;
  let asked = {};
  try {
    if (!location.hash) asked = JSON.parse(sessionStorage.getItem(key)) || {};
  } catch {
    /* begins anew */
  }

  const field = make("input", {
    type: "search",
    "aria-label": words.field,
    placeholder: words.field,
    autocomplete: "off",
    enterkeyhint: "done",
    oninput: () => show({ text: field.value }),
  });
  const left = make("output", { class: "tb-figure", role: "status" }),
    none = make("p", { role: "status" });
  const reset = make(
    "button",
    {
      class: "tb-button",
      onclick: () => {
        show({ text: "", kind: "", season: "", keeps: "", tag: "" });
        field.focus();
      },
    },
    words.all,
  );
  const line = (caption, ...inside) => make("div", {}, make("span", {}, caption), make("div", {}, ...inside));
  const groups = GROUPS.map(group => [group, options(rows, group)])
    .filter(([, found]) => found.length)
    .map(([group, found]) => {
      const caption = lists[0].dataset[`narrow${group[0].toUpperCase()}${group.slice(1)}`] || words[group];
      const chips = make(
        "div",
        { class: "tb-picks", role: "group", "aria-label": caption },
        ...found.map(value =>
          make(
            "button",
            {
              class: "tb-button",
              "data-value": value,
              onclick: () => {
                show({ [group]: asked[group] === value ? "" : value });
                if (said) {
                  fold.open = false;
                  said.focus();
                }
              },
            },
            value,
          ),
        ),
      );
      const said = found.length > FEW ? make("summary") : null,
        fold = said && make("details", { class: "tb-worked" }, said, chips);
      return { group, found, chips, said, line: line(caption, fold || chips) };
    });

  function show(changes) {
    asked = { ...asked, ...changes };
    try {
      sessionStorage.setItem(key, JSON.stringify(asked));
    } catch {
      /* it is not kept */
    }
    const looked = plain(asked.text || "")
      .split(/\s+/)
      .filter(Boolean);
    const fits = row =>
      looked.every(word => hay.get(row).includes(word)) &&
      groups.every(({ group, found }) => !found.includes(asked[group]) || values(row, group).includes(asked[group]));
    for (const { outside, heading, rows: inside } of made) {
      for (const row of inside) row.hidden = !fits(row);
      const empty = inside.every(row => row.hidden);
      outside.hidden = empty;
      if (heading) heading.hidden = empty;
    }
    const still = new Set(rows.filter(row => !row.hidden).map(identity)).size;
    left.textContent = words.of(still, whole);
    none.textContent = still ? "" : words.none;
    reset.hidden = still === whole;
    if (field.value !== (asked.text || "")) field.value = asked.text || "";
    for (const { group, found, chips, said } of groups) {
      press(chips, asked[group]);
      if (said) said.textContent = found.includes(asked[group]) ? asked[group] : words.any;
    }
  }

  const box = make(
    "section",
    { class: "tb-narrow tb-noprint", "aria-label": words.field },
    make("div", {}, left, make("div", { class: "tb-picks" }, field, reset)),
    ...groups.map(each => each.line),
    none,
  );
  (made[0].heading || made[0].outside).before(box);
  show({});
}

const sets = new Map();
for (const list of all("[data-narrow]"))
  sets.set(list.dataset.narrow, [...(sets.get(list.dataset.narrow) || []), list]);
for (const [name, lists] of sets) narrowed(name, lists);
