import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import {
  atRest,
  type Bench,
  drag,
  expectClean,
  look,
  middleOf,
  onPage,
  openBench,
  settled,
  showView,
} from '../harness';

// One page for all that looks at pixels: in software each picture takes its time, and the first most of all.
let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1100, height: 760, reducedMotion: true });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
  await atRest(bench.page);
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

describe('the elevations and the beam are one drawing', () => {
  test.each(['Side', 'Top'] as const)(
    '%s: the band stands in the same columns above and below',
    async (view) => {
      const { page } = bench;
      await showView(page, view);
      const { band } = await look(page);
      if (!band) throw new Error('the demo aircraft has a band');
      const stage = await page.locator('[data-testid=stage] canvas').boundingBox();
      // Closer in about the band, so that the plumb line does not cover its edge; the beam must follow.
      const about = await onPage(page, [band.aftMm, 0, 0]);
      await page.mouse.move(about.x, about.y);
      const scale = () => page.evaluate(() => window.counterpoise.axis.getState().station.mmPerPx);
      const before = await scale();
      await page.mouse.wheel(0, -900);
      await page.waitForFunction(
        (was) => window.counterpoise.axis.getState().station.mmPerPx < was / 2,
        before,
      );
      await settled(page);
      const beam = await page.getByTestId('beam').boundingBox();
      if (!stage || !beam) throw new Error('stage or beam not shown');
      expect(beam.x).toBeCloseTo(stage.x, 1);
      expect(beam.width).toBeCloseTo(stage.width, 1);
      const zone = await page.locator('[data-testid=beam] .zone rect').first().boundingBox();
      if (!zone) throw new Error('no band on the beam');
      const left = await onPage(page, [band.forwardMm, 0, 0]);
      const right = await onPage(page, [band.aftMm, 0, 0]);
      expect(Math.abs(zone.x - left.x)).toBeLessThan(0.5);
      expect(Math.abs(zone.x + zone.width - right.x)).toBeLessThan(0.5);
      // And the stage really paints it there: its columns near the foot are yellower than the mat beside them.
      const yellow = await columnsOfBand(page, stage);
      expect(Math.abs(yellow.from - left.x)).toBeLessThanOrEqual(1.5);
      expect(Math.abs(yellow.to - right.x)).toBeLessThanOrEqual(1.5);
    },
  );
});

describe('what happens is painted', () => {
  const pixels = () => bench.page.locator('[data-testid=stage] canvas').screenshot();
  /** The picture once nothing in it changes any more, so that what comes after is the change asked about. */
  const still = async (): Promise<Buffer> => {
    let last = await pixels();
    await expect
      .poll(async () => {
        const before = last;
        last = await pixels();
        return last.equals(before);
      })
      .toBe(true);
    return last;
  };
  /** Waits for a picture that is another. */
  const differsFrom = (picture: Buffer) =>
    expect.poll(async () => (await pixels()).equals(picture)).toBe(false);

  test('a pack that is dragged on the beam moves on the stage while it is in hand', async () => {
    const { page } = bench;
    await showView(page, 'Side');
    const picture = await still();
    const from = await middleOf(page, '[data-testid=beam] [data-item="flight-pack"] .weight-shape');
    const to = { x: from.x + 120, y: from.y };
    await drag(page, from, to, { steps: 3, cancel: true, beforeRelease: () => differsFrom(picture) });
  });

  test('liquid tilts with the slider', async () => {
    const { page } = bench;
    await page.evaluate(() => window.counterpoise.view.setState({ fuelFraction: 0.5 }));
    await page.getByRole('button', { name: /^Attitude/ }).click();
    await settled(page);
    const level = await still();
    await page.getByRole('slider', { name: 'Nose up or down' }).fill('30');
    await differsFrom(level);
    await page.getByRole('button', { name: 'Level it' }).click();
  });

  test('the free view turns with a drag beside everything', async () => {
    const { page } = bench;
    await showView(page, 'Free');
    const stage = await page.locator('[data-testid=stage] canvas').boundingBox();
    if (!stage) throw new Error('no stage');
    const corner = { x: stage.x + 24, y: stage.y + 24 };
    const picture = await still();
    await drag(page, corner, { x: corner.x + 100, y: corner.y + 30 }, { steps: 3 });
    await differsFrom(picture);
  });
});

/** The first and last page column of the stage, a little above its foot, that is more yellow than the mat. */
async function columnsOfBand(
  page: Page,
  stage: { x: number; y: number; width: number; height: number },
): Promise<{ from: number; to: number }> {
  const strip = await page.screenshot({
    clip: { x: stage.x, y: stage.y + stage.height - 8, width: stage.width, height: 4 },
  });
  const columns = await page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('no 2D context');
    context.drawImage(image, 0, 0);
    const { data, width } = context.getImageData(0, 1, image.width, 1);
    const found: number[] = [];
    for (let x = 0; x < width; x++) {
      const [r = 0, , b = 0] = data.slice(4 * x, 4 * x + 3);
      if (r - b > 40) found.push(x);
    }
    return found;
  }, strip.toString('base64'));
  return { from: stage.x + (columns[0] ?? Number.NaN), to: stage.x + (columns.at(-1) ?? Number.NaN) + 1 };
}
