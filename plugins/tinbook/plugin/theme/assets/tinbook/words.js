// Every word the scripts say, in one place.
export const words = {
  all: "All tins", fewer: "Tins of the house", other: "Another tin", notOwned: "not owned",
  handOn: "Hand on", people: "people", forPeople: count => `For ${count} people`, tins: "tins", cups: "cups", batches: "batches", more: "one more", less: "one less",
  whole: "Whole eggs", exact: "Exact", eggs: "Eggs", measure: "Measure", g: "g", oz: "oz", spoons: "cups",
  inEach: "in each tin", inEachCup: "in each cup", together: "together",
  offMore: share => `${share} % more than exact`, offLess: share => `${share} % less than exact`, offNone: "exact",
  by: factor => `× ${factor}`,
  shallow: (needed, have) => `too shallow for the whole batter: fill ${needed}` +
    (have && have < needed ? `; you have ${have}, so bake ${Math.ceil(needed / have)} times` : ""),
  wide: "wider than the oven shelf", bakes: (bakes, once) => `${bakes} bakes, ${once} at once`,
  mixes: mixes => `${mixes} mixes for the bowl`, least: cm => `tin at least ${cm} cm deep`, deeper: "deeper than any such tin sold",
  forTin: cake => `for ${cake}`,
  weightLabel: "or grams", anyShape: "Shape", anyWidth: "Width", anyLength: "Length", anyUnit: "in", anyMl: "Water to the brim, ml",
  anyShow: "Work it out", anyWrong: "Give a size from 5 to 100 cm, or the water it holds in ml.",
  long: ["rectangle", "oval"], own: "tin of your own",
  startTimer: name => `Start a timer: ${name}`, stop: "Stop", go: "Go on", away: "Take away", till: "till", rings: name => `${name}: time is up`, stopped: "stopped",
  tray: "Timers", awake: "Screen stays on", asleep: "Screen may sleep", noWake: "This screen cannot be kept on from here",
  again: "Start again", sure: "Forget ticks, timers and notes?", yes: "Yes, start again", no: "No",
  notes: "Pencil notes", notesHint: "Kept on this device only.", save: "Save as text", noteFile: slug => `${slug}-notes.txt`,
  print: "Print",
  ready: "A new book is ready.", open: "Open it", kept: "The whole book is kept on this device.", keeping: "Keeping the book on this device", offline: "No network: this is the kept book.",
};
