import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  atRest,
  type Bench,
  cutTexts,
  look,
  openBench,
  overlappingTexts,
  seenTexts,
  settled,
  turnTo,
} from './harness';

/** The most words that stand on the first screen of a demo, figures and names aside. */
const MOST_WORDS = 90;

const demos = ['Sandmartin', 'Fieldfare', 'Whimbrel', 'Corncrake'] as const;

const sizes = [
  [1920, 1080],
  [1440, 900],
  [1366, 768],
  [1280, 720],
  [1024, 768],
  [960, 600],
  [820, 1180],
  [720, 450],
  [844, 390],
  [390, 844],
] as const;

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, reducedMotion: true, graphics: 'unpainted' });
  page = bench.page;
  await page.waitForSelector('[data-testid=stage] canvas');
});
afterAll(() => bench.close());

async function open(name: (typeof demos)[number]): Promise<void> {
  const now = await page.evaluate(() => window.counterpoise.document.current().name);
  if (now !== name) {
    await page.locator('.app-name').click();
    await page.getByRole('button', { name: 'Choose an aircraft…' }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: new RegExp(name) })
      .click();
    await page.waitForFunction((wanted) => window.counterpoise.document.current().name === wanted, name);
  }
  await atRest(page);
}

/** Letters that stand for a unit belong to their figure. */
const units = /^(mm|m|g|ml|kg|s|min|cc)$/;

/** What stands there in words, with a hyphen one: without figures, units and the names that the person gave. */
async function wordsShown(): Promise<string[]> {
  const names = await page.evaluate(() => {
    const { name, parts, tanks, structure, leads = [], fuel } = window.counterpoise.document.current();
    return [
      name,
      fuel?.profile.name ?? '',
      ...[...parts, ...tanks, ...structure, ...leads].map((one) => one.name),
    ];
  });
  const texts = await seenTexts(page);
  const longestFirst = names.filter(Boolean).sort((a, b) => b.length - a.length);
  return texts.flatMap(({ text }) => {
    const rest = longestFirst.reduce(
      (left, name) => left.replaceAll(new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'gi'), ' '),
      text,
    );
    return (rest.match(/\p{L}+(?:-\p{L}+)*/gu) ?? []).filter((word) => !units.test(word));
  });
}

describe.each(demos)('%s', (name) => {
  test('the first screen says it in few words', async () => {
    await open(name);
    const words = await wordsShown();
    expect(words.length, words.join(' ')).toBeLessThanOrEqual(MOST_WORDS);
    // The count does see the screen.
    expect(words).toEqual(expect.arrayContaining(['CG', 'Manifest', 'Side']));
  });

  test('facts, beam and card say the same number for the same state', async () => {
    const { cgMm, band } = await look(page);
    const station = cgMm[0].toFixed(1);
    await expect
      .poll(() => page.locator('[data-fact^=cg] .fact-value').first().textContent())
      .toContain(station);
    const reading = page.locator('.travel-label');
    if (await reading.count()) await expect.poll(() => reading.textContent()).toContain(station);
    await expect.poll(() => page.locator('.manifest tfoot').textContent()).toContain(cgMm[0].toFixed(0));
    if (!band) throw new Error('the demos have a band');
    const limits = [band.forwardMm, band.aftMm].map((mm) => mm.toFixed(0));
    for (const limit of limits)
      await expect.poll(() => page.locator('[data-testid=beam] .zone').textContent()).toContain(limit);
    for (const limit of limits)
      await expect.poll(() => page.locator('[data-fold=band] .fold-summary').textContent()).toContain(limit);
  });
});

/** The demos with the longest words, and with the most switches. */
test.each(['Sandmartin', 'Fieldfare'] as const)(
  '%s at every size: nothing of the answer is cut, and no text lies on another',
  async (name) => {
    await open(name);
    const found: string[] = [];
    for (const [width, height] of sizes) {
      await page.setViewportSize({ width, height });
      const turns = await page.getByRole('navigation', { name: 'Places of the bench' }).isVisible();
      for (const place of turns ? (['Beam', 'Manifest', 'Card', 'Stage'] as const) : (['Stage'] as const)) {
        await turnTo(page, place);
        await settled(page);
        const cut = (await cutTexts(page, '.answer')).map((line) => `cut: ${line}`);
        for (const line of [...cut, ...(await overlappingTexts(page))])
          found.push(`${width} × ${height}, ${place}: ${line}`);
      }
    }
    expect(found).toEqual([]);
  },
);

/** Every size of every demo where asked for; else each size for half of the demos, in turn. */
const isLookedAt = (demo: number, size: number) =>
  process.env.EVERY_SIZE !== undefined || (demo + size) % 2 === 0;

test.each(demos)('%s in every view: no text lies on another', async (name) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await open(name);
  const found: string[] = [];
  for (const [at, [width, height]] of sizes.entries()) {
    if (!isLookedAt(demos.indexOf(name), at)) continue;
    await page.setViewportSize({ width, height });
    const turns = await page.getByRole('navigation', { name: 'Places of the bench' }).isVisible();
    // With the beam's turn the stage stands above it.
    await turnTo(page, turns ? 'Beam' : 'Stage');
    for (const view of ['side', 'top', 'front', 'free'] as const) {
      await page.evaluate((shown) => window.counterpoise.view.setState({ view: shown }), view);
      await settled(page);
      for (const line of await overlappingTexts(page)) found.push(`${width} × ${height}, ${view}: ${line}`);
    }
  }
  await page.setViewportSize({ width: 1440, height: 900 });
  expect(found).toEqual([]);
});

test('half of the height is the stage’s at 1280 × 720, and a good third on an upright tablet', async () => {
  await open('Sandmartin');
  for (const [width, height, share] of [
    [1280, 720, 0.5],
    [820, 1180, 0.35],
  ] as const) {
    await page.setViewportSize({ width, height });
    await settled(page);
    const stage = await page.getByTestId('stage').boundingBox();
    expect((stage?.height ?? 0) / height, `${width} × ${height}`).toBeGreaterThanOrEqual(share);
  }
  await page.setViewportSize({ width: 1440, height: 900 });
});
