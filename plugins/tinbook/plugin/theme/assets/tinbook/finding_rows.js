// The answer as shown: how the words were understood, the kinds in it, a row for each find.
import { make } from "./dom.js";
import { small } from "./finding_query.js";
import { sign } from "./finding_signs.js";
import { finding as words } from "./finding_words.js";

// Text with the words that were found in overprint.
function marked(text, terms) {
  return text.split(/([\p{L}\p{N}'’]+)/u).map((piece, place) => {
    const isFound = place % 2 === 1 && terms.has(small(piece));
    return isFound ? make("mark", {}, piece) : piece;
  });
}

export function row({ kind, title, second, figure, under, tin, terms }, url) {
  const value = make("span", { class: "tb-value" }, make("b", {}, figure), under && make("small", {}, under));
  return make(
    "li",
    { "data-kind": kind },
    make(
      "a",
      { href: url },
      make("span", { class: "tb-kind" }, make("span", {}, words.one[kind]), sign(kind, tin)),
      make(
        "span",
        { class: "tb-what" },
        make("b", {}, ...marked(title, terms)),
        make("small", {}, ...marked(second, terms)),
      ),
      figure ? value : null,
    ),
  );
}

const groupOf = kind => (kind === "section" ? "page" : kind);
export const ofKind = (rows, kind) => (kind ? rows.filter(each => groupOf(each.kind) === kind) : rows);

// A button for each kind among the rows, with how many there are; the one that is shown is pressed.
export function kinds(rows, shown, choose) {
  const present = Object.keys(words.many).filter(kind => ofKind(rows, kind).length);
  if (present.length < 2) return [];
  const button = (kind, name) => {
    const count = make("i", {}, String(ofKind(rows, kind).length));
    return make("button", { "aria-pressed": String(kind === shown), onclick: () => choose(kind) }, `${name} `, count);
  };
  return [button("", words.all), ...present.map(kind => button(kind, words.many[kind]))];
}

// How the words were understood, with a way back to the words as typed.
export function meaning({ mended, size, tin, rows }, typed, asTyped) {
  const said = [];
  if (mended) {
    said.push(make("span", {}, `${words.showing} `, make("b", {}, mended)));
    said.push(make("button", { class: "tb-link", onclick: asTyped }, words.asTyped(typed)));
  }
  if (tin?.bench && rows.length) said.push(make("span", { class: "tb-as-tin" }, words.asTin(size, tin.title)));
  if (!rows.length) said.push(make("span", {}, words.nothing(typed)));
  return said;
}
