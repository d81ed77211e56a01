// Named timers, several at once. A timer is the moment it ends, so sleep and leaving the page cannot put it wrong.

import { stayAwake } from "./awake.js";
import { all, announce, find, make } from "./dom.js";
import { follow, read, write } from "./keep.js";
import { clock } from "./spell.js";
import { words } from "./words.js";

const RING_S = 30,
  LEAST_MIN = 3,
  MOST_MIN = 720;
let sound = null;
const title = document.title;
const list = () => read("timers", []);
const save = timers => {
  write("timers", timers);
  draw();
};
const hour = at => {
  const day = new Date(at);
  return `${day.getHours()}:${String(day.getMinutes()).padStart(2, "0")}`;
};
const left = timer => timer.stopped ?? (timer.ends - Date.now()) / 1000;

// `bake`: the line for the log, as far as it is known before the bake is done.
export function start(name, minutes, bake) {
  // a browser lets a page sound only after a touch: this is one
  try {
    sound ||= new AudioContext();
    sound.resume();
  } catch {
    sound = null;
  }
  const began = Date.now();
  save([
    ...list(),
    {
      id: `${began}${Math.random()}`,
      name,
      minutes,
      page: location.pathname,
      ends: began + minutes * 60000,
      began,
      bake: bake && `  - {day: ${new Date().toLocaleDateString("sv")}, ${bake}`,
    },
  ]);
  stayAwake();
}

function beep() {
  if (!sound) return;
  const tone = sound.createOscillator(),
    level = sound.createGain();
  tone.frequency.value = 880;
  level.gain.value = 0.3;
  tone.connect(level).connect(sound.destination);
  tone.start();
  tone.stop(sound.currentTime + 0.25);
}

const change = (id, how) => save(list().map(timer => (timer.id === id ? how(timer) : timer)));
const away = id => save(list().filter(timer => timer.id !== id));
const pause = timer => ({ ...timer, stopped: Math.max(1, left(timer)) });
const go = ({ stopped, ...timer }) => ({ ...timer, ends: Date.now() + stopped * 1000 });

// Out of the oven: the timer becomes the line to paste, where the bake was long enough to be one.
function done({ id, began, bake }) {
  const ran = Math.round((Date.now() - began) / 60000);
  if (ran < LEAST_MIN || ran > MOST_MIN) away(id);
  else change(id, timer => ({ ...timer, stopped: 1, line: `${bake}${ran} min}` }));
}

function line(timer) {
  const code = make("code", {}, timer.line);
  return [
    make("span", {}, words.paste, code),
    button(words.copy, timer, () => {
      getSelection().selectAllChildren(code);
      navigator.clipboard?.writeText(timer.line).then(
        () => announce(words.copied),
        () => {},
      );
    }),
  ];
}

const button = (label, timer, onclick) => make("button", { "aria-label": `${label}: ${timer.name}`, onclick }, label);

function row(timer) {
  const rings = left(timer) <= 0,
    paused = timer.stopped !== undefined;
  return make(
    "li",
    { class: `tb-timer${rings ? " tb-rings" : paused ? " tb-paused" : ""}`, "data-id": timer.id },
    ...(timer.line
      ? line(timer)
      : [
          make("b", {}, clock(left(timer))),
          make("span", {}, timer.name),
          paused ? make("i", {}, words.stopped) : null,
          rings ? null : button(paused ? words.go : words.stop, timer, () => change(timer.id, paused ? go : pause)),
        ]),
    timer.bake && !timer.line
      ? button(words.done, timer, () => done(timer))
      : button(words.away, timer, () => away(timer.id)),
  );
}

let drawn = "";
function draw() {
  const timers = list(),
    tray = find("#tb-tray .tb-timers");
  const look = timers.map(timer => `${timer.id} ${timer.stopped ?? ""} ${left(timer) <= 0}`).join();
  if (look !== drawn) {
    drawn = look;
    const held = all("button", tray).indexOf(document.activeElement);
    tray.replaceChildren(...timers.map(row));
    document.body.classList.toggle("tb-trayed", timers.length > 0);
    // who works it by keyboard stays where they were
    const buttons = all("button", tray);
    if (held >= 0) (buttons[Math.min(held, buttons.length - 1)] || find(".tb-start"))?.focus();
  } else
    timers.forEach((timer, at) => {
      if (!timer.line) find("b", tray.children[at]).textContent = clock(left(timer));
    });
  for (const button of all(".tb-start")) {
    const { name, start } = button.dataset;
    const timer = timers.find(
      each => each.name === name && each.page === location.pathname && each.stopped === undefined && left(each) > 0,
    );
    button.firstChild.data = timer ? `${words.till} ${hour(timer.ends)}` : start;
    button.setAttribute("aria-label", `${start}, ${words.startTimer(name)}`);
  }
}

function tick() {
  draw();
  let ringing = "";
  for (const timer of list()) {
    const over = -left(timer);
    if (timer.stopped !== undefined || over < 0) continue;
    ringing = timer.name;
    if (over < RING_S) {
      beep();
      navigator.vibrate?.(200);
    }
    if (!timer.told) {
      announce(words.rings(timer.name));
      change(timer.id, each => ({ ...each, told: true }));
    }
  }
  document.title = ringing ? words.rings(ringing) : title;
}

export function timers() {
  document.body.append(
    make("section", { id: "tb-tray", "aria-label": words.tray }, make("ul", { class: "tb-timers" })),
  );
  for (const button of all(".tb-start")) {
    button.hidden = false;
    const { dataset } = button;
    dataset.start ||= button.textContent;
    button.addEventListener("click", () => start(dataset.name, Number(dataset.minutes), dataset.bake));
  }
  follow("timers", draw);
  document.addEventListener("visibilitychange", tick);
  window.addEventListener("pageshow", tick);
  setInterval(tick, 1000);
  tick();
}
