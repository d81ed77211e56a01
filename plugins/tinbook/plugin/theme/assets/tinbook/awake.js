// Keeps the screen on at the bench, where the browser can and the reader wants it. The lock is lost when the page is
// hidden, so it is asked for again when the page returns; harmless where it is missing.
import { find } from "./dom.js";
import { read, write } from "./keep.js";
import { tail as words } from "./late_words.js";

const able = "wakeLock" in navigator;
let lock = null;
let wanted = false;

async function ask() {
  if (able && wanted && !lock && document.visibilityState === "visible") await hold();
  say();
}

async function hold() {
  try {
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => {
      lock = null;
      say();
    });
    if (!wanted) await lock.release();
  } catch {
    lock = null;
  }
}

function say() {
  const button = find("[data-act=stays]");
  if (!button || !able) return;
  button.setAttribute("aria-pressed", String(Boolean(lock)));
  button.textContent = lock ? words.awake : words.asleep;
}

export function stayAwake() {
  wanted = read("awake", true);
  return ask();
}

export async function switchAwake() {
  wanted = !lock;
  write("awake", wanted);
  if (wanted) await ask();
  else await lock?.release();
  say();
}

document.addEventListener("visibilitychange", ask);
