// The words of pages other than recipes: a recipe need not carry them.

export const home = {
  ticked: count => `${count} ticked`,
  till: (name, time) => `${name} until ${time}`,
};
export const technique = {
  handOn: "Pass on",
  forPeople: count => `For ${count} people`,
  times: count => `${count} × `,
  have: count => `; you have ${count}`,
  share: "; one to share",
};

export const glance = {
  from: "From",
  to: "To",
  fromTin: name => `from ${name}`,
  toTin: name => `to ${name}`,
  by: factor => `×\u00a0${factor}`,
  eggsBecome: (eggs, count) => `${eggs} eggs become ${count}`,
  none: "none",
  shallow: (name, deep) => `${name} is only ${deep} deep`,
};

export const sums = {
  titles: { many: "How many", mix: "How much to mix", left: "Using up what is left" },
  batter: "Batter, g",
  each: "One weighs, g",
  count: "How many",
  asks: "The recipe asks for",
  there: "You have left",
  eggs: "Eggs in it",
  times: factor => `× ${factor}`,
  byBowl: (low, high) => `${low} to ${high}, depending on how clean you scrape the bowl`,
  over: grams => `${grams} left over`,
  baked: grams => `about ${grams} each when baked`,
  become: (count, percent) => `${count} ${count === 1 ? "egg" : "eggs"}, ${percent}% out`,
  none: "Enter figures above zero.",
};

export const guests = {
  and: (cake, beside) => `${cake} and ${beside}`,
  serves: (serves, over) => `serves ${serves}, ${over || "none"} left over`,
  kept: "top tier kept back",
  recipes: (factor, litres) => `${factor}\u00a0× the recipe, ${litres} of batter`,
  none: "No set of up to four tiers serves that many. Bake more than one cake.",
  bad: (low, high) => `Enter a number of guests from ${low} to ${high}.`,
};

export const cake = {
  serves: (count, spare, kept) => `serves ${count}, ${spare || "none"} spare${kept ? ", top tier kept back" : ""}`,
  none: most => `No size serves that many; the largest serves ${most}. Serve another cake beside it.`,
  bad: "Enter a number of guests.",
};

export const narrow = {
  field: "Words to look for",
  groups: { kind: "Kind", season: "Season", keeps: "Keeps", tag: "Tag" },
  any: "any",
  more: "Choose",
  of: (left, whole) => `${left} of ${whole}`,
  all: "Show all",
  none: "Nothing matches. Remove a word or a choice.",
  // choices are in this order
  order: "spring|summer|autumn|winter|3 days|a week|a month|frozen|first steps|steady hands|practised".split("|"),
};

export const sheets = {
  all: count => `Search all ${count}`,
  coming: "Fetching the other pages.",
  none: "The other pages cannot be fetched from here. Leaf through them below.",
};
export const week = {
  took: "took",
  minutes: "min",
  count: count => (count === 1 ? "1 task ticked" : `${count} tasks ticked`),
  file: "done",
};
export const shopping = {
  left: (left, all) => `${left} of ${all}`,
  here: (left, all) => (left ? `${left} of ${all} to find` : "all found"),
  count: count => (count === 1 ? "1 thing ticked" : `${count} things ticked`),
  file: "bought",
};
