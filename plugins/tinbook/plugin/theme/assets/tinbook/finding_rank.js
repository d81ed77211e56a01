// The answer to what was typed, the best first.
import { stem } from "./finding_index.js";
import { BEGUN, forms, known, mended, read, split } from "./finding_query.js";
import { isOfTin, set, tinsOf, writtenFor } from "./finding_tins.js";

const BOOST = { title: 6, names: 5, tags: 2.5, text: 1 };
const ALIKE = 0.6;
const BEGINNING = 0.5;
const LIGHT = 0.2;
const KINDS = { step: 0.9, note: 0.8, page: 0.9, section: 0.9 };
// Kinds whose title is a whole sentence; for the others the second line says what they are for.
const SAID = ["fault", "note"];
// Kinds that are a part of something: what is found by its name alone is that thing, not all its parts.
const PARTS = ["step", "fault", "note"];

// `exactly`: without correcting what the book has no word for.
export function answer(typed, book, exactly = false) {
  const { words, size } = read(typed, book);
  const used = words.map(word => (exactly || known(word, book) ? word : mended(word, book) || word));
  const tins = size ? tinsOf(size, used, book) : [];
  const tin = tins[0] && book.rows[tins[0].place];
  const rest = tin ? used.filter(word => !isOfTin(word, book)) : used;
  const found = rest.length ? ranked(rest, book) : [];
  const few = rest.length && found.length ? tins.slice(0, 2) : tins;
  const list = rest.length ? [...found.slice(0, 1), ...few, ...found.slice(1)] : [...few, ...writtenFor(tin, book)];
  return {
    mended: used.some((word, place) => word !== words[place]) ? sentence(typed, words, used) : "",
    size: size?.said.trim().replace(/(?<=\d)(?=cm|in)/g, "\u00a0") || "",
    tin,
    rows: [...new Map(list.map(each => [each.place, each])).values()].map(each => ({
      ...each,
      ...set(book.rows[each.place], tin),
    })),
  };
}

// What was typed, with the words that were mended in their places.
function sentence(typed, words, used) {
  const mends = new Map(words.map((word, place) => [word, used[place]]));
  return typed.replace(/[\p{L}\p{N}'’]+/gu, word => {
    const mend = mends.get(word.toLowerCase());
    return mend && mend !== word.toLowerCase() ? mend : word;
  });
}

// How many of the words are where; `lit` for the light ones.
const NOTHING = { score: 0, matched: 0, titled: 0, named: 0, lit: 0, own: 0 };

function ranked(words, book) {
  const all = new Map();
  // light words help beside others, and count when they stand alone
  const heavy = words.filter(word => !book.light.has(word));
  const wanted = heavy.length || words.length;
  words.forEach((word, nth) => {
    const counts = !heavy.length || heavy.includes(word) ? 1 : 0;
    for (const { id, score, match, terms } of foundBy(word, nth === words.length - 1, book)) {
      const entry = all.get(id) || { place: id, ...NOTHING, terms: new Set() };
      const fields = new Set(Object.values(match).flat());
      entry.score += counts ? score : score * LIGHT;
      entry.matched += counts;
      entry.own += fields.has("title") || fields.has("text") ? 1 : 0;
      entry.lit += fields.has("names") || fields.has("title") ? 1 - counts : 0;
      entry.titled += fields.has("title") ? counts : 0;
      entry.named += fields.has("names") || fields.has("title") ? counts : 0;
      for (const term of terms) entry.terms.add(term);
      all.set(id, entry);
    }
  });
  const scored = [...all.values()].map(entry => ({
    ...entry,
    score: weighed(entry, wanted, words.length - wanted, book),
  }));
  const most = Math.max(0, ...scored.map(entry => entry.matched));
  return scored
    .filter(entry => entry.matched > most / 2 && (entry.own || !PARTS.includes(book.rows[entry.place].kind)))
    .sort((one, other) => other.score - one.score || one.place - other.place);
}

function weighed({ place, score, matched, titled, named, lit, terms }, wanted, lights, book) {
  const row = book.rows[place];
  const whole = titled === wanted ? 1 + wanted / Math.max(wanted, book.titleLength(place)) : 1;
  const called = named === wanted ? (lights && lit === lights ? 2.4 : 1.5) : 1;
  const line = SAID.includes(row.kind) ? `${row.title} ${row.second}` : row.second;
  const told = wanted > 1 && matched === wanted && wordsIn(line, terms) >= wanted ? 2 : 1;
  const lighted = lights ? 0.4 + (0.6 * lit) / lights : 1;
  return score * (matched / wanted) ** 2 * whole * called * told * lighted * (KINDS[row.kind] || 1);
}

// How many of the words found a line says.
const wordsIn = (line, terms) =>
  new Set(
    split(line)
      .filter(word => terms.has(word))
      .map(stem),
  ).size;

// All that a word finds; the last one typed may only have been begun.
function foundBy(word, last, book) {
  const { own, alike } = forms(word, book);
  const queries = [{ queries: own.length ? own : [word], combineWith: "OR" }];
  if (alike.length) queries.push({ queries: alike, combineWith: "OR", boost: scaled(ALIKE) });
  if ((last || !own.length) && word.length >= BEGUN) {
    queries.push({ queries: [word], prefix: true, boost: scaled(own.length ? BEGINNING : 1) });
  }
  return book.mini.search({ combineWith: "OR", queries }, { boost: BOOST });
}

const scaled = by => Object.fromEntries(Object.entries(BOOST).map(([field, boost]) => [field, boost * by]));
