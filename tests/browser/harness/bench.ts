import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import { isComplaint, noFigures } from './findings';
import { type Graphics, setGraphics } from './graphics';

export interface BenchOptions {
  /** Window size in CSS pixels; 1280 × 800 unless given. */
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly reducedMotion?: boolean;
  readonly touch?: boolean;
  /** As in browsers without file handles: files come by an input and go by a download. */
  readonly plainFiles?: boolean;
  /** What of the stage is there; all of it unless given. */
  readonly graphics?: Graphics;
  /** True where the browser may keep the page for use without a network; elsewhere no test is to meet an old build. */
  readonly offline?: boolean;
  /** Where another build is served, with a closing slash; the built bench unless given. */
  readonly url?: string;
  /** What follows the address: a subfolder, a fragment. */
  readonly path?: string;
  /** Complaints that the fault under test brings with it; all others fail the test. */
  readonly expects?: RegExp;
  /** Runs before the page is opened: for faults that must be there from the start. */
  readonly prepare?: (context: BrowserContext) => Promise<unknown>;
  /** Whose storage is shared: another tab of the same browser. */
  readonly beside?: Bench;
}

export interface Bench {
  readonly page: Page;
  /** Console errors and warnings, and errors that the page let through, as they come. */
  readonly errors: string[];
  /** The address of every request but data: and blob: ones, as they come. */
  readonly requests: readonly string[];
  /** Those of the requests that left the page's own origin. */
  foreignRequests(): string[];
  /** Which complaints the fault under test brings with it from now on; all others fail the test. */
  expecting(complaints: RegExp): void;
  close(): Promise<void>;
}

interface Open {
  readonly bench: Bench;
  /** How many of its errors were looked at already. */
  seen: number;
}

const open = new Set<Open>();
/** What was wrong on pages that were closed since the last look. */
const closed: string[] = [];

/** Everything that went wrong since it was last asked, on every page that is or was open. */
export async function lookedAt(): Promise<string[]> {
  const found = closed.splice(0);
  for (const one of open) found.push(...(await wrongOn(one)));
  return found;
}

async function wrongOn(one: Open): Promise<string[]> {
  const { bench } = one;
  const errors = bench.errors.slice(one.seen);
  one.seen = bench.errors.length;
  return [...errors, ...(bench.page.isClosed() ? [] : await noFigures(bench.page).catch(() => []))];
}

/** How long whatever is waited for may take: a limit against a hang, for both cores may be busy with something else. */
const WAIT_MS = 150_000;

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
    graphics = true,
    offline = false,
    url = inject('benchUrl'),
    expects,
    prepare,
    beside,
  } = options;
  browser ??= chromium.connect(inject('browserEndpoint'));
  const context =
    beside?.page.context() ??
    (await (
      await browser
    ).newContext({
      viewport: { width, height },
      colorScheme: dark ? 'dark' : 'light',
      reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
      hasTouch: touch,
      acceptDownloads: true,
    }));
  context.setDefaultTimeout(WAIT_MS);
  // A context beside another has it already, and adding it asks every page there, a dead one too.
  if (!beside) await setGraphics(context, graphics);
  if (!offline && !beside) await context.addInitScript(withoutServiceWorkers);
  if (!beside) await context.addInitScript(waitsLonger);
  await prepare?.(context);
  const page = await context.newPage();
  if (plainFiles) {
    await page.addInitScript('delete window.showOpenFilePicker; delete window.showSaveFilePicker;');
  }
  const errors: string[] = [];
  const requests: string[] = [];
  const recorded: Recorded = { errors, requests, expects };
  record(context, page, recorded);
  await page.goto(new URL(path, url).href, { waitUntil: 'load' });
  const bench: Bench = {
    page,
    errors,
    requests,
    expecting: (complaints) => {
      recorded.expects = complaints;
    },
    foreignRequests: () => requests.filter((asked) => !isOwn(asked, url)),
    close: async () => {
      closed.push(...(await wrongOn(mine)));
      open.delete(mine);
      await (beside ? page.close() : context.close());
    },
  };
  const mine: Open = { bench, seen: 0 };
  open.add(mine);
  return bench;
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

function withoutServiceWorkers(): void {
  Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined });
}

/** What the page gives up after ten seconds or more may take ten times as long: both cores may be busy otherwise. */
function waitsLonger(): void {
  const real = window.setTimeout;
  window.setTimeout = ((run: TimerHandler, ms = 0, ...given: unknown[]) =>
    real(run, ms < 10_000 ? ms : 10 * ms, ...given)) as typeof window.setTimeout;
}

interface Recorded {
  readonly errors: string[];
  readonly requests: string[];
  expects: RegExp | undefined;
}

function record(context: BrowserContext, page: Page, recorded: Recorded): void {
  const { errors, requests } = recorded;
  const complain = (text: string) => {
    if (!recorded.expects?.test(text)) errors.push(text);
  };
  page.on('console', (message) => {
    if (isComplaint(message.type(), message.text())) complain(message.text());
  });
  page.on('pageerror', (error) => complain(error.message));
  page.on('crash', () => complain('the page crashed'));
  page.on('websocket', (socket) => requests.push(socket.url()));
  // On the context, so that workers are heard too.
  context.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url())) requests.push(request.url());
  });
}
