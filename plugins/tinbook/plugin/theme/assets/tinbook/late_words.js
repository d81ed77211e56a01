// The words of what a page fetches only on demand: timers and their tray, sizes that are not in the page, its foot.
export const tray = {
  name: "Timers",
  acts: { stop: "Stop", go: "Resume", away: "Clear", done: "Done", copy: "Copy" },
  stopped: "stopped",
  copied: "Copied",
  paste: "For house/bakes.yaml: ",
};

export const panel = {
  notOwned: "to borrow",
  fields: { shape: "Shape", width: "Width", length: "Length", unit: "in" },
  units: { cm: "cm", inches: "inches" },
  water: "Water it holds to the brim, ml",
  show: "Work it out",
  wrong: "Enter a size from 5 to 100 cm, or how much water it holds, in ml.",
};

export const timers = {
  till: time => `until ${time}`,
  rings: name => `${name}: time is up`,
  // the line of the log, from its beginning to its end
  day: (day, bake) => `  - {day: ${day}, ${bake}`,
  ran: (bake, minutes) => `${bake}${minutes} min}`,
};

export const tail = {
  file: slug => `${slug}-notes.txt`,
  awake: "Keep screen on: yes",
  asleep: "Keep screen on: no",
  sure: "Clear ticks, timers and notes?",
  answers: { yes: "Yes, start again", no: "No" },
};

export const offline = {
  ready: "A new version of the book is ready.",
  open: "Open it",
  kept: "The whole book is saved on this device.",
  keeping: "Saving the book on this device",
  offline: "No network: this is the saved copy.",
};

export const way = { backToCake: "Back to the cake" };
