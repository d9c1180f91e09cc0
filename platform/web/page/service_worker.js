// Keeps the program's own files, so that it opens without a network.
//
// The build fills in the two constants: a version, which is a hash over all files, and the files with
// the hash of each. A version's files are kept together and used together; a new version waits until
// the page asks it to come in.
const VERSION = "@VERSION@";
const FILES = [
  /*@FILES@*/
];

const scope = new URL("./", self.location).pathname;
const PREFIX = `carriageway ${scope} `;
const CACHE = PREFIX + VERSION;

self.addEventListener("install", event => event.waitUntil(fetchAll()));

// "no-cache" asks the host whether the browser's own copy still holds, so that what the page has just
// loaded isn't sent twice. The hash keeps a half-uploaded version out.
async function fetchAll() {
  const cache = await caches.open(CACHE);
  try {
    await fetchInto(cache);
  } catch (fault) {
    await caches.delete(CACHE);
    throw fault;
  }
}

async function fetchInto(cache) {
  await Promise.all(FILES.map(async ([path, integrity]) => {
    const response = await fetch(new Request(path, { cache: "no-cache", integrity }));
    if (!response.ok) throw new Error(`${path}: ${response.status}`);
    await cache.put(path, await plain(response));
  }));
}

// A host may answer by a redirect (index.html to ./), which a navigation must not be served with.
async function plain(response) {
  if (!response.redirected) return response;
  return new Response(await response.blob(), { headers: response.headers });
}

self.addEventListener("activate", event => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
  await self.clients.claim();
})()));

self.addEventListener("message", event => { if (event.data === "come in") self.skipWaiting(); });

self.addEventListener("fetch", event => {
  const request = event.request, url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin || !url.pathname.startsWith(scope)) return;
  event.respondWith(answer(request, url));
});

async function answer(request, url) {
  const cache = await caches.open(CACHE);
  const path = url.pathname.slice(scope.length) || "index.html";
  const kept = await cache.match(path);
  if (kept) return kept;
  // There is one page: another address below it can only be a mistyped one.
  return request.mode === "navigate" ? fetch(request).catch(() => Response.redirect(scope)) : fetch(request);
}
