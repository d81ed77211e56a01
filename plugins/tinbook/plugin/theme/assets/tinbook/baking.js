// The oven at the bench: the time of the chosen tin, the timer of the bake, and its line for the log.
import { all, find, say } from "./dom.js";
import { minutesWords } from "./spell.js";
import { baking as words } from "./words.js";
import { anyName, tinsNeeded } from "./work.js";

const AS_WIDE = 10;

// Each tin comes with its time. Where none is known nothing is said, and there is no timer.
export function baking(recipe, slug) {
  const { bake, tins } = recipe;
  if (!bake) return null;
  const oven = find(".tb-oven");
  const [checkPlace, donePlace] = all("b", oven);
  const farPlace = find(".tb-far");
  const step = all(".tb-steps > li")[bake.step];
  const button = step && all(".tb-start", step).at(-1);
  const waits = find(".tb-times data");

  return (choice, batch) => {
    const time = choice.look ? timeOfTier(choice) : timeOf(placesOf(choice, batch));
    oven.hidden = !time;
    if (time) {
      say(checkPlace, words.minutes(time.minutes));
      say(donePlace, words.minutes(time.done));
      if (farPlace) say(farPlace, time.far);
    }
    const goes = Math.max(1, batch.bakes);
    const due = time ? words.goes(goes, words.minutes(time.done)) : words.unknown;
    say(find(".tb-due"), due);
    if (waits) say(waits, waiting(time?.done, goes));
    if (!button) return;
    say(button.previousElementSibling, due);
    button.hidden = !time;
    const { minutes = "", label = "" } = time || {};
    Object.assign(button.dataset, { minutes, start: label, bake: logged(choice, batch) });
  };

  // All the method's waiting time, every bake included.
  function waiting(done, goes) {
    const [low, high] = waits.value.split(" ").map(Number);
    if (!done) return words.andBake(minutesWords(low, high));
    const span = done.split("–").map(Number);
    return minutesWords(low + goes * span[0], high + goes * span.at(-1));
  }

  // The chosen tin's row in the table, or the two that one of your own lies between; or none.
  function placesOf(choice, { tin, needed }) {
    if (choice.any) return about(choice.any);
    return tin && sameDepth(tin, choice.count, needed) ? [tins.indexOf(tin)] : [];
  }

  // Whether this many tins to fill take the batter as deep as the tin's row does.
  function sameDepth(tin, count, needed) {
    const inRow = tinsNeeded(tin.count * tin.unit_ml, tin, tin.count);
    return needed === count || tin.count === count || needed * tin.count === count * inRow;
  }

  // A tin of your own bakes like a round of the same width by its wall.
  function about({ width, length }) {
    const wide = (2 * width * length) / (width + length);
    const isRound = tin => tin?.shape === "round";
    const place = tins.findIndex(tin => isRound(tin) && tin.width_mm >= wide);
    if (tins[place]?.width_mm === wide) return [place];
    return isRound(tins[place - 1]) ? [place - 1, place] : [];
  }

  function timeOf([place, next]) {
    if (place === undefined) return null;
    const { minutes, span } = bake.times[place];
    const done = next ? `${span.split("–")[0]}–${bake.times[next].span.split("–").pop()}` : span;
    const far = next ? words.between(tins[place].name, tins[next].name) : farWords(bake.far[place]);
    return { minutes, done, far, label: words.check(minutes) };
  }

  // A tier is filled to its own depth, and its cake has said how long that takes.
  function timeOfTier({ look, done }) {
    return { minutes: look, done, far: "", label: words.check(look) };
  }

  function farWords({ wide, deep, bake: nearest }) {
    const wider = wide !== AS_WIDE && words.wide(wide / AS_WIDE);
    const deeper = deep !== AS_WIDE && words.deep(deep / AS_WIDE);
    const far = wider && deeper ? words.both(wider, deeper) : wider || deeper || "";
    return `${far} ${bake.bakes[nearest]}`;
  }

  // What is known when the tin goes in. A tin known only by its water has no name for the log.
  function logged({ any }, { tin, inEach }) {
    if (any?.ml) return "";
    const name = any ? anyName(any, recipe) : tin.name;
    return words.bake(slug, /^\w[\w .]*$/.test(name) ? name : JSON.stringify(name), inEach, bake.oven);
  }
}
