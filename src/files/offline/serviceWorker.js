// Keeps every file of one build, so that the bench works without a network. The build puts its list in the place of the
// three words below. A newer build waits until the person asks for it.

const FILES = /* FILES */ [];
const BUILD = /* BUILD */ '';
const CHANGES = /* CHANGES */ [];

const mine = `counterpoise ${self.registration.scope} `;
const cacheName = mine + BUILD;

self.addEventListener('install', (event) => {
  const fresh = FILES.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(cacheName).then((cache) => cache.addAll(fresh)));
});

self.addEventListener('activate', (event) => {
  // Tabs that are open still run the build before, and fetch its pieces.
  const old = caches
    .keys()
    .then((names) => names.filter((name) => name.startsWith(mine) && name !== cacheName).slice(0, -1));
  event.waitUntil(
    old
      .then((names) => Promise.all(names.map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('message', ({ data, ports }) => {
  if (data === 'use now') self.skipWaiting();
  if (data === 'what is new') ports[0]?.postMessage(CHANGES);
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (!/^(GET|HEAD)$/.test(request.method) || !url.href.startsWith(self.registration.scope)) return;
  event.respondWith(answer(request, url));
});

async function answer(request, url) {
  const path = url.href.slice(self.registration.scope.length).replace(/[?#].*$/, '');
  const wanted = request.mode === 'navigate' || path === '' ? 'index.html' : path;
  const cache = await caches.open(cacheName);
  const kept = (await cache.match(wanted)) ?? (await caches.match(request, { ignoreSearch: true }));
  if (!kept) return fetch(request);
  return request.method === 'HEAD' ? new Response(null, { status: 200, headers: kept.headers }) : kept;
}
