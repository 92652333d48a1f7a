import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axe, type Bench, expectClean, look, onPage, openBench, settled, showView } from '../harness';

/** All that comes before a person has touched anything, workers included, gzipped. */
const UNTOUCHED_BYTES = 770_000;

async function gzippedBytes(urls: readonly string[]): Promise<number> {
  const sizes = await Promise.all(
    [...new Set(urls)].map(
      async (url) => gzipSync(new Uint8Array(await (await fetch(url)).arrayBuffer())).length,
    ),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}

test('opens with a demo aircraft on it, and asks nobody else for anything', async () => {
  const bench = await openBench({ width: 1440, height: 900 });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
  await settled(bench.page);
  const { massG, cgMm } = await look(bench.page);
  const verdict = await bench.page.getByTestId('verdict').textContent();
  // The figures on the screen are those of the engine.
  const shown = `${verdict} ${await bench.page.getByTestId('manifest').textContent()}`;
  expect(shown).toContain(`${Math.round(massG)}`);
  expect(verdict).toContain(cgMm[0].toFixed(1));
  await bench.page.waitForFunction(() => window.counterpoise.stability.get().fresh);
  const bytes = await gzippedBytes(bench.requests);
  expect(bytes, `${bytes} bytes over ${bench.requests.length} requests`).toBeLessThanOrEqual(UNTOUCHED_BYTES);
  expectClean(bench);
  await bench.close();
});

test('what was changed is there again after a reload', async () => {
  const bench = await openBench({ graphics: false });
  const { page } = bench;
  await page.locator('[data-testid=manifest] [data-item="flight-pack"]').first().click();
  await page.locator('[data-testid=beam] svg[tabindex="0"]').focus();
  await page.keyboard.press('Shift+ArrowLeft');
  const before = await look(page);
  await page.waitForTimeout(500);
  await page.reload({ waitUntil: 'load' });
  await page.waitForSelector('[data-testid=manifest]');
  expect((await look(page)).cgMm).toEqual(before.cgMm);
  expectClean(bench);
  await bench.close();
});

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
  page: import('playwright-core').Page,
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

test('the disc on the curve empties the tanks', async () => {
  const bench = await openBench({ graphics: false });
  const { page } = bench;
  const full = await look(page);
  await page.getByRole('slider', { name: 'Fuel remaining' }).first().focus();
  await page.keyboard.press('Home');
  const dry = await look(page);
  expect([full.fuelFraction, dry.fuelFraction]).toEqual([1, 0]);
  expect(full.cgMm[0]).toBeCloseTo(full.travel[0]?.[1] ?? Number.NaN, 6);
  expect(dry.cgMm[0]).toBeCloseTo(full.travel.at(-1)?.[1] ?? Number.NaN, 6);
  // What has gone is what the tanks could give: volume × density, by hand from the document.
  const [usableMl, density] = await page.evaluate(() => {
    const { balance, document } = window.counterpoise;
    return [balance.get().usableMl, document.current().fuel?.densityGPerMl ?? 0] as const;
  });
  expect(full.massG - dry.massG).toBeCloseTo(usableMl * density, 6);
  expectClean(bench);
  await bench.close();
});

describe('accessibility', () => {
  test.each([
    [1440, 900],
    [820, 1180],
  ] as const)('%i × %i: axe finds nothing, light or dark', async (width, height) => {
    const bench = await openBench({ width, height, touch: width < 1000, graphics: 'unpainted' });
    const { page } = bench;
    await page.waitForSelector('[data-testid=stage] canvas');
    for (const theme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: theme });
      for (const selectedId of [null, 'flight-pack']) {
        await page.evaluate((id) => window.counterpoise.view.setState({ selectedId: id }), selectedId);
        await settled(page);
        expect(await axe(page)).toEqual([]);
      }
      const overflow = await page.evaluate(
        () => window.document.documentElement.scrollWidth - window.document.documentElement.clientWidth,
      );
      expect(overflow).toBeLessThanOrEqual(0);
    }
    expectClean(bench);
    await bench.close();
  });
});

test('every demo aircraft can be put on the bench', async () => {
  const bench = await openBench({ width: 1100, height: 760, graphics: 'unpainted' });
  const { page } = bench;
  for (const name of ['Fieldfare', 'Whimbrel', 'Corncrake', 'Sandmartin']) {
    await page.locator('.app-name').click();
    await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: new RegExp(name) })
      .click();
    await page.waitForFunction((wanted) => window.counterpoise.document.current().name === wanted, name);
    await settled(page);
    const { cgMm } = await look(page);
    expect(await page.getByTestId('verdict').textContent()).toContain(cgMm[0].toFixed(1));
  }
  expectClean(bench);
  await bench.close();
});
