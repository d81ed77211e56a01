// What a page of the book wakes up.
import { bench } from "./bench.js";
import { home, remember } from "./home.js";
import { keys } from "./keys.js";
import { measures } from "./measure.js";
import { people } from "./people.js";
import { offline } from "./offline.js";
import { tables } from "./tables.js";
import { ticks } from "./ticks.js";
import { timers } from "./timers.js";
import { glance } from "./glance.js";

for (const part of [keys, measures, bench, tables, ticks, timers, glance, people, remember, home, offline]) {
  // one part that fails leaves the others and the page standing
  try { part(); } catch (error) { console.error(error); }
}
