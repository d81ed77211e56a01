// Keeps the screen on at the bench, where the browser can and the reader wants it. The lock is lost when the page is
// hidden, so it is asked for again when the page returns; harmless where it is missing.
import { read, write } from "./keep.js";
import { tail as words } from "./words.js";

const able = "wakeLock" in navigator;
let lock = null;
let wanted = false;
let button = null;

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
  if (!button) return;
  button.setAttribute("aria-pressed", String(Boolean(lock)));
  const state = lock ? words.awake : words.asleep;
  button.textContent = able ? state : words.noWake;
  button.disabled = !able;
}

export function stayAwake() {
  wanted = read("awake", true);
  return ask();
}

export function awake(shown) {
  button = shown;
  button.addEventListener("click", async () => {
    wanted = !lock;
    write("awake", wanted);
    if (wanted) await ask();
    else await lock?.release();
    say();
  });
  document.addEventListener("visibilitychange", ask);
  say();
}
