// The whole book on the device: the worker that keeps it. What is said about it is fetched once there is one.
import { find } from "./dom.js";

async function keep(home, workers) {
  const book = await registered(home, workers);
  if (!(book.installing || book.waiting || book.active)) return;
  const { tell } = await import("./kept_book.js");
  tell(book, workers);
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

// If the device refuses (no HTTPS, a private window, no room) the book is read from its host, and nothing is said.
export function offline() {
  const meta = find("meta[name=tinbook][data-kept]");
  if (!meta || !navigator.serviceWorker) return;
  keep(new URL(meta.content, location.href), navigator.serviceWorker).catch(() => {});
}
