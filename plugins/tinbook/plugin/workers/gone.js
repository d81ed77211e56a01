// Takes the place of a worker that kept an earlier book here: forgets that book and lets the live one through.
self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", event => event.waitUntil((async () => {
  const ours = `tinbook ${self.registration.scope} `;
  for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
  await self.registration.unregister();
  for (const client of await clients.matchAll({ type: "window" })) client.navigate(client.url);
})()));
