// What is said about the book that a device keeps: how far it has come, and that a new one is ready.
import { find, make } from "./dom.js";
import { offline as words } from "./late_words.js";

export function tell(book, workers) {
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
