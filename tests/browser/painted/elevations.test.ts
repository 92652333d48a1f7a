import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Bench, expectClean, look, onPage, openBench, settled, showView } from '../harness';

describe('the elevations and the beam are one drawing', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench({ width: 1100, height: 760 });
  });
  afterAll(() => bench.close());

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
      expectClean(bench);
    },
  );
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
