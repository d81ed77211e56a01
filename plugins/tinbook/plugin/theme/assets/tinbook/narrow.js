// Lists that narrow by words and by their rows' marks. Without this script nothing is hidden.
// Lists of one data-narrow name go together; a row may carry data-kind, -season, -keeps, -tag and -also, with | between
// values.
import { all, make, pressOne } from "./dom.js";
import { choicesOf, countOf, GROUPS, memory, partsOf, plain, searchTexts, valuesOf } from "./lists.js";
import { narrow as words } from "./page_words.js";
import { inSheets } from "./sheets.js";

// More choices than this are folded.
const FEW = 6;
const NOTHING = { text: "", kind: "", season: "", keeps: "", tag: "" };

// The choices of one group, folded where there are many. `choose` is called with the value touched.
function groupOf(group, choices, caption, choose) {
  const chip = value => make("button", { class: "tb-button", "data-value": value, onclick: () => touch(value) }, value);
  const chips = make("div", { class: "tb-picks", role: "group", "aria-label": caption }, ...choices.map(chip));
  const summary = choices.length > FEW ? make("summary") : null;
  const fold = summary && make("details", { class: "tb-worked" }, summary, chips);
  const touch = value => {
    choose(value);
    if (!fold) return;
    fold.open = false;
    summary.focus();
  };
  const show = chosen => {
    pressOne(chips, chosen);
    if (summary) summary.textContent = choices.includes(chosen) ? chosen : words.any;
  };
  const line = make("div", {}, make("span", {}, caption), make("div", {}, fold || chips));
  return { group, choices, line, show };
}

// On a phone all choices are behind one button, or the list would begin below the screen.
function opener(choices) {
  const open = () => {
    const isOpen = choices.classList.toggle("tb-open");
    button.setAttribute("aria-expanded", String(isOpen));
  };
  const button = make("button", { class: "tb-button tb-opener", "aria-expanded": "false", onclick: open }, words.more);
  return button;
}

function searchField(typed) {
  const label = { "aria-label": words.field, placeholder: words.field };
  const attributes = { type: "search", ...label, autocomplete: "off", enterkeyhint: "done" };
  return make("input", { ...attributes, oninput: event => typed(event.target.value) });
}

function captionOf(list, group) {
  const own = `narrow${group[0].toUpperCase()}${group.slice(1)}`;
  return list.dataset[own] || words.groups[group];
}

function narrowed(name, lists) {
  const parts = partsOf(lists);
  const rows = parts.flatMap(part => part.rows);
  const whole = countOf(rows);
  const texts = searchTexts(rows);
  const kept = memory(name);
  let asked = kept.read();

  const field = searchField(text => ask({ text }));
  const count = make("output", { class: "tb-figure", role: "status" });
  const none = make("p", { role: "status" });
  const startAgain = () => {
    ask(NOTHING);
    field.focus();
  };
  const reset = make("button", { class: "tb-button", onclick: startAgain }, words.all);
  const groups = GROUPS.map(group => ({ group, choices: choicesOf(rows, group) }))
    .filter(({ choices }) => choices.length)
    .map(({ group, choices }) =>
      groupOf(group, choices, captionOf(lists[0], group), value =>
        ask({ [group]: asked[group] === value ? "" : value }),
      ),
    );

  function ask(changes) {
    asked = { ...asked, ...changes };
    kept.write(asked);
    hideOthers();
    const still = countOf(rows.filter(row => !row.hidden));
    count.textContent = still === whole ? String(whole) : words.of(still, whole);
    none.textContent = still ? "" : words.none;
    reset.hidden = still === whole;
    if (field.value !== (asked.text || "")) field.value = asked.text || "";
    for (const { group, show } of groups) show(asked[group]);
  }

  function hideOthers() {
    const looked = plain(asked.text || "")
      .split(/\s+/)
      .filter(Boolean);
    const isChosen = (row, { group, choices }) =>
      !choices.includes(asked[group]) || valuesOf(row, group).includes(asked[group]);
    for (const { outside, heading, rows } of parts) {
      for (const row of rows) {
        const fits = looked.every(word => texts.get(row).includes(word));
        row.hidden = !fits || !groups.every(group => isChosen(row, group));
      }
      const empty = rows.every(row => row.hidden);
      outside.hidden = empty;
      if (heading) heading.hidden = empty;
    }
  }

  const choices = make("div", { class: "tb-choices" }, ...groups.map(group => group.line));
  const open = groups.length ? opener(choices) : null;
  const first = make("div", {}, count, make("div", { class: "tb-picks" }, field, open, reset));
  const about = { class: "tb-narrow tb-noprint", "aria-label": words.field };
  const box = make("section", about, first, choices, none);
  const [{ heading, outside }] = parts;
  const place = all(".tb-narrow-at").find(({ dataset }) => dataset.for === name);
  if (place) place.append(box);
  else (heading || outside).before(box);
  ask({});
  return field;
}

const sets = new Map();
for (const list of all("[data-narrow]")) {
  const { narrow: name } = list.dataset;
  sets.set(name, [...(sets.get(name) || []), list]);
}
for (const [name, lists] of sets) {
  const asked = Object.values(memory(name).read()).some(Boolean);
  if (!inSheets(name, narrowed, asked)) narrowed(name, lists);
}
