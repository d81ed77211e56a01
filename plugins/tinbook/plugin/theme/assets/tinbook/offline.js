// The whole book on the device: the worker that keeps it, and the word that a new book is ready.
import { find, make } from "./dom.js";
import { words } from "./words.js";

async function keep(home, workers) {
  // all tabs change to the new book at once; the very first worker comes to a page that is new already
  let old = workers.controller;
  workers.addEventListener("controllerchange", () => {
    if (old) location.reload();
    old = true;
  });
  // asked for first: to register again would wait for a search for news that a bad network may hold up for minutes
  const had = await workers.getRegistration(home);
  const book =
    had?.scope === home.href ? had : await workers.register(new URL("sw.js", home), { updateViaCache: "none" });
  old ||= book.active;

  const foot = find("#tb-kept"),
    line = find("#tb-new");
  let kept = false;
  const tell = () => {
    const keeping = book.installing && !book.active;
    foot.textContent = kept ? (navigator.onLine ? words.kept : words.offline) : keeping ? words.keeping : "";
    line.hidden = !(book.waiting && book.active);
    if (!line.hidden && !line.firstChild)
      line.append(
        `${words.ready} `,
        make("button", { class: "tb-button", onclick: () => book.waiting?.postMessage("open") }, words.open),
      );
  };
  const follow = worker =>
    worker?.addEventListener("statechange", () => {
      tell();
      if (worker.state === "activated") worker.postMessage("kept?");
    });
  workers.addEventListener("message", event => {
    kept = Boolean(event.data.kept);
    tell();
  });
  book.addEventListener("updatefound", () => {
    follow(book.installing);
    tell();
  });
  follow(book.installing);
  book.active?.postMessage("kept?");
  for (const change of ["online", "offline"]) window.addEventListener(change, tell);
  tell();

  // a tablet sleeps and wakes with the page open: each time may have brought a new book
  const look = () => {
    if (document.visibilityState === "visible") book.update().catch(() => {});
  };
  document.addEventListener("visibilitychange", look);
  look();
  if (matchMedia("(display-mode: standalone)").matches) navigator.storage?.persist?.();
}

// Where the device refuses (no HTTPS, a private window, no room) the book is read from its host, and nothing is said.
export function offline() {
  const meta = find("meta[name=tinbook][data-kept]");
  if (meta && navigator.serviceWorker)
    keep(new URL(meta.content, location.href), navigator.serviceWorker).catch(() => {});
}
