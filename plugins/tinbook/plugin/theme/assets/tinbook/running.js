// The timers that run. A timer is the moment it ends, so sleep and leaving the page cannot put it wrong.
import { read, write } from "./keep.js";
import { timers as words } from "./late_words.js";
import { halfUp } from "./rounding.js";

const MINUTE_MS = 60000;
// A bake for the log takes this many minutes.
const LEAST_MIN = 3;
const MOST_MIN = 720;

let listener = () => {};
export const onChange = changed => {
  listener = changed;
};

export const running = () => read("timers", []);
function save(timers) {
  write("timers", timers);
  listener();
}

export const secondsLeft = timer => timer.stopped ?? (timer.ends - Date.now()) / 1000;
export const isPaused = timer => timer.stopped !== undefined;

// `bake`: the line for the log, so far as it is known before the bake is done.
export function begin({ name, minutes, bake, began }) {
  const timer = { id: `${began}${Math.random()}`, name, minutes, page: location.pathname, began };
  timer.ends = began + minutes * MINUTE_MS;
  if (bake) timer.bake = words.day(new Date().toLocaleDateString("sv"), bake);
  save([...running(), timer]);
}

const change = (id, changed) => save(running().map(timer => (timer.id === id ? changed(timer) : timer)));

export const remove = ({ id }) => save(running().filter(timer => timer.id !== id));
export const pause = ({ id }) => change(id, timer => ({ ...timer, stopped: Math.max(1, secondsLeft(timer)) }));
export const goOn = ({ id }) =>
  change(id, ({ stopped, ...timer }) => ({ ...timer, ends: Date.now() + stopped * 1000 }));
export const markAnnounced = ({ id }) => change(id, timer => ({ ...timer, told: true }));

// Out of the oven: the timer becomes the line to paste, where the bake was long enough to be one.
export function finish(timer) {
  const minutes = halfUp((Date.now() - timer.began) / MINUTE_MS, 1);
  if (minutes < LEAST_MIN || minutes > MOST_MIN) remove(timer);
  else change(timer.id, kept => ({ ...kept, stopped: 1, line: words.ran(timer.bake, minutes) }));
}
