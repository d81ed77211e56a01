// A technique for more than one pair of hands: kit and materials multiplied.

import { stepper } from "./chips.js";
import { all, announce, find, json } from "./dom.js";
import { measured, onMeasure } from "./measure.js";
import { told } from "./peoplewords.js";
import { figure, mixed, withUnit } from "./spell.js";
import { amount } from "./sums.js";

function spelt(kit, index, people, share) {
  const line = kit.lines[index],
    factor = (line.shared ? 1 : people) * share;
  if (line.unit === "") return [mixed(line.amount * factor), ""];
  return (line.mass_g && measured(kit, line, factor)) || [figure(amount(line, factor, kit.steps)), line.unit];
}

export function people() {
  const kit = json("tb-kit");
  if (!kit) return;
  let count = Math.min(
    kit.most,
    Math.max(1, Math.round(Number(new URLSearchParams(location.hash.slice(5)).get("people")) || 1)),
  );
  const show = said => {
    for (const place of all("[data-line]")) {
      const [text, unit] = spelt(kit, Number(place.dataset.line), count, Number(place.dataset.share || 1)),
        holder = find("i", place);
      if (holder) {
        find("b", place).textContent = text;
        holder.textContent = unit;
      } else place.textContent = withUnit(text, unit);
    }
    for (const tool of all("[data-tool]")) {
      const [each, shared] = kit.tools[tool.dataset.tool],
        many = each * (shared ? 1 : count);
      tool.textContent = many > 1 ? `${many} × ` : "";
    }
    const note = find(".tb-for");
    note.hidden = count === 1;
    note.textContent = told.forPeople(count);
    if (said) {
      history.replaceState(history.state, "", `#for?people=${count}`);
      announce(told.forPeople(count));
    }
  };
  find(".tb-people").append(
    stepper(told.people, 1, 1, next => {
      if (next !== undefined) {
        count = Math.min(kit.most, next);
        show(true);
      }
      return count;
    }),
  );
  onMeasure(() => show(false));
  show(false);
}
