// What was typed: its words, the tin among them, and words mended where the book has none like them.
import { stem } from "./finding_index.js";

const INCH = /(?<=\d)(?:\s*-?\s*inch(?:es)?\b|\s*["″”])/g;
const APART = /(?<=\d)\s+(?=(?:cm|mm|in|lb|oz|g|kg|ml|l)\b)/g;
const NUMBER = "\\d+(?:\\.\\d+)?";
const SIZES = new RegExp(
  `\\b(?<wide>${NUMBER})(?<first>cm|in)?\\s*(?:x|×|by)\\s*(?<long>${NUMBER})(?<unit>cm|in)?(?:\\s*(?:x|×|by)\\s*${NUMBER}(?:cm|in)?)?(?![a-z])` +
    `|\\b(?<one>${NUMBER})(?<of>cm|in)(?![a-z])|\\b(?<bare>\\d\\d?)\\b`,
);
// Next to these, a bare number is not the size of a tin.
const COUNTED = /\b(?:marks?|eggs?|guests?|people|portions?|layers?|tiers?|steps?|cups?|spoons?|lb|g|min)\b/;
const LONG = 8;

// As pages/finding/words.py splits the book's own words.
export const small = text =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['’]/g, "")
    .replace(INCH, "in")
    .replace(APART, "");
export const split = text => small(text).match(/[a-z0-9]+/g) || [];

export function read(typed, book) {
  const text = small(typed);
  const size = sizeIn(text, book);
  const rest = size ? text.replace(size.said, " ") : text;
  const words = split(rest).filter(word => !book.stops.has(word));
  return { words, size };
}

// The terms for tins of this size; empty if the book has no such tin.
function sizeIn(text, book) {
  const found = SIZES.exec(text);
  if (!found) return null;
  const { wide, first, long, unit, one, of, bare } = found.groups;
  if (bare && COUNTED.test(text)) return null;
  const units = [unit || first || of].filter(Boolean);
  const named = sizes => (units.length ? units : ["cm", "in"]).map(each => sizes + each);
  const whole = wide ? named(`${wide}x${long}`) : named(one || bare);
  const known = whole.filter(term => book.stems.get(term));
  if (known.length) return { said: found[0], terms: bare ? [known.find(likely) || known[0]] : known };
  const across = wide ? named(wide).filter(term => book.stems.get(term)) : [];
  return across.length ? { said: found[0], terms: across, square: wide === long } : null;
}

const likely = term => (term.endsWith("cm") ? Number.parseFloat(term) > 12 : Number.parseFloat(term) <= 12);

// The book's own forms of a word: itself and its endings; then words that mean the same.
export function forms(word, book) {
  const own = book.stems.get(stem(word)) || [];
  const others = [word, ...own].flatMap(each => book.alike.get(each) || []);
  // as they are: of "frosting" a frost would be left
  const alike = others.filter(each => book.stems.get(stem(each))?.includes(each));
  return { own, alike: [...new Set(alike)].filter(each => !own.includes(each)) };
}

// How many letters of a word that is only begun say something.
export const BEGUN = 3;
const begins = (word, book) => word.length >= BEGUN && book.terms.some(term => term.startsWith(word));
export const known = (word, book) => {
  const { own, alike } = forms(word, book);
  return own.length > 0 || alike.length > 0 || begins(word, book);
};

// The book's word nearest to one it does not have: one slip away, or two in a long word.
export function mended(word, book) {
  const most = word.length >= LONG ? 2 : 1;
  if (word.length < 4 || /^\d/.test(word)) return null;
  let best = null;
  for (const term of book.terms) {
    if (Math.abs(term.length - word.length) > most) continue;
    const slips = slipsBetween(word, term, most);
    if (slips > most) continue;
    const weight = slips * 10 + (term[0] === word[0] ? 0 : 5) - Math.log1p(book.mini.search(term).length);
    if (!best || weight < best.weight) best = { term, weight };
  }
  return best?.term || null;
}

// Letters added, left out or mistaken, or two that changed places.
export function slipsBetween(one, other) {
  let before = [];
  let last = Array.from({ length: other.length + 1 }, (_, place) => place);
  for (let row = 1; row <= one.length; row++) {
    const line = [row];
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1];
      line[column] = Math.min(last[column] + 1, line[column - 1] + 1, last[column - 1] + (same ? 0 : 1));
      const swapped = one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      if (swapped) line[column] = Math.min(line[column], before[column - 2] + 1);
    }
    before = last;
    last = line;
  }
  return last[other.length];
}
