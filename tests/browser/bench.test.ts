import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axe, type Bench, expectClean, look, openBench, settled } from './harness';

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

describe('a wide window', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench({ width: 1440, height: 900, graphics: 'unpainted' });
    await bench.page.waitForSelector('[data-testid=stage] canvas');
  });
  afterAll(() => bench.close());

  test('opens with a demo aircraft on it, and asks nobody else for anything', async () => {
    const { page } = bench;
    await settled(page);
    const { massG, cgMm } = await look(page);
    // The figures on the screen are those of the engine.
    const verdict = page.getByTestId('verdict');
    await expect.poll(() => verdict.textContent()).toContain(cgMm[0].toFixed(1));
    const shown = `${await verdict.textContent()} ${await page.getByTestId('manifest').textContent()}`;
    expect(shown).toContain(`${Math.round(massG)}`);
    await page.waitForFunction(() => window.counterpoise.stability.get().fresh);
    const bytes = await gzippedBytes(bench.requests);
    expect(bytes, `${bytes} bytes over ${bench.requests.length} requests`).toBeLessThanOrEqual(
      UNTOUCHED_BYTES,
    );
    expectClean(bench);
  });

  test('axe finds nothing, light or dark', () => findsNothing(bench));

  test('every demo aircraft can be put on the bench', async () => {
    const { page } = bench;
    for (const name of ['Fieldfare', 'Whimbrel', 'Corncrake', 'Sandmartin']) {
      await page.locator('.app-name').click();
      await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
      await page
        .getByRole('dialog')
        .getByRole('button', { name: new RegExp(name) })
        .click();
      await page.waitForFunction((wanted) => window.counterpoise.document.current().name === wanted, name);
      const { cgMm } = await look(page);
      await expect.poll(() => page.getByTestId('verdict').textContent()).toContain(cgMm[0].toFixed(1));
    }
    expectClean(bench);
  });
});

test('an upright tablet: axe finds nothing, light or dark', async () => {
  const bench = await openBench({ width: 820, height: 1180, touch: true, graphics: 'unpainted' });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
  await findsNothing(bench);
  await bench.close();
});

/** Looks at the bench in both themes, with nothing chosen and with a part. */
async function findsNothing(bench: Bench): Promise<void> {
  const { page } = bench;
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
}

describe('without a stage', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench({ graphics: false });
    await bench.page.getByTestId('manifest').waitFor();
  });
  afterAll(() => bench.close());

  test('the disc on the curve empties the tanks', async () => {
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
    await page.keyboard.press('End');
    expectClean(bench);
  });

  test('what was changed is there again after a reload', async () => {
    const { page } = bench;
    await page.locator('[data-testid=manifest] [data-item="flight-pack"]').first().click();
    await page.locator('[data-testid=beam] svg[tabindex="0"]').focus();
    await page.keyboard.press('Shift+ArrowLeft');
    const before = await look(page);
    // It is kept a little later.
    await page.waitForFunction(() => {
      const { parts } = window.counterpoise.document.current();
      const kept = Object.values(localStorage).filter((text) => text.startsWith('{'));
      return kept.some((text) => JSON.stringify(JSON.parse(text).parts) === JSON.stringify(parts));
    });
    await page.reload({ waitUntil: 'load' });
    await page.waitForSelector('[data-testid=manifest]');
    expect((await look(page)).cgMm).toEqual(before.cgMm);
    expectClean(bench);
  });
});
