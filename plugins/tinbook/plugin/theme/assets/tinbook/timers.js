// The buttons that start timers. What keeps timers running is fetched when the first is wanted, or one runs already.
import { all, say } from "./dom.js";
import { follow, read } from "./keep.js";
import { timers as words } from "./words.js";

let asked = null;
let ringing = null;
let sound = null;

function fetchRinging() {
  asked ||= import("./ringing.js").then(part => {
    ringing = part;
    part.run(drawButtons);
  });
  return asked.catch(error => {
    asked = null;
    throw error;
  });
}

function start(button) {
  const began = Date.now();
  const { name, minutes, bake } = button.dataset;
  // a browser lets a page make a sound only after a touch. A device may take long to find its loudspeaker: not before
  // the touch has been answered
  setTimeout(findSound);
  fetchRinging().then(
    () => ringing.start({ name, minutes: Number(minutes), bake, began, sound: () => sound }),
    () => say(button.firstChild, words.missing),
  );
}

function findSound() {
  try {
    sound ||= new AudioContext();
    sound.resume();
  } catch {
    sound = null;
  }
}

export function drawButtons() {
  for (const button of all(".tb-start")) {
    const { name, start } = button.dataset;
    say(button.firstChild, ringing?.faceOf(name) || start);
    button.setAttribute("aria-label", `${start}, ${words.start(name)}`);
  }
}

// One may have been started on another page, or have ended while this one slept.
function look() {
  if (ringing) ringing.tick();
  else if (read("timers", []).length) fetchRinging().catch(() => {});
}

export function timers() {
  for (const button of all(".tb-start")) {
    button.dataset.start ||= button.textContent;
    button.addEventListener("click", () => start(button));
  }
  follow("timers", look);
  document.addEventListener("visibilitychange", look);
  window.addEventListener("pageshow", look);
  drawButtons();
  look();
}
