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

test('two fingers on a part zoom, and the part stays where it is', async () => {
  const fingers = await openBench({
    touch: true,
    reducedMotion: true,
    width: 820,
    height: 1180,
    graphics: 'unpainted',
  });
  const { page } = fingers;
  await page.waitForSelector('.stage-bar');
  await showView(page, 'Side');
  const start = await placeOf(page, PACK);
  const scale = () => page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);
  const before = await scale();
  const at = await onPage(page, start);
  const protocol = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apartPx: number) =>
    protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints:
        type === 'touchEnd'
          ? []
          : [
              { x: at.x, y: at.y, id: 0 },
              { x: at.x + apartPx, y: at.y, id: 1 },
            ],
    });
  await protocol.send('Input.dispatchTouchEvent', {
    type: 'touchStart',
    touchPoints: [{ x: at.x, y: at.y, id: 0 }],
  });
  await touch('touchStart', 80);
  for (let apart = 90; apart <= 160; apart += 10) await touch('touchMove', apart);
  await touch('touchEnd', 0);
  // Twice as far apart shows half as much.
  expect((await scale()) / before).toBeCloseTo(0.5, 1);
  expect(await placeOf(page, PACK)).toEqual(start);
  expectClean(fingers);
  await fingers.close();
});
