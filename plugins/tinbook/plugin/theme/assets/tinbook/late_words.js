// The words of what a page fetches only on demand: the tray of timers, and sizes that are not in the page.
export const tray = {
  name: "Timers",
  acts: { stop: "Stop", go: "Resume", away: "Clear", done: "Done", copy: "Copy" },
  stopped: "stopped",
  copied: "Copied",
  paste: "For house/bakes.yaml: ",
};

export const panel = {
  notOwned: "not owned",
  fields: { shape: "Shape", width: "Width", length: "Length", unit: "in" },
  units: { cm: "cm", inches: "inches" },
  water: "Water it holds to the brim, ml",
  show: "Work it out",
  wrong: "Enter a size from 5 to 100 cm, or how much water it holds, in ml.",
};
