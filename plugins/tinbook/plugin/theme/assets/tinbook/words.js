// Every word the scripts say, by the part of a page that says it; those of pages other than
// recipes in page_words.js, of what is fetched late in late_words.js.

export const units = {
  ounces: "oz",
  pounds: "lb",
  cups: "cups",
  hours: "h",
  minutes: "min",
  fairy: "cakes",
  other: "cupcakes",
};
export const spans = { short: (low, high) => `${low}–${high}`, long: (low, high) => `${low} to ${high}` };
export const bench = {
  batch: "1 batch",
  batches: count => `${count} batches`,
  many: (count, tin) => `${count} × ${tin}`,
  ownWater: ml => `your own tin, ${ml} ml`,
  oneSize: (shape, width) => `${shape} ${width} cm`,
  twoSizes: (shape, width, length) => `${shape} ${width} x ${length} cm`,
  by: factor => `${factor} × recipe`,
  byDepth: "same batter depth",
  byBrim: "filled as full as in the recipe",
  byCake: "as the cake needs",
  inEach: grams => `${grams} in each tin`,
  inEachCup: grams => `${grams} in each case`,
  together: grams => `${grams} in all`,
  madeFrom: grams => `${grams} of ingredients`,
  offMore: share => `${share}% more than exact`,
  offLess: share => `${share}% less than exact`,
  offNone: "eggs not rounded",
  least: cm => `use a tin at least ${cm}\u00a0cm deep`,
  deeper: "no tin of this size is sold that deep",
  shallow: needed => `too shallow for all the batter: fill ${needed} tins`,
  parts: ["", "the whole", "half", "a third", "a quarter", "a fifth", "a sixth"],
  partOf: count => `1/${count}`,
  few: (have, part, of) =>
    `you have ${have}: bake ${have === 1 ? "one after the other" : `${have} at a time`}` +
    (part ? `, ${part}${of} the mix in each` : ""),
  wide: "wider than the oven shelf",
  bakes: (bakes, once) => `${bakes} oven loads, at most ${once} per load`,
  mixes: mixes => `mix in ${mixes} lots to fit the bowl`,
  forTin: cake => `for ${cake}`,
};

export const tins = {
  counted: { tins: "tins", cups: "cups", batches: "batches" },
  more: label => `more ${label}`,
  less: label => `fewer ${label}`,
};

export const baking = {
  between: (less, more) => `between ${less} and ${more}`,
  wide: times => `${times} times as wide`,
  deep: times => `${times} times as deep`,
  both: (wide, deep) => `${wide} and ${deep}`,
  check: minutes => `check ${minutes}\u00a0min`,
  minutes: span => `${span}\u00a0min`,
  goes: (goes, span) => (goes > 1 ? `${goes} × ${span}` : span),
  unknown: "no time known for this tin",
  andBake: rest => `${rest} and the bake`,
  // a line of the log, so far as it is known when the tin goes in
  bake: (slug, tin, grams, oven) => `of: ${slug}, tin: ${tin}, batter: ${grams} g, oven: ${oven}, done after: `,
};

export const timers = {
  start: name => `Start a timer: ${name}`,
  missing: "no network: try again",
};
