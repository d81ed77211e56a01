// Timers that run, several at once: what their buttons say, and what is heard and said when one rings.
import { stayAwake } from "./awake.js";
import { timeOfDay } from "./clock.js";
import { announce } from "./dom.js";
import { timers as words } from "./late_words.js";
import { begin, isPaused, markAnnounced, onChange, running, secondsLeft } from "./running.js";

const RING_S = 30;
const title = document.title;
let soundNow = () => null;
let drawButtons = () => {};

export function start({ sound, ...timer }) {
  soundNow = sound;
  begin(timer);
  stayAwake();
}

function beep() {
  const sound = soundNow();
  if (!sound) return;
  const tone = sound.createOscillator();
  const level = sound.createGain();
  tone.frequency.value = 880;
  level.gain.value = 0.3;
  tone.connect(level).connect(sound.destination);
  tone.start();
  tone.stop(sound.currentTime + 0.25);
}

// The tray comes with its style when the first timer runs.
let tray = null;
function draw() {
  if (tray || running().length) {
    tray ||= import("./tray.js");
    tray.then(
      ({ drawTray }) => drawTray(),
      () => {
        tray = null;
      },
    );
  }
  drawButtons();
}

// When the timer of a button on this page ends; empty where none runs.
export function faceOf(name) {
  const mine = timer => timer.name === name && timer.page === location.pathname;
  const timer = running().find(timer => mine(timer) && !isPaused(timer) && secondsLeft(timer) > 0);
  return timer ? words.till(timeOfDay(timer.ends)) : "";
}

export function tick() {
  draw();
  const due = running().filter(timer => !isPaused(timer) && secondsLeft(timer) <= 0);
  for (const timer of due) ring(timer);
  document.title = due.length ? words.rings(due.at(-1).name) : title;
}

function ring(timer) {
  if (-secondsLeft(timer) < RING_S) {
    beep();
    navigator.vibrate?.(200);
  }
  if (timer.told) return;
  announce(words.rings(timer.name));
  markAnnounced(timer);
}

// From now on, once a second; `draw` draws the buttons of the page.
export function run(draws) {
  drawButtons = draws;
  onChange(draw);
  setInterval(tick, 1000);
  tick();
}
