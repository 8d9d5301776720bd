// Keeps the program in the browser, so that the page opens without a network. The build puts in which files there are, each
// with its checksum, and a version made of these.
const VERSION = "{version}";
const FILES = {files};

// Several copies of the program may lie on one host, each below a path of its own; they share the browser's caches.
const HERE = new URL("./", self.location).pathname;
const OURS = `loomwright ${HERE} `;
const CACHE = OURS + VERSION;

self.addEventListener("install", (event) => event.waitUntil(keep()));

async function keep() {
  const cache = await caches.open(CACHE);
  await Promise.all(Object.entries(FILES).map(async ([name, integrity]) => {
    // By its checksum, so that files of two versions are never mixed: while a new one is being put on the server, this fails
    // and is tried again later.
    const answer = await fetch(new Request(name, { cache: "no-cache", integrity }));
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    // A fresh answer: one that was redirected on its way is not taken by browsers for a page.
    await cache.put(name, new Response(answer.body, { headers: answer.headers }));
  }));
}

self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
  }
  // On a first visit the open page is served from here on, too.
  await self.clients.claim();
}

// A new version waits until no page of the old one is open, or until somebody asks for it.
self.addEventListener("message", (event) => {
  if (event.data === "use the new version") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const address = new URL(event.request.url);
  if (event.request.method !== "GET" || address.origin !== self.location.origin || !address.pathname.startsWith(HERE)) return;
  const path = address.pathname.slice(HERE.length);
  const name = path === "" || path === "index.html" ? "./" : path;
  if (Object.hasOwn(FILES, name)) event.respondWith(kept(name, event.request));
});

async function kept(name, request) {
  const cache = await caches.open(CACHE);
  // The browser may have thrown files away to make room.
  return (await cache.match(name)) ?? fetch(request);
}
