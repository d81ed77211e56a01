// A technique's page: its kit by hands, handing it on, and the parts for the cake in hand.
import { all, find } from "./dom.js";
import { people } from "./people.js";
import { share } from "./share.js";

people();
share();

// Tables stand ready for each cake; those of one show.
const cakes = find(".tb-cakes");
if (cakes) {
  const select = find("select", cakes);
  select.addEventListener("change", () => {
    for (const part of all("[data-cake]")) part.hidden = part.dataset.cake !== select.value;
  });
}
