// Named timers, several at once. A timer is the moment it ends, so sleep and leaving the page cannot put it wrong.
import { follow, read, write } from "./keep.js";
import { all, announce, find, make } from "./dom.js";
import { clock } from "./spell.js";
import { stayAwake } from "./awake.js";
import { words } from "./words.js";

const RING_S = 30;
let sound = null;
const title = document.title;
const list = () => read("timers", []);
const save = timers => { write("timers", timers); draw(); };
const hour = at => { const day = new Date(at); return `${day.getHours()}:${String(day.getMinutes()).padStart(2, "0")}`; };
const left = timer => timer.stopped ?? (timer.ends - Date.now()) / 1000;

export function start(name, minutes, page = location.pathname) {
  // a browser lets a page sound only after a touch: this is one
  try { sound ||= new AudioContext(); sound.resume(); } catch { sound = null; }
  save([...list(), { id: `${Date.now()}${Math.random()}`, name, minutes, page, ends: Date.now() + minutes * 60000 }]);
  stayAwake();
}

function beep() {
  if (!sound) return;
  const tone = sound.createOscillator(), level = sound.createGain();
  tone.frequency.value = 880; level.gain.value = 0.3;
  tone.connect(level).connect(sound.destination);
  tone.start(); tone.stop(sound.currentTime + 0.25);
}

const change = (id, how) => save(list().map(timer => timer.id === id ? how(timer) : timer));
const away = id => save(list().filter(timer => timer.id !== id));
const pause = timer => ({ ...timer, stopped: Math.max(1, left(timer)) });
const go = ({ stopped, ...timer }) => ({ ...timer, ends: Date.now() + stopped * 1000 });

function row(timer) {
  const rings = left(timer) <= 0, paused = timer.stopped !== undefined;
  return make("li", { class: `tb-timer${rings ? " tb-rings" : paused ? " tb-paused" : ""}`, "data-id": timer.id },
    make("b", {}, clock(left(timer))), make("span", {}, timer.name), paused ? make("i", {}, words.stopped) : null,
    rings ? null : make("button", { type: "button", "aria-label": `${paused ? words.go : words.stop}: ${timer.name}`,
      onclick: () => change(timer.id, paused ? go : pause) }, paused ? words.go : words.stop),
    make("button", { type: "button", "aria-label": `${words.away}: ${timer.name}`, onclick: () => away(timer.id) }, words.away));
}

let drawn = "";
function draw() {
  const timers = list(), tray = find("#tb-tray .tb-timers");
  const look = timers.map(timer => `${timer.id} ${timer.stopped ?? ""} ${left(timer) <= 0}`).join();
  if (look !== drawn) {
    drawn = look;
    const held = all("button", tray).indexOf(document.activeElement);
    tray.replaceChildren(...timers.map(row));
    document.body.classList.toggle("tb-trayed", timers.length > 0);
    // who works it by keyboard stays where they were
    const buttons = all("button", tray);
    if (held >= 0) (buttons[Math.min(held, buttons.length - 1)] || find(".tb-start"))?.focus();
    for (const button of all(".tb-start")) {
      const timer = timers.find(each => each.name === button.dataset.name && each.page === location.pathname && each.stopped === undefined && left(each) > 0);
      button.textContent = timer ? `${words.till} ${hour(timer.ends)}` : button.dataset.start;
    }
  } else timers.forEach((timer, at) => { find("b", tray.children[at]).textContent = clock(left(timer)); });
}

function tick() {
  draw();
  let ringing = "";
  for (const timer of list()) {
    const over = -left(timer);
    if (timer.stopped !== undefined || over < 0) continue;
    ringing = timer.name;
    if (over < RING_S) { beep(); navigator.vibrate?.(200); }
    if (!timer.told) {
      announce(words.rings(timer.name));
      change(timer.id, each => ({ ...each, told: true }));
    }
  }
  document.title = ringing ? words.rings(ringing) : title;
}

export function timers() {
  document.body.append(make("section", { id: "tb-tray", "aria-label": words.tray }, make("ul", { class: "tb-timers" })));
  for (const button of all(".tb-start")) {
    button.hidden = false;
    button.dataset.start = button.textContent;
    button.setAttribute("aria-label", `${button.textContent}, ${words.startTimer(button.dataset.name)}`);
    button.addEventListener("click", () => start(button.dataset.name, Number(button.dataset.minutes)));
  }
  follow("timers", draw);
  document.addEventListener("visibilitychange", tick);
  window.addEventListener("pageshow", tick);
  setInterval(tick, 1000);
  tick();
}
