import { chromium } from 'playwright-core';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { ensureBrowser } from '../../../src/commands/browser.mjs';
import { buildBench, buildIsStale } from '../../../src/commands/build.mjs';
import { inProject } from '../../../src/commands/paths.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built bench is served, with a closing slash. */
    readonly benchUrl: string;
    /** Where the one running Chromium listens. */
    readonly browserEndpoint: string;
  }
}

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

/** Builds the bench if it is stale, serves it on a free port and starts one Chromium for all files. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  if ((await buildIsStale()) && !buildBench()) {
    throw new Error('The bench does not build, so the browser tests cannot run.');
  }
  const server = await preview({
    configFile: inProject('vite.config.ts'),
    logLevel: 'warn',
    preview: { host: '127.0.0.1', port: 0 },
  });
  const bound = server.httpServer.address();
  if (bound === null || typeof bound === 'string') throw new Error('The preview server has no port.');
  const browser = await chromium.launchServer({ executablePath: ensureBrowser(), args: chromiumFlags });
  project.provide('benchUrl', `http://127.0.0.1:${bound.port}/`);
  project.provide('browserEndpoint', browser.wsEndpoint());
  return async () => {
    await browser.close();
    await server.close();
  };
}
