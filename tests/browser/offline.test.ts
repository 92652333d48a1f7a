import { readdirSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { expect, test } from 'vitest';
import { buildFolder } from '../../src/commands/build.mjs';
import { openBench } from './harness';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

/** The build as any server of plain files has it, in a folder of its own; `worker` may stand in for the build's. */
function serve(port: number, worker?: string): Promise<Server> {
  const server = createServer(({ url = '/' }, response) => {
    const path = decodeURIComponent(url.replace(/\?.*$/, '')).replace(/^\/bench\//, '') || 'index.html';
    try {
      if (!url.startsWith('/bench/')) throw new Error('not here');
      const content =
        worker !== undefined && path === 'service-worker.js' ? worker : readFileSync(join(buildFolder, path));
      response.writeHead(200, { 'content-type': types[extname(path)] ?? 'application/octet-stream' });
      response.end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((done) => server.listen(port, '127.0.0.1', () => done(server)));
}

const stop = (server: Server) =>
  new Promise<void>((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });

/** What a person could need: all of the build but the build's own lists and what only readers of the project see. */
const builtFiles = () =>
  readdirSync(buildFolder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => statSync(join(buildFolder, name)).isFile())
    .filter((name) => !/^(\.vite\/|bench\.png$|service-worker\.js$)/.test(name));

test('after one visit the whole bench works without a network; a new version waits until it is asked for', async () => {
  let server = await serve(0);
  const { port } = server.address() as AddressInfo;
  const bench = await openBench({
    width: 1120,
    height: 700,
    graphics: false,
    offline: true,
    url: `http://127.0.0.1:${port}/bench/`,
    // What a browser says of a server that is not there.
    expects: /ERR_|fetching the script|Failed to fetch/,
  });
  const { page } = bench;
  const notices = page.getByTestId('notices');
  await expect.poll(() => notices.textContent()).toMatch(/works without a network/);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await stop(server);

  await page.reload({ waitUntil: 'load' });
  await page.getByTestId('manifest').waitFor();
  const missing = await page.evaluate(async (files) => {
    const answers = await Promise.all(
      files.map(async (file) => [file, await fetch(file).catch(() => null)] as const),
    );
    return answers.filter(([, answer]) => !answer?.ok).map(([file]) => file);
  }, builtFiles());
  expect(missing).toEqual([]);
  await page.getByRole('button', { name: 'Weigh-in' }).click();
  await page.getByTestId('weigh-in').getByRole('heading', { name: 'Weigh-in' }).waitFor();

  const text = readFileSync(join(buildFolder, 'service-worker.js'), 'utf8');
  const next = text
    .replace(/const BUILD = "[^"]*"/, 'const BUILD = "next"')
    .replace('const CHANGES = [', 'const CHANGES = [{"on":"2026-12-01","says":"Scales that sing"},');
  expect(next).not.toBe(text);
  server = await serve(port, next);
  await page.evaluate(() => {
    (window as { marked?: boolean }).marked = true;
    return navigator.serviceWorker.getRegistration().then((registration) => registration?.update());
  });
  await expect.poll(() => notices.textContent()).toMatch(/new version.*New in it: Scales that sing\./);
  expect(await page.evaluate(() => (window as { marked?: boolean }).marked)).toBe(true);
  const builds = () => page.evaluate(async () => (await caches.keys()).map((name) => name.split(' ').at(-1)));
  await notices.getByRole('button', { name: 'Use it now' }).click();
  await page.waitForFunction(() => (window as { marked?: boolean }).marked !== true);
  await page.getByTestId('manifest').waitFor();
  expect(await builds()).toContain('next');
  await bench.close();
  await stop(server);
});
