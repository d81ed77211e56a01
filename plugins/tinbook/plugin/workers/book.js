// Keeps one version of the whole book on the device and answers from it alone. VERSION, WHOSE and DIGESTS are written above.
const HOME = self.registration.scope;
const OURS = `${WHOSE} ${HOME} `;
const CACHE = OURS + VERSION;
const FILES = new Map(Object.entries(DIGESTS));
// Asking for a thousand pages at once is too much for a tablet.
const LANES = 8;
const TRIES = 20;
const BETWEEN_TRIES_MS = 500;

const addressOf = name => HOME + name.split("/").map(encodeURIComponent).join("/");

async function digest(body) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return Array.from(bytes, byte => byte.toString(16).padStart(2, "0")).join("");
}

// Only this build's own files are kept: from an earlier book if unchanged, otherwise from the host.
async function keep(cache, name) {
  const address = addressOf(name);
  if (await cache.match(address)) return;
  for (const source of [() => caches.match(address), () => fetch(address, { cache: "reload" })]) {
    const response = await source();
    const body = await response?.arrayBuffer();
    if (body && (await digest(body)) === FILES.get(name)) {
      const type = response.headers.get("Content-Type") || "application/octet-stream";
      await cache.put(address, new Response(body, { headers: { "Content-Type": type } }));
      return;
    }
  }
  throw new Error(`not of this book: ${name}`);
}

// What was kept before a failure stays for the next try; the worker answers from it only once everything is there.
async function fill() {
  const cache = await caches.open(CACHE);
  const names = [...FILES.keys()];
  const lane = async () => {
    while (names.length) await keep(cache, names.pop());
  };
  try {
    await Promise.all(Array.from({ length: LANES }, lane));
  } catch (error) {
    if (error.name === "QuotaExceededError") await caches.delete(CACHE);
    throw error;
  }
}

// Said until it is heard: Chromium can miss it where the earlier worker has just fallen idle.
async function open() {
  for (let tries = 0; self.registration.waiting && tries < TRIES; tries++) {
    self.skipWaiting();
    await new Promise(done => setTimeout(done, BETWEEN_TRIES_MS));
  }
}

async function begin() {
  for (const name of await caches.keys()) if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
  await clients.claim();
}

async function isWhole() {
  const kept = await (await caches.open(CACHE)).keys();
  return kept.length === FILES.size;
}

let mending = null;
// The device has dropped the book: it is read from the host, and kept again.
function fromHost(event) {
  mending ||= fill()
    .catch(() => {})
    .then(() => {
      mending = null;
    });
  event.waitUntil(mending);
  return fetch(event.request);
}

function fileName(url) {
  try {
    const name = decodeURIComponent(url.pathname.slice(new URL(HOME).pathname.length));
    return !name || name.endsWith("/") ? `${name}index.html` : name;
  } catch {
    return "%"; // no file is called so
  }
}

async function answer(event, url) {
  const name = fileName(url);
  if (FILES.has(`${name}/index.html`)) {
    url.pathname += "/";
    return Response.redirect(url);
  }
  // an address this book does not have is not fetched: it could be a page of the next one
  const missing = !FILES.has(name);
  const address = addressOf(missing ? "404.html" : name);
  const kept = await caches.match(address, { cacheName: CACHE }).catch(() => undefined);
  if (!kept) return fromHost(event);
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
  if (event.data === "kept?") event.waitUntil(isWhole().then(kept => event.source.postMessage({ kept })));
});
