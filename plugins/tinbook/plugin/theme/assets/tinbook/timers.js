// Named timers, several at once: the buttons that start them, and what is heard and said when one rings.
import { stayAwake } from "./awake.js";
import { all, announce, say } from "./dom.js";
import { follow } from "./keep.js";
import { begin, isPaused, markAnnounced, onChange, running, secondsLeft } from "./running.js";
import { timeOfDay } from "./spell.js";
import { timers as words } from "./words.js";

const RING_S = 30;
const title = document.title;
let sound = null;

function start({ name, minutes, bake }) {
  // a browser lets a page make a sound only after a touch: this is one
  try {
    sound ||= new AudioContext();
    sound.resume();
  } catch {
    sound = null;
  }
  begin(name, Number(minutes), bake);
  stayAwake();
}

function beep() {
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

export function drawButtons() {
  for (const button of all(".tb-start")) drawButton(button);
}

// A button whose timer is running says when it ends.
function drawButton(button) {
  const { name, start } = button.dataset;
  const mine = timer => timer.name === name && timer.page === location.pathname;
  const timer = running().find(timer => mine(timer) && !isPaused(timer) && secondsLeft(timer) > 0);
  say(button.firstChild, timer ? words.till(timeOfDay(timer.ends)) : start);
  button.setAttribute("aria-label", `${start}, ${words.start(name)}`);
}

function tick() {
  draw();
  const ringing = running().filter(timer => !isPaused(timer) && secondsLeft(timer) <= 0);
  for (const timer of ringing) ring(timer);
  document.title = ringing.length ? words.rings(ringing.at(-1).name) : title;
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

export function timers() {
  onChange(draw);
  for (const button of all(".tb-start")) {
    button.dataset.start ||= button.textContent;
    button.addEventListener("click", () => start(button.dataset));
  }
  follow("timers", draw);
  document.addEventListener("visibilitychange", tick);
  window.addEventListener("pageshow", tick);
  setInterval(tick, 1000);
  tick();
}
