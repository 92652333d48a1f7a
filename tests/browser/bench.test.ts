import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { axe, expectClean, look, openBench, settled } from './harness';

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
  const bench = await openBench({ width: 1440, height: 900, graphics: 'unpainted' });
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
