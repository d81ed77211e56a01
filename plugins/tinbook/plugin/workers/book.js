// Keeps one version of the whole book on the device and answers from it alone. VERSION and DIGESTS stand above.
const HOME = self.registration.scope,
  OURS = `tinbook ${HOME} `,
  CACHE = OURS + VERSION;
const FILES = new Map(Object.entries(DIGESTS));
const at = name => HOME + name.split("/").map(encodeURIComponent).join("/");

async function sum(body) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return Array.from(bytes, byte => byte.toString(16).padStart(2, "0")).join("");
}

// Only the very file of this build is kept: from an earlier book where it has not changed, or else from the host.
async function keep(cache, name) {
  if (await cache.match(at(name))) return;
  for (const from of [() => caches.match(at(name)), () => fetch(at(name), { cache: "reload" })]) {
    const found = await from(),
      body = await found?.arrayBuffer();
    if (body && (await sum(body)) === FILES.get(name)) {
      const type = found.headers.get("Content-Type") || "application/octet-stream";
      return cache.put(at(name), new Response(body, { headers: { "Content-Type": type } }));
    }
  }
  throw new Error(`not of this book: ${name}`);
}

// What was kept before a failure stays for the next try; it is answered from only when all is there.
async function fill() {
  const cache = await caches.open(CACHE),
    names = [...FILES.keys()];
  // eight at a time: a thousand pages at once are too much for a tablet
  const lane = async () => {
    for (let name; (name = names.pop()); ) await keep(cache, name);
  };
  try {
    await Promise.all(Array.from({ length: 8 }, lane));
  } catch (error) {
    if (error.name === "QuotaExceededError") await caches.delete(CACHE);
    throw error;
  }
}

// Said until it is heard: Chromium can miss it where the earlier worker has just fallen idle.
async function open() {
  for (let tries = 0; self.registration.waiting && tries < 20; tries++) {
    self.skipWaiting();
    await new Promise(done => setTimeout(done, 500));
  }
}

async function begin() {
  for (const name of await caches.keys()) if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
  await clients.claim();
}

let mending = null;
async function answer(event, url) {
  let name = "%";
  try {
    name = decodeURIComponent(url.pathname.slice(new URL(HOME).pathname.length));
  } catch {
    /* no file is called so */
  }
  if (!name || name.endsWith("/")) name += "index.html";
  if (FILES.has(`${name}/index.html`)) {
    url.pathname += "/";
    return Response.redirect(url);
  }
  // an address this book does not have is not fetched: it could be a page of the next one
  const missing = !FILES.has(name);
  const kept = await caches.match(at(missing ? "404.html" : name), { cacheName: CACHE }).catch(() => undefined);
  if (!kept) {
    // the device has thrown the book away: read from the host, and keep it again
    mending ||= fill()
      .catch(() => {})
      .then(() => {
        mending = null;
      });
    event.waitUntil(mending);
    return fetch(event.request);
  }
  return missing ? new Response(kept.body, { status: 404, headers: kept.headers }) : kept;
}

self.addEventListener("install", event => event.waitUntil(fill()));
self.addEventListener("activate", event => event.waitUntil(begin()));
self.addEventListener("fetch", event => {
  const url = new URL(event.request.url);
  // the worker's own address always goes to the host, so that a host that asks for a password can ask
  if (event.request.method !== "GET" || !url.href.startsWith(HOME) || url.href === `${HOME}sw.js`) return;
  event.respondWith(answer(event, url));
});
self.addEventListener("message", event => {
  if (event.data === "open") event.waitUntil(open());
  if (event.data === "kept?")
    event.waitUntil(
      (async () => {
        const names = await (await caches.open(CACHE)).keys();
        event.source.postMessage({ kept: names.length === FILES.size });
      })(),
    );
});
