// The bench of a mixture. A script of its own, so that the browser can do something else between this and main.js.
import { bench } from "./bench.js";

bench();
