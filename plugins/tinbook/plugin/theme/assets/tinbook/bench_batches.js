// The bench of a mixture that is made by batches or grams. Entries of their own, so that a bench brings only what it needs.
import { batches } from "./batches.js";
import { bench } from "./bench.js";

bench(".tb-grams", batches);
