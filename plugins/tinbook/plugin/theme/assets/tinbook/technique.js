// A technique's page: its kit by hands, handing it on, and the parts for the cake in hand.
import { asked } from "./address.js";
import { all, find } from "./dom.js";
import { people } from "./people.js";
import { share } from "./share.js";

people();
share();

// Tables stand ready for each cake; those of one show.
const cakes = find(".tb-cakes");
if (cakes) {
  const select = find("select", cakes);
  const show = () => {
    for (const part of all("[data-cake]")) part.hidden = part.dataset.cake !== select.value;
  };
  select.addEventListener("change", show);
  const cake = asked().get("tin");
  if ([...select.options].some(option => option.value === cake)) {
    select.value = cake;
    show();
  }
}
