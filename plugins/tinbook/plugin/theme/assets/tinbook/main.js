// What every page of the book wakes up. home.js, tins.js, bench_tins.js, bench_batches.js,
// mixture_tables.js, technique.js, measures.js and guests.js are for the pages of their name, narrow.js for lists.
import { announce, find } from "./dom.js";
import { finder } from "./finder.js";
import { folds } from "./folds.js";
import { write } from "./keep.js";
import { measures } from "./measure.js";
import { offline } from "./offline.js";
import { remember } from "./recent.js";
import { ticks } from "./ticks.js";
import { timers } from "./timers.js";

announce("");
wake(looks, folds, finder, measures, fromCake, ticks, timers);
// the rest can wait until the browser has drawn the page
setTimeout(wake, 0, remember, offline);

// A bench or a technique opened from a cake gets its way back.
function fromCake() {
  if (location.hash.includes("cake=")) import("./cake_way.js").then(part => part.cakeWay());
}

// A page stands in the light look, without more contrast, as it was written. For any other its switch has to be set at
// once, otherwise when it is touched or the device changes.
function looks() {
  const holder = find(".tb-looks");
  if (!holder) return;
  const worn = document.documentElement.dataset;
  const devices = [matchMedia("(prefers-contrast: more)"), matchMedia("(prefers-color-scheme: dark)")];
  const earlier = Object.keys(localStorage).some(name => name.endsWith(".__palette"));
  let asked = false;
  const put = () => {
    if (!asked) import("./looks.js").then(part => part.looks());
    asked = true;
  };
  if (worn.look || worn.contrast || earlier || devices.some(device => device.matches) || !find(".tb-switch", holder)) {
    put();
  }
  // the first touch is put on and kept at once
  holder.addEventListener("click", event => {
    const { value, contrast } = event.target.dataset;
    const what = contrast === "" ? "contrast" : "look";
    const chosen = value || (contrast === "" && "more");
    if (!asked && chosen) {
      worn[what] = chosen;
      write(what, chosen);
    }
    put();
  });
  for (const device of devices) device.addEventListener("change", put);
}

// One part that fails leaves the others and the page standing.
function wake(...parts) {
  for (const part of parts) {
    try {
      part();
    } catch (error) {
      console.error(error);
    }
  }
}
