// The tray of timers at the foot of every page, fetched when one runs.
import { clock } from "./clock.js";
import { all, announce, find, make } from "./dom.js";
import { fetched } from "./fetched.js";
import { tray as words } from "./late_words.js";
import { finish, goOn, isPaused, pause, remove, running, secondsLeft } from "./running.js";

let list = null;

// Hidden until its style has come.
function makeTray() {
  const made = make("ul", { class: "tb-timers" });
  const tray = make("section", { id: "tb-tray", "aria-label": words.name, hidden: true }, made);
  document.body.append(tray);
  fetched("link", "running.css").finally(() => {
    tray.hidden = false;
  });
  return made;
}

const button = (label, timer, onclick) =>
  make("button", { "aria-label": `${label}: ${timer.name}`, onclick: () => onclick(timer) }, label);

function row(timer) {
  const rings = secondsLeft(timer) <= 0;
  const look = rings ? " tb-rings" : isPaused(timer) ? " tb-paused" : "";
  return make(
    "li",
    { class: `tb-timer${look}`, "data-id": timer.id },
    ...(timer.line ? logLine(timer) : time(timer, rings)),
    timer.bake && !timer.line ? button(words.acts.done, timer, finish) : button(words.acts.away, timer, remove),
  );
}

function time(timer, rings) {
  const paused = isPaused(timer);
  return [
    make("b", {}, clock(secondsLeft(timer))),
    make("span", {}, timer.name),
    paused ? make("i", {}, words.stopped) : null,
    rings ? null : button(paused ? words.acts.go : words.acts.stop, timer, paused ? goOn : pause),
  ];
}

function logLine(timer) {
  const code = make("code", {}, timer.line);
  const copy = () => {
    getSelection().selectAllChildren(code);
    navigator.clipboard?.writeText(timer.line).then(
      () => announce(words.copied),
      () => {},
    );
  };
  return [make("span", {}, words.paste, code), button(words.acts.copy, timer, copy)];
}

let drawn = "";
export function drawTray() {
  const timers = running();
  list ||= makeTray();
  const look = timers.map(timer => `${timer.id} ${timer.stopped ?? ""} ${secondsLeft(timer) <= 0}`).join();
  if (look === drawn) {
    timers.forEach((timer, place) => {
      if (!timer.line) find("b", list.children[place]).textContent = clock(secondsLeft(timer));
    });
    return;
  }
  drawn = look;
  keepFocus(list, () => list.replaceChildren(...timers.map(row)));
  document.body.classList.toggle("tb-trayed", timers.length > 0);
}

// Keyboard focus stays where it was.
function keepFocus(list, change) {
  const held = all("button", list).indexOf(document.activeElement);
  change();
  if (held < 0) return;
  const buttons = all("button", list);
  (buttons[Math.min(held, buttons.length - 1)] || find(".tb-start"))?.focus();
}
