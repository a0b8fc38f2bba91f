// Keeps one whole version of the app on the device. The build writes VERSION and FILES ([address, SHA-256] of each
// built file) above this line.
const SCOPE = self.registration.scope;
// Several apps may share one origin, each under its own path: a cache's name begins with our path.
const OURS = `potside ${SCOPE} `;
const CACHE = OURS + VERSION;

async function take(cache, [path, hash]) {
  const url = new URL(path, SCOPE);
  const answer = await fetch(url, { cache: "reload", credentials: "same-origin" });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  const body = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  const found = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (found !== hash) throw new Error(`${path}: not the file this version was built with`);
  // A fresh Response: one that came through a redirect may not answer a navigation.
  await cache.put(url, new Response(body, { headers: { "Content-Type": answer.headers.get("Content-Type") } }));
}

// All files of this version or none.
async function install() {
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(FILES.map((file) => take(cache, file)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request, page) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(page ? SCOPE : request, { ignoreSearch: true });
  return kept || fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "apply") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(SCOPE)) return;
  event.respondWith(answer(request, request.mode === "navigate"));
});
