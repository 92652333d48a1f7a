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

self.addEventListener('activate', (event) => event.waitUntil(takeOver()));

/** Where a build notes in its own cache that it has been in use, and since when. */
const USED = 'in-use-since';

/** Tabs that are open still run the build before, and fetch its pieces: that one stays. One that was never used goes. */
async function takeOver() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(mine) && name !== cacheName);
  const used = await Promise.all(old.map((name) => usedSince(name)));
  const latest = Math.max(...used);
  // While a newer build is being kept, its own cache is among them.
  const { installing, waiting } = self.registration;
  const gone = installing || waiting ? [] : old.filter((_, at) => used[at] < latest);
  await Promise.all(gone.map((name) => caches.delete(name)));
  const cache = await caches.open(cacheName);
  await cache.put(USED, new Response(String(Date.now())));
  await self.clients.claim();
}

/** ms since 1970; 0 for a build that only waited, or is older than this note. */
async function usedSince(name) {
  const note = await (await caches.open(name)).match(USED);
  return note ? Number(await note.text()) : 0;
}

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
