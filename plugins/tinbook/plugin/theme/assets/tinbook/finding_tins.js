// The tin among the words: which it is, and what follows from it.
import { forms } from "./finding_query.js";

const WRITTEN_FOR = 8;

// A mixture's bench opens set to the tin asked for; its figure is only for the tin it is written for.
export function set(row, tin) {
  if (!tin?.bench || row.kind !== "mixture" || !row.bench) return row;
  const url = `${row.url}#for?${new URLSearchParams({ tin: tin.tin })}`;
  return { ...row, url, figure: row.tin === tin.tin ? row.figure : "" };
}

// Whether a word beside a size belongs to the tin: its shape, or a word for tin.
export const isOfTin = (word, book) =>
  word === "tin" || forms(word, book).own.some(term => book.shapes.has(term)) || book.alike.get("tin")?.includes(word);

// The tins of a size: those of the shape named, or else the usual shapes and the house's own first.
export function tinsOf({ terms, square }, words, book) {
  const sized = terms.flatMap(term => book.mini.search(term, { fields: ["names"] }).map(each => each.id));
  const shapes = new Set(words.flatMap(word => forms(word, book).own).filter(term => book.shapes.has(term)));
  if (square) shapes.add("square");
  const score = ({ title, owned }) => {
    const said = title.toLowerCase();
    return [...shapes].filter(shape => said.includes(shape)).length * 10 + (owned ? 1 : 0);
  };
  const tins = [...new Set(sized)].filter(place => book.rows[place].kind === "tin").sort((one, other) => one - other);
  const figures = terms.flatMap(term => term.match(/[\d.]+/g));
  const scored = tins.map(place => ({ place, score: score(book.rows[place]), terms: new Set(figures) }));
  const asked = shapes.size ? scored.filter(each => each.score >= 10) : scored;
  const kept = asked.length ? asked : scored;
  // the usual shapes stand first among the book's tins, so one of each score keeps its place
  return kept.sort((one, other) => plain(other, book) - plain(one, book) || other.score - one.score);
}

const plain = ({ score, place }, book) => (score >= 10 ? 2 : 0) + (book.rows[place].bench ? 1 : 0);

// What is written for a tin stands below it.
export function writtenFor(tin, book) {
  const places = book.rows.flatMap((row, place) =>
    tin && row.kind === "mixture" && row.tin === tin.tin ? [place] : [],
  );
  return places.slice(0, WRITTEN_FOR).map(place => ({ place, score: 0, terms: new Set() }));
}
