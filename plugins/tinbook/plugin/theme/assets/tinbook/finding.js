import { ready } from "./finding_index.js";
import { answer } from "./finding_rank.js";
self.tinbookTry = { ready, answer };
