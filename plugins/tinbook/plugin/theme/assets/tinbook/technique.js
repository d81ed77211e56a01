import { all, find } from "./dom.js";
import { people } from "./people.js";
import { share } from "./share.js";

people();
share();

// The parts for the cake in hand: tables stand ready for each, one of them shows.
const cakes = find(".tb-cakes");
if (cakes) {
  cakes.hidden = false;
  const select = find("select", cakes);
  select.addEventListener("change", () => {
    for (const each of all("[data-cake]")) each.hidden = each.dataset.cake !== select.value;
  });
}
