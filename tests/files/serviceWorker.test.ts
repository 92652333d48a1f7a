import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inProject } from '../../src/commands/paths.mjs';

const text = readFileSync(inProject('src/files/offline/serviceWorker.js'), 'utf8');
const SCOPE = 'https://example.org/bench/';

/** The caches of one browser, as far as the worker uses them (W3C Service Workers, section 5). */
function browserCaches() {
  const all = new Map<string, Map<string, string>>();
  const open = async (name: string) => {
    const cache = all.get(name) ?? new Map<string, string>();
    all.set(name, cache);
    const match = async (key: string) => {
      const body = cache.get(key);
      return body === undefined ? undefined : new Response(body);
    };
    return {
      match,
      put: async (key: string, response: Response) => void cache.set(key, await response.text()),
      addAll: async (files: readonly string[]) => {
        for (const file of files) cache.set(file, file);
      },
    };
  };
  return { all, open, keys: async () => [...all.keys()], delete: async (name: string) => all.delete(name) };
}

/** The worker of one build in that browser. */
function worker(caches: ReturnType<typeof browserCaches>, build: string) {
  const listeners = new Map<string, (event: object) => void>();
  const registration = { scope: SCOPE, installing: null as object | null, waiting: null };
  const self = {
    registration,
    clients: { claim: async () => {} },
    addEventListener: (kind: string, listener: (event: object) => void) => listeners.set(kind, listener),
  };
  const source = text
    .replace("/* BUILD */ ''", JSON.stringify(build))
    .replace('/* FILES */ []', JSON.stringify(['index.html', `piece-${build}.js`]));
  class Request {
    constructor(readonly file: string) {}
    toString = () => this.file;
  }
  const addAll = caches.open;
  const forWorker = {
    ...caches,
    open: async (name: string) => {
      const cache = await addAll(name);
      return { ...cache, addAll: (files: readonly object[]) => cache.addAll(files.map(String)) };
    },
  };
  new Function('self', 'caches', 'Request', source)(self, forWorker, Request);
  const send = async (kind: string) => {
    let done: Promise<unknown> = Promise.resolve();
    listeners.get(kind)?.({ waitUntil: (work: Promise<unknown>) => (done = work) });
    await done;
  };
  return { install: () => send('install'), activate: () => send('activate'), registration };
}

const builds = (caches: ReturnType<typeof browserCaches>) =>
  [...caches.all.keys()].map((name) => name.split(' ').at(-1));

test('open tabs keep the build that they run, though others only waited in between', async () => {
  const caches = browserCaches();
  const [first, second, third] = ['1', '2', '3'].map((build) => worker(caches, build));
  await first!.install();
  await first!.activate();
  await second!.install();
  await third!.install();
  await third!.activate();
  expect(builds(caches)).toEqual(['1', '3']);
  expect([...(caches.all.get(`counterpoise ${SCOPE} 1`)?.keys() ?? [])]).toContain('piece-1.js');
});

test('the build before the last one in use goes, and other pages’ caches stay', async () => {
  const caches = browserCaches();
  await caches.open('another page');
  for (const build of ['1', '2', '3']) {
    const next = worker(caches, build);
    await next.install();
    await next.activate();
    await new Promise((done) => setTimeout(done, 2));
  }
  expect(builds(caches)).toEqual(['page', '2', '3']);
});

test('what is being kept for a newer build stays when an older one is taken into use', async () => {
  const caches = browserCaches();
  const [first, second, third] = ['1', '2', '3'].map((build) => worker(caches, build));
  await first!.install();
  await first!.activate();
  await second!.install();
  await third!.install();
  second!.registration.installing = {};
  await second!.activate();
  expect(builds(caches)).toEqual(['1', '2', '3']);
});
