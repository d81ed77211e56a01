// The index as it comes (see pages/finding/index.py), made ready to be searched.

// MiniSearch's settings when the index was made: words are split and lower-cased before it sees them.
const OPTIONS = {
  idField: "id",
  tokenize: text => text.split(" "),
  processTerm: term => term,
};

// A post of one field: its place, then steps from find to find; a negative number says how often in the last one.
function finds(post) {
  const counts = new Map();
  let place = 0;
  for (let at = 1; at < post.length; at++) {
    if (post[at] < 0) counts.set(place, -post[at]);
    else {
      place += post[at];
      counts.set(place, 1);
    }
  }
  return counts;
}

// Everything but the terms goes in as the library serialises an index. In that form a term's finds would be objects that
// it turns into maps: in a large book a third of a second for nothing. So they are passed as the maps it keeps.
function engine({ finds: rows, fields, lengths, posts }, terms) {
  const places = rows.map((_, place) => place);
  const lengthsOf = place => lengths.slice(place * fields.length, (place + 1) * fields.length);
  const sum = field => places.reduce((whole, place) => whole + lengths[place * fields.length + field], 0);
  const written = {
    documentCount: rows.length,
    nextId: rows.length,
    documentIds: { ...places },
    fieldIds: Object.fromEntries(fields.map((name, field) => [name, field])),
    fieldLength: { ...places.map(lengthsOf) },
    averageFieldLength: fields.map((_, field) => sum(field) / rows.length),
    storedFields: {},
    dirtCount: 0,
    index: [],
    serializationVersion: 2,
  };
  const mini = MiniSearch.loadJS(written, { ...OPTIONS, fields });
  terms.forEach((term, at) => {
    mini._index.set(term, new Map(posts[at].map(post => [post[0], finds(post)])));
  });
  return mini;
}

// What a word is without its ending, so that "covering" and "covered" are "cover".
export function stem(word) {
  if (word.length < 4 || /\d/.test(word)) return word;
  let bare = word.replace(/ies$/, "y").replace(/(?<=sh|ch|x|ss)es$|(?<![suei])s$|(?<=[^aeiou]e)s$/, "");
  const short = bare.replace(/(?:ing|(?<!e)ed)$/, "");
  if (short.length > 2 && /[aeiouy]/.test(short)) bare = short;
  return bare.replace(/([bdfglmnprt])\1$/, "$1").replace(/(?<=..)e$/, "");
}

export function ready(text) {
  const index = JSON.parse(text);
  const terms = index.terms.split(" ");
  const mini = engine(index, terms);
  const stems = grouped(terms);
  const named = row => Object.fromEntries(index.heads.map((head, place) => [head, row[place] ?? ""]));
  const rows = index.finds.map(named);
  const alike = new Map();
  for (const line of index.alike) for (const word of line.split(" ")) alike.set(word, alikeTo(word, line, alike));
  const shapes = new Set(rows.filter(row => row.kind === "tin").flatMap(row => row.tin.match(/[a-z]{3,}/g)));
  const titleLength = place => index.lengths[place * index.fields.length];
  const [stops, light] = [index.stops, index.light].map(words => new Set(words.split(" ")));
  return { mini, terms, stems, rows, alike, stops, light, shapes, titleLength };
}

const alikeTo = (word, line, alike) => [
  ...new Set([...(alike.get(word) || []), ...line.split(" ").filter(each => each !== word)]),
];

function grouped(terms) {
  const groups = new Map();
  for (const term of terms) {
    const key = stem(term);
    if (!groups.has(key)) groups.set(key, []);
    groups.get(key).push(term);
  }
  return groups;
}
