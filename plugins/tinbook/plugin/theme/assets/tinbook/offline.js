// The whole book on the device: the worker that keeps it, and the word that a new book is ready.
import { find, make } from "./dom.js";
import { offline as words } from "./words.js";

async function keep(home, workers) {
  const book = await registered(home, workers);
  let kept = false;
  const show = () => {
    showState(book, kept);
    showNews(book);
  };
  const watch = worker =>
    worker?.addEventListener("statechange", () => {
      show();
      if (worker.state === "activated") worker.postMessage("kept?");
    });
  workers.addEventListener("message", event => {
    kept = Boolean(event.data.kept);
    show();
  });
  book.addEventListener("updatefound", () => {
    watch(book.installing);
    show();
  });
  watch(book.installing);
  book.active?.postMessage("kept?");
  for (const change of ["online", "offline"]) window.addEventListener(change, show);
  show();
  lookForNews(book);
  if (matchMedia("(display-mode: standalone)").matches) navigator.storage?.persist?.();
}

async function registered(home, workers) {
  // all tabs change to the new book at once; the very first worker finds a page that is new already
  let earlier = workers.controller;
  workers.addEventListener("controllerchange", () => {
    if (earlier) location.reload();
    earlier = true;
  });
  // asked for first: registering again would wait for an update check that a bad network may hold up for minutes
  const known = await workers.getRegistration(home);
  const ours = known?.scope === home.href;
  const book = ours ? known : await workers.register(new URL("sw.js", home), { updateViaCache: "none" });
  earlier ||= book.active;
  return book;
}

function showState(book, kept) {
  const keeping = book.installing && !book.active ? words.keeping : "";
  const whole = navigator.onLine ? words.kept : words.offline;
  find("#tb-kept").textContent = kept ? whole : keeping;
}

function showNews(book) {
  const line = find("#tb-new");
  line.hidden = !(book.waiting && book.active);
  if (line.hidden || line.firstChild) return;
  const onclick = () => book.waiting?.postMessage("open");
  line.append(`${words.ready} `, make("button", { class: "tb-button", onclick }, words.open));
}

// A tablet sleeps and wakes with the page open: each time may have brought a new book.
function lookForNews(book) {
  const look = () => {
    if (document.visibilityState === "visible") book.update().catch(() => {});
  };
  document.addEventListener("visibilitychange", look);
  look();
}

// If the device refuses (no HTTPS, a private window, no room) the book is read from its host, and nothing is said.
export function offline() {
  const meta = find("meta[name=tinbook][data-kept]");
  if (!meta || !navigator.serviceWorker) return;
  keep(new URL(meta.content, location.href), navigator.serviceWorker).catch(() => {});
}
