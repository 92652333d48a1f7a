import { type BrowserServer, chromium } from 'playwright-core';
import { preview } from 'vite';
import { ensureBrowser } from './browser.mjs';
import { buildBench, buildIsStale } from './build.mjs';
import { inProject } from './paths.mjs';

// WebGL in software, nothing but the page's own requests, and runnable as root.
const chromiumFlags = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The built bench on a free port, and a Chromium to look at it with. */
export interface ServedBench {
  /** Where the built bench is served, with a closing slash. */
  readonly url: string;
  readonly browser: BrowserServer;
  close(): Promise<void>;
}

/**
 * Builds the bench if it is stale, serves it and starts a browser, with more flags for it where wanted. Throws an Error
 * that says what is in the way.
 */
export async function serveBench(moreFlags: readonly string[] = []): Promise<ServedBench> {
  if ((await buildIsStale()) && !buildBench()) throw new Error('The bench does not build.');
  const server = await preview({
    configFile: inProject('vite.config.ts'),
    logLevel: 'warn',
    preview: { host: '127.0.0.1', port: 0 },
  });
  const bound = server.httpServer.address();
  if (bound === null || typeof bound === 'string') throw new Error('The preview server has no port.');
  const browser = await chromium.launchServer({
    executablePath: ensureBrowser(),
    args: [...chromiumFlags, ...moreFlags],
  });
  return {
    url: `http://127.0.0.1:${bound.port}/`,
    browser,
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}
