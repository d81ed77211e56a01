// What every page of the book wakes up. home.js, tins.js, mixture.js, mixture_tables.js, technique.js,
// measures.js and guests.js are for the pages of their name, narrow.js for lists.
import { announce } from "./dom.js";
import { finder } from "./finder.js";
import { folds } from "./folds.js";
import { looks } from "./looks.js";
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
