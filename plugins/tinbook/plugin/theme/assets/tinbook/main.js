// What every page of the book wakes up. home.js, tins.js, mixture_tables.js, technique.js, measures.js and guests.js
// are for the pages of their name, narrow.js for lists.
import { bench } from "./bench.js";
<<<<<<< HEAD
import { announce } from "./dom.js";
import { folds } from "./folds.js";
import { looks } from "./looks.js";
=======
import { finder } from "./finder.js";
import { keys } from "./keys.js";
>>>>>>> main
import { measures } from "./measure.js";
import { offline } from "./offline.js";
import { remember } from "./recent.js";
import { ticks } from "./ticks.js";
import { timers } from "./timers.js";

<<<<<<< HEAD
announce("");
for (const part of [looks, folds, measures, bench, ticks, timers, remember, offline]) {
=======
for (const part of [keys, finder, measures, bench, ticks, timers, remember, offline]) {
>>>>>>> main
  // one part that fails leaves the others and the page standing
  try {
    part();
  } catch (error) {
    console.error(error);
  }
}
