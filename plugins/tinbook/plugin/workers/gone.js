// Takes the place of a worker that kept an earlier book here: forgets that book and lets the live one through.
async function leave() {
  const ours = `tinbook ${self.registration.scope} `;
  for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
  await clients.claim();
  const open = await clients.matchAll({ type: "window" });
  await self.registration.unregister();
  for (const client of open) {
    // past the browser's own cache; a host that still gives out pages to be kept would be asked for ever
    const live = await fetch(client.url, { cache: "reload" }).then(
      page => page.text(),
      () => "data-kept",
    );
    if (!live.includes("data-kept")) client.navigate(client.url).catch(() => {});
  }
}
// Said until it is heard: Chromium can miss the first word, where the earlier worker has just fallen idle, and would
// leave this one waiting for good.
let saying;
self.addEventListener("install", () => {
  self.skipWaiting();
  saying = setInterval(() => self.skipWaiting(), 1000);
});
self.addEventListener("activate", event => {
  clearInterval(saying);
  event.waitUntil(leave());
});
// asked by a page of the kept book that came while this worker took over, or by its button for a new book
self.addEventListener("message", event => event.waitUntil(self.registration.waiting ? self.skipWaiting() : leave()));
