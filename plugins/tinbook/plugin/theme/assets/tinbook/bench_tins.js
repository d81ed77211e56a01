// The bench of a mixture that is baked in tins. A script of its own, so that the browser can do something else between
// this and main.js.
import { baking } from "./baking.js";
import { bench } from "./bench.js";
import { chips } from "./chips.js";

bench(".tb-strip", chips, baking);
