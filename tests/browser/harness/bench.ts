import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { expect, inject } from 'vitest';

export interface BenchOptions {
  /** Window size in CSS pixels; 1280 × 800 unless given. */
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly reducedMotion?: boolean;
  readonly touch?: boolean;
  /** As in browsers without file handles: files come by an input and go by a download. */
  readonly plainFiles?: boolean;
  /** What follows the address, such as '?demo=whimbrel'. */
  readonly path?: string;
}

export interface Bench {
  readonly page: Page;
  /** Console errors and errors that the page let through, as they come. */
  readonly errors: readonly string[];
  /** The address of every request but data: and blob: ones, as they come. */
  readonly requests: readonly string[];
  /** Those of the requests that left the page's own origin. */
  foreignRequests(): string[];
  close(): Promise<void>;
}

let browser: Promise<Browser> | undefined;

/** Opens the built bench in a fresh browser profile, so with empty storage. */
export async function openBench(options: BenchOptions = {}): Promise<Bench> {
  const {
    width = 1280,
    height = 800,
    dark = false,
    reducedMotion = false,
    touch = false,
    plainFiles = false,
    path = '',
  } = options;
  browser ??= chromium.connect(inject('browserEndpoint'));
  const benchUrl = inject('benchUrl');
  const context = await (await browser).newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
    hasTouch: touch,
    acceptDownloads: true,
  });
  const page = await context.newPage();
  if (plainFiles) {
    await page.addInitScript('delete window.showOpenFilePicker; delete window.showSaveFilePicker;');
  }
  const errors: string[] = [];
  const requests: string[] = [];
  record(context, page, errors, requests);
  await page.goto(new URL(path, benchUrl).href, { waitUntil: 'load' });
  return {
    page,
    errors,
    requests,
    foreignRequests: () => requests.filter((url) => !isOwn(url, benchUrl)),
    close: () => context.close(),
  };
}

/** Asserts that nothing went wrong on the page and that no request left its origin. */
export function expectClean(bench: Bench): void {
  expect(bench.errors, 'errors on the page').toEqual([]);
  expect(bench.foreignRequests(), 'requests to another origin').toEqual([]);
}

/** Whether an address is on the bench's origin, over http or as a web socket. */
function isOwn(url: string, benchUrl: string): boolean {
  return new URL(url).host === new URL(benchUrl).host;
}

function record(context: BrowserContext, page: Page, errors: string[], requests: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('crash', () => errors.push('the page crashed'));
  page.on('websocket', (socket) => requests.push(socket.url()));
  // On the context, so that workers are heard too.
  context.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url())) requests.push(request.url());
  });
}
