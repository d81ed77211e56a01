// Keeps the screen on at the bench, where the browser can and the reader wants it. Lost when the page is hidden, so
// asked for again when it returns; harmless where it is missing.
import { read, write } from "./keep.js";
import { words } from "./words.js";

let lock = null,
  wanted = false,
  shown = null;

async function ask() {
  if (!wanted || lock || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return say();
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
  say();
}

function say() {
  if (!shown) return;
  shown.setAttribute("aria-pressed", String(Boolean(lock)));
  shown.textContent = "wakeLock" in navigator ? (lock ? words.awake : words.asleep) : words.noWake;
  shown.disabled = !("wakeLock" in navigator);
}

export function stayAwake() {
  wanted = read("awake", true);
  return ask();
}

export function awake(button) {
  shown = button;
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
