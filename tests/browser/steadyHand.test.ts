import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Bench, drag, expectClean, onPage, openBench, placeOf, settled, showView } from './harness';

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

/** Until the axis has followed the stage's box, which it does with the next frame. */
async function fitted(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const box = window.document.querySelector('.stage-box');
    const { widthPx, heightPx } = window.counterpoise.axis.getState();
    return box && Math.abs(box.clientWidth - widthPx) < 1 && Math.abs(box.clientHeight - heightPx) < 1;
  });
  await settled(page);
}

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
    await fitted(page);
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
  beforeAll(async () => {
    fingers = await openBench({
      touch: true,
      reducedMotion: true,
      width: 820,
      height: 1180,
      graphics: 'unpainted',
    });
    await fingers.page.waitForSelector('.stage-bar');
    await showView(fingers.page, 'Side');
    await settled(fingers.page);
  });
  afterAll(async () => {
    expectClean(fingers);
    await fingers.close();
  });

  /** Puts fingers on the page, moves them or takes them off, from then on. */
  const touching = async () => {
    const protocol = await fingers.page.context().newCDPSession(fingers.page);
    return (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: { x: number; y: number }[]) =>
      protocol.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map((point, id) => ({ ...point, id })),
      });
  };

  test('one that rests on a part chooses it too; one that rests and then drags moves it alone', async () => {
    const { page } = fingers;
    await page.evaluate(() => window.counterpoise.view.setState({ selectedId: 'camera', groupIds: [] }));
    const [start, camera] = [await placeOf(page, PACK), await placeOf(page, 'camera')];
    const mmPerPx = await page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);
    const at = await onPage(page, start);
    const touch = await touching();
    const chosen = () => page.evaluate(() => window.counterpoise.view.getState().groupIds);
    await touch('touchStart', at);
    await expect.poll(chosen).toEqual(['camera', PACK]);
    for (const dx of [4, 30, 60]) await touch('touchMove', { x: at.x + dx, y: at.y });
    await touch('touchEnd');
    expect(await chosen()).toEqual([]);
    const end = await placeOf(page, PACK);
    // It may have caught on the grid or a neighbour, within a few pixels.
    expect(Math.abs(end[0] - start[0] - 60 * mmPerPx)).toBeLessThanOrEqual(6 * mmPerPx);
    expect(await placeOf(page, 'camera')).toEqual(camera);
    await page.evaluate(() => window.counterpoise.document.undo());
    // A finger that only rests leaves both chosen.
    await page.evaluate(() => window.counterpoise.view.setState({ selectedId: 'camera', groupIds: [] }));
    await touch('touchStart', at);
    await expect.poll(chosen).toEqual(['camera', PACK]);
    await touch('touchMove', { x: at.x + 4, y: at.y });
    await touch('touchEnd');
    expect(await chosen()).toEqual(['camera', PACK]);
    expect(await placeOf(page, PACK)).toEqual(start);
  });

  test('the stage stays where it is under one that drags, though the verdict takes more lines', async () => {
    const { page } = fingers;
    await page.setViewportSize({ width: 390, height: 844 });
    await fitted(page);
    const top = async () => (await page.locator('.stage-box').boundingBox())?.y;
    const [start, before] = [await placeOf(page, PACK), await top()];
    const at = await onPage(page, start);
    let during: number | undefined;
    await drag(
      page,
      at,
      { x: at.x + 100, y: at.y },
      {
        touch: true,
        beforeRelease: async () => {
          await expect
            .poll(() => page.locator('.answer-headline').textContent())
            .toMatch(/^Do not fly: tail-heavy by/);
          await settled(page);
          during = await top();
        },
      },
    );
    expect(during).toBe(before);
    // What it says needs more room, which it takes once the hand is empty.
    await expect.poll(top).toBeGreaterThan(before ?? Number.NaN);
    await page.evaluate(() => window.counterpoise.document.undo());
    await page.setViewportSize({ width: 820, height: 1180 });
    await fitted(page);
    await expect.poll(() => placeOf(page, PACK)).toEqual(start);
  });

  test('two on a part zoom, and the part stays where it is', async () => {
    const { page } = fingers;
    const start = await placeOf(page, PACK);
    const scale = () => page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);
    const before = await scale();
    const at = await onPage(page, start);
    const touch = await touching();
    const apartBy = (px: number) => [at, { x: at.x + px, y: at.y }];
    await touch('touchStart', at);
    await touch('touchStart', ...apartBy(80));
    for (let apart = 90; apart <= 160; apart += 10) await touch('touchMove', ...apartBy(apart));
    await touch('touchEnd');
    // Twice as far apart shows half as much.
    expect((await scale()) / before).toBeCloseTo(0.5, 1);
    expect(await placeOf(page, PACK)).toEqual(start);
  });
});
