import type { CDPSession } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import {
  type Bench,
  drag,
  expectClean,
  onPage,
  openBench,
  type PagePoint,
  placeOf,
  settled,
  showView,
} from './harness';

/** Windows that people have: with and without a page that scrolls, a tablet, zoomed to 200 %, a phone both ways. */
const SIZES = [
  [1024, 768],
  [1080, 736],
  [810, 1010],
  [960, 600],
  [720, 450],
  [390, 844],
  [1280, 720],
  [1366, 768],
  [844, 390],
  [1920, 1080],
] as const;
const PACK = 'flight-pack';
const FAR_PX = 16;

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ reducedMotion: true, graphics: 'unpainted' });
  await bench.page.waitForSelector('.stage-bar');
});
afterAll(async () => {
  expectClean(bench);
  await bench.close();
});

/** How far every element that can scroll has been scrolled, px, save the manifest's list. */
const scrolled = () =>
  bench.page.evaluate(() =>
    [window.document.scrollingElement, ...window.document.querySelectorAll('*')]
      .filter((element) => element && !element.closest('.manifest-scroll'))
      .reduce((sum, element) => sum + Math.abs(element?.scrollTop ?? 0), 0),
  );

describe.each(SIZES)('at %i × %i', (width, height) => {
  test('a drag moves the part by its pixels times the scale, and nothing scrolls', async () => {
    const { page } = bench;
    await page.setViewportSize({ width, height });
    await page.evaluate(() => {
      while (window.counterpoise.document.api.getState().past.length > 0) window.counterpoise.document.undo();
      window.counterpoise.view.setState({ selectedId: null });
      for (const element of window.document.querySelectorAll('*')) element.scrollTop = 0;
    });
    await showView(page, 'Side');
    // The axis follows the stage's box with the next frame.
    await page.waitForFunction(() => {
      const box = window.document.querySelector('.stage-box');
      const { widthPx, heightPx } = window.counterpoise.axis.getState();
      return box && Math.abs(box.clientWidth - widthPx) < 1 && Math.abs(box.clientHeight - heightPx) < 1;
    });
    await settled(page);
    const start = await placeOf(page, PACK);
    const mmPerPx = await page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);
    const from = await onPage(page, start);
    await page.keyboard.down('Alt');
    await drag(page, from, { x: from.x + FAR_PX, y: from.y }, { steps: 4 });
    await page.keyboard.up('Alt');
    const end = await placeOf(page, PACK);
    expect(Math.abs(end[0] - start[0] - FAR_PX * mmPerPx)).toBeLessThanOrEqual(mmPerPx);
    expect(Math.abs(end[2] - start[2])).toBeLessThanOrEqual(mmPerPx);
    expect(await scrolled()).toBe(0);
    // What is said aloud gives the place that it has come to.
    const said = await page.getByTestId('stage-said').textContent();
    expect(said).toMatch(new RegExp(`^Flight pack at station ${Math.round(end[0])}\\b`));
  });
});

describe('with fingers', () => {
  let fingers: Bench;
  let protocol: CDPSession;
  beforeAll(async () => {
    const [width, height] = [820, 1180];
    fingers = await openBench({ touch: true, reducedMotion: true, width, height, graphics: 'unpainted' });
    await fingers.page.waitForSelector('.stage-bar');
    await showView(fingers.page, 'Side');
    protocol = await fingers.page.context().newCDPSession(fingers.page);
  });
  afterEach(() => expectClean(fingers));
  afterAll(() => fingers.close());

  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: readonly PagePoint[]) =>
    protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map(({ x, y }, id) => ({ x, y, id })),
    });
  const scale = () => fingers.page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);

  test('one that moved while the page was busy drags: it has not rested', async () => {
    const { page } = fingers;
    const start = await placeOf(page, PACK);
    const { x, y } = await onPage(page, start);
    await touch('touchStart', { x, y });
    // Longer than a finger must rest on a thing to choose it with others.
    const busy = page.evaluate(() => {
      const until = performance.now() + 900;
      while (performance.now() < until);
    });
    const moved = touch('touchMove', { x: x + 40, y });
    await Promise.all([busy, moved]);
    await touch('touchMove', { x: x + 80, y });
    await touch('touchEnd');
    await settled(page);
    // Whatever it caught on: within reach of where the finger is.
    const end = await placeOf(page, PACK);
    expect(Math.abs(end[0] - start[0] - 80 * (await scale()))).toBeLessThanOrEqual(10 * (await scale()));
    await page.evaluate(() => window.counterpoise.document.undo());
  });

  test('two on a part zoom, and the part stays where it is', async () => {
    const { page } = fingers;
    const start = await placeOf(page, PACK);
    const before = await scale();
    const at = await onPage(page, start);
    const other = (apartPx: number) => ({ x: at.x + apartPx, y: at.y });
    await touch('touchStart', at);
    await touch('touchStart', at, other(80));
    for (let apart = 90; apart <= 160; apart += 10) await touch('touchMove', at, other(apart));
    await touch('touchEnd');
    // Twice as far apart shows half as much.
    expect((await scale()) / before).toBeCloseTo(0.5, 1);
    expect(await placeOf(page, PACK)).toEqual(start);
  });
});
