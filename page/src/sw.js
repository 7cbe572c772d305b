// Keeps the page for when there is no network: everything at the first visit, and nothing but that afterwards.
const kept = "wellproof-" + "VERSION";
const files = ["FILES"];

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(kept).then((cache) => cache.addAll(files)).then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => {
  const others = async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith("wellproof-") && name !== kept) await caches.delete(name);
    }
    await self.clients.claim();
  };
  event.waitUntil(others());
});
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin || url.pathname.includes("/book/")) return;
  event.respondWith(
    caches.open(kept).then(async (cache) => (await cache.match(event.request, { ignoreSearch: true })) ?? fetch(event.request)),
  );
});
