import react from '@vitejs/plugin-react';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { inProject } from '../../src/commands/paths.mjs';
import { serveBench } from '../../src/commands/servedBench';
import { dragAPlainBox, dragOnBench, fillUp, frameAtOnce } from './dragInPage';
import type { BenchRow } from './measure';

// A drag as a person feels it: all that one move costs in scripts, on the built page in a real browser, beside a scene of
// as many plain boxes of which one is moved.

const MOVES = 60;
const TURNS = 5;
/** Before anything is counted. */
const WARM_MOVES = 120;
const LARGE = 200;

interface Case {
  readonly name: string;
  readonly demo: string;
  /** Filled up to so many parts; as it comes when left out. */
  readonly parts?: number;
  /** The aim for the 95th percentile, ms. */
  readonly limitMs: number;
}

const cases: readonly Case[] = [
  { name: 'Sandmartin', demo: 'Sandmartin', limitMs: 8 },
  { name: 'Fieldfare', demo: 'Fieldfare', limitMs: 8 },
  { name: `${LARGE} parts`, demo: 'Sandmartin', parts: LARGE, limitMs: 12 },
];

async function servePlainScene() {
  const own = {
    configFile: false as const,
    root: inProject('tests/bench/plainScene'),
    logLevel: 'warn' as const,
    plugins: [react()],
    build: { outDir: inProject('.cache/plainScene'), emptyOutDir: true, chunkSizeWarningLimit: 4000 },
  };
  await build(own);
  const server = await preview({ ...own, preview: { host: '127.0.0.1', port: 0 } });
  const bound = server.httpServer.address();
  if (bound === null || typeof bound === 'string') throw new Error('The preview server has no port.');
  return { url: `http://127.0.0.1:${bound.port}/`, close: () => server.close() };
}

/** A page that is quiet: nothing is fetched, worked out or drawn any more but what a drag asks for. */
async function openQuiet(browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
  });
  await context.addInitScript(frameAtOnce);
  const page = await context.newPage();
  await page.goto(url, { waitUntil: 'load' });
  return page;
}

async function openAircraft(browser: Browser, url: string, { demo, parts }: Case): Promise<Page> {
  const page = await openQuiet(browser, url);
  // Drawing in software must not keep the scripts waiting.
  await page.addStyleTag({ content: '.stage-picture { width: 64px !important; height: 48px !important; }' });
  await page.waitForSelector('.stage-bar', { state: 'attached' });
  if (demo !== 'Sandmartin') {
    await page.locator('.app-name').click();
    await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: new RegExp(demo) })
      .click();
    await page.waitForFunction((name) => window.counterpoise.document.current().name === name, demo);
  }
  if (parts !== undefined) await page.evaluate(fillUp(parts));
  await page.waitForFunction(
    () => window.counterpoise.stability.get().fresh && window.counterpoise.fit.get().judged,
  );
  await page.waitForTimeout(2500);
  return page;
}

const percentile = (times: readonly number[], share: number): number =>
  [...times].sort((a, b) => a - b)[Math.floor(share * (times.length - 1))] ?? Number.NaN;

/** What one move took in all, and what of it in scripts alone, ms. */
interface Move {
  readonly wholeMs: number;
  readonly scriptsMs: number;
}

const timed = (page: Page, moves: string): Promise<Move[]> => page.evaluate(moves);

/** Ours and theirs turn by turn, so that a busy machine slows both alike. */
async function dragBoth(ours: Page, theirs: Page) {
  await timed(ours, dragOnBench(WARM_MOVES));
  await timed(theirs, dragAPlainBox(WARM_MOVES));
  const times: { ours: Move[]; theirs: Move[] } = { ours: [], theirs: [] };
  for (let turn = 0; turn < TURNS; turn += 1) {
    times.ours.push(...(await timed(ours, dragOnBench(MOVES))));
    times.theirs.push(...(await timed(theirs, dragAPlainBox(MOVES))));
  }
  return times;
}

export default async function rows(): Promise<BenchRow[]> {
  const [served, plain] = [await serveBench(), await servePlainScene()];
  const found: BenchRow[] = [];
  try {
    const browser = await chromium.connect(served.browser.wsEndpoint());
    for (const one of cases) {
      const ours = await openAircraft(browser, served.url, one);
      const boxes = await ours.evaluate(() => window.counterpoise.document.current().parts.length);
      const theirs = await openQuiet(browser, `${plain.url}?boxes=${boxes}`);
      await theirs.waitForFunction('window.moveBox');
      const times = await dragBoth(ours, theirs);
      const whole = (moves: readonly Move[]) => moves.map(({ wholeMs }) => wholeMs);
      const [our, their] = [percentile(whole(times.ours), 0.5), percentile(whole(times.theirs), 0.5)];
      const name = `one move of a part by hand, ${one.name}: scripts, rendering included`;
      const late = percentile(whole(times.ours), 0.95);
      const scripts = times.ours.map(({ scriptsMs }) => scriptsMs);
      const lateScripts = percentile(scripts, 0.95);
      found.push(
        {
          name,
          ours: our,
          theirs: their,
          unit: 'ms',
          against: `@react-three/fiber: ${boxes} plain boxes, one of them moved`,
          ratio: their / our,
        },
        {
          name: `${name}, 95th percentile`,
          ours: late,
          theirs: one.limitMs,
          unit: 'ms',
          against: 'stated limit',
          ratio: one.limitMs / late,
        },
        {
          name: `${name}, 95th percentile without the browser’s own style, layout and paint`,
          ours: lateScripts,
          theirs: one.limitMs,
          unit: 'ms',
          against: 'stated limit',
          ratio: one.limitMs / lateScripts,
        },
      );
      await ours.context().close();
      await theirs.context().close();
    }
    await browser.close();
  } finally {
    await plain.close();
    await served.close();
  }
  return found;
}
