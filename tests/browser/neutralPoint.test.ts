import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { tipChords } from '../../src/interaction/wingTip';
import type { Aircraft } from '../../src/model/document/types';
import {
  axe,
  type Bench,
  drag,
  expectClean,
  onPage,
  openBench,
  openFold,
  settled,
  showView,
} from './harness';

// One page for all, put back to the same aircraft before each test: opening it is most of the time.
let bench: Bench;
let demo: Aircraft;
beforeAll(async () => {
  bench = await openBench({ reducedMotion: true, width: 1100, height: 760, graphics: 'unpainted' });
  await bench.page.waitForSelector('[data-testid=stage-words]', { state: 'attached' });
  await bench.page.evaluate(() =>
    window.counterpoise.view.setState(({ layers }) => ({ layers: { ...layers, stability: true } })),
  );
  demo = await bench.page.evaluate(() => window.counterpoise.document.current());
});
beforeEach(async () => {
  await bench.page.evaluate((aircraft) => {
    window.counterpoise.document.replace(aircraft);
    window.counterpoise.view.setState({ view: 'free', selectedId: null, fuelFraction: 1 });
  }, demo);
  await openFold(bench.page, 'Neutral point');
  await openFold(bench.page, 'Limits');
  await bench.page.getByTestId('estimate').waitFor();
  await fresh();
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

/** Waits for the fine estimate of what is on the bench, and for the picture of it. */
async function fresh(): Promise<void> {
  await bench.page.waitForFunction(() => {
    const { fresh: now, estimate } = window.counterpoise.stability.get();
    return now && estimate?.detail === 'fine';
  });
  await settled(bench.page);
}

const told = () =>
  bench.page.evaluate(() => {
    const { balance, document } = window.counterpoise;
    const { estimate, estimateFresh, margin } = balance.get();
    if (!estimate || !margin) throw new Error('no estimate');
    const { neutralPointMm, pctMac, macMm, lemacMm, detail } = estimate;
    const { past, preview } = document.api.getState();
    const stand = { steps: past.length, previewing: preview !== null };
    return { neutralPointMm, pctMac, macMm, lemacMm, detail, margin, estimateFresh, ...stand };
  });

/** The marks that show the estimate: on the stage, on the beam and on the card. */
const MARKS = ['stage-neutral-point', 'neutral-point', 'estimate'];
/** Those that React draws; the stage's ring is written with the next frame, before anything is painted. */
const DRAWN_AT_ONCE = ['neutral-point', 'estimate'];

const shownFresh = () =>
  bench.page.evaluate(
    (marks) =>
      marks.map((mark) => window.document.querySelector(`[data-testid=${mark}]`)?.getAttribute('data-fresh')),
    MARKS,
  );

/** The page column of a mark's ring. */
const columnOf = (mark: string) =>
  bench.page.evaluate((wanted) => {
    const box = window.document.querySelector(`[data-testid=${wanted}] path`)?.getBoundingClientRect();
    return box ? box.left + box.width / 2 : Number.NaN;
  }, mark);

/** The middle of the left wing's tip chord on the page. */
const tipOnPage = async () => {
  const wing = demo.structure.find(({ id }) => id === 'wing');
  const tip = wing?.kind === 'surface' ? tipChords(wing)[1] : undefined;
  if (!tip) throw new Error('the demo aircraft has a wing of two halves');
  const [x, y, z] = tip.frontMm;
  return onPage(bench.page, [(x + tip.rearMm[0]) / 2, y, z]);
};

/** From above with the tips in the picture, which true to scale lie beyond it. */
async function showWholeSpan(): Promise<void> {
  const { page } = bench;
  await showView(page, 'Top');
  const whole = page.getByRole('button', { name: 'Whole span' });
  if (await whole.isVisible()) await whole.click();
  await settled(page);
}

test('the card gives what the balance says and calls it an estimate', async () => {
  const card = bench.page.getByTestId('estimate');
  const { neutralPointMm, pctMac, macMm, lemacMm, margin } = await told();
  // Position on the MAC and the static margin by their definitions (any stability textbook).
  expect(pctMac).toBeCloseTo((100 * (neutralPointMm - lemacMm)) / macMm, 9);
  const cgMm = await bench.page.evaluate(() => window.counterpoise.balance.get().cgMm?.[0] ?? Number.NaN);
  expect(margin.nowPct).toBeCloseTo((100 * (neutralPointMm - cgMm)) / macMm, 9);
  const words = (await card.textContent()) ?? '';
  for (const figure of [neutralPointMm, pctMac, macMm, lemacMm, margin.nowPct]) {
    expect(words).toContain(figure.toFixed(1));
  }
  expect(words).toContain('Estimated neutral point');
  expect(words).toContain('This is an estimate: start at the forward end.');
  expect(words).toMatch(/\d+ panels; the last refinement moved it \d\.\d\d % MAC/);
  expect(await shownFresh()).toEqual(['true', 'true', 'true']);
  expect(await axe(bench.page)).toEqual([]);
});

test('the usual margin makes a band beside the stated one', async () => {
  const { page } = bench;
  await page.getByRole('button', { name: 'Take 8 to 15 % MAC' }).click();
  const { neutralPointMm, macMm } = await told();
  const bands = await page.evaluate(() => {
    const { band, bandFrom, estimatedBand } = window.counterpoise.balance.get();
    return { band, bandFrom, estimatedBand };
  });
  expect(bands.bandFrom).toBe('stated');
  expect(bands.estimatedBand?.forwardMm).toBeCloseTo(neutralPointMm - 0.15 * macMm, 9);
  expect(bands.estimatedBand?.aftMm).toBeCloseTo(neutralPointMm - 0.08 * macMm, 9);
  await page.locator('.estimated-zone').waitFor({ state: 'attached' });
  await expect.poll(() => page.locator('[data-testid=beam] .zone').count()).toBe(1);
});

test('a stated band behind the neutral point is warned of, in the verdict and on the card', async () => {
  const { page } = bench;
  const { neutralPointMm } = await told();
  const aft = page.getByLabel('Aft limit');
  await aft.fill(String(Math.ceil(neutralPointMm) + 20));
  await aft.press('Enter');
  for (const place of ['verdict', 'estimate']) {
    await expect
      .poll(() => page.getByTestId(place).textContent())
      .toContain('behind the estimated neutral point');
  }
});

describe('dragging a wing tip aft in the top elevation', () => {
  test('moves the neutral point while it is dragged, settles fine, and is one step', async () => {
    const { page } = bench;
    await showWholeSpan();
    const before = await told();
    const column = await columnOf('stage-neutral-point');
    expect(column).toBeCloseTo((await onPage(page, [before.neutralPointMm, 0, 0])).x, 0);
    expect(await columnOf('neutral-point')).toBeCloseTo(column, 0);
    const tip = await tipOnPage();
    await drag(
      page,
      tip,
      { x: tip.x + 30, y: tip.y },
      {
        steps: 4,
        beforeRelease: async () => {
          await page.waitForFunction(() => {
            const { fresh: now, estimate } = window.counterpoise.stability.get();
            return now && estimate?.detail === 'coarse';
          });
          await settled(page);
          const during = await told();
          expect(during).toMatchObject({ previewing: true, steps: before.steps });
          expect(during.lemacMm).toBeGreaterThan(before.lemacMm + 5);
          expect(during.neutralPointMm).toBeGreaterThan(before.neutralPointMm + 5);
          expect(await columnOf('stage-neutral-point')).toBeGreaterThan(column + 0.5);
        },
      },
    );
    await fresh();
    const after = await told();
    expect(after).toMatchObject({ previewing: false, steps: before.steps + 1, detail: 'fine' });
    expect(after.neutralPointMm).toBeGreaterThan(before.neutralPointMm + 5);
    await page.keyboard.press('Control+z');
    await fresh();
    expect((await told()).neutralPointMm).toBe(before.neutralPointMm);
  });

  test('Escape puts all as it was', async () => {
    const { page } = bench;
    await showWholeSpan();
    const before = await told();
    const tip = await tipOnPage();
    await drag(page, tip, { x: tip.x + 30, y: tip.y }, { steps: 3, cancel: true });
    await fresh();
    expect(await told()).toEqual(before);
    expect(await page.evaluate(() => window.counterpoise.document.current())).toEqual(demo);
  });
});

test('an estimate that is out of date is never shown as fresh', async () => {
  const { page } = bench;
  const during = await page.evaluate(async (marks) => {
    const { document, stability } = window.counterpoise;
    const now = document.current();
    const structure = now.structure.map((piece) =>
      piece.id === 'wing' && piece.kind === 'surface'
        ? { ...piece, rootMm: [piece.rootMm[0] + 30, piece.rootMm[1], piece.rootMm[2]] as const }
        : piece,
    );
    document.commit('Move the wing', { ...now, structure });
    // The worker cannot answer before this task is over.
    await Promise.resolve();
    const attributes = marks.map((mark) =>
      window.document.querySelector(`[data-testid=${mark}]`)?.getAttribute('data-fresh'),
    );
    return { fresh: stability.get().fresh, attributes };
  }, DRAWN_AT_ONCE);
  expect(during).toEqual({ fresh: false, attributes: ['false', 'false'] });
  await fresh();
  expect(await shownFresh()).toEqual(['true', 'true', 'true']);
});

test('the lattice is solved in the worker: no script of the page itself holds it', async () => {
  // A sentence of the module that calls the solver; minifying keeps strings.
  const sentence = 'lattice: rows and strips must be whole numbers above 0';
  const scripts = [...new Set(bench.requests.filter((url) => url.endsWith('.js')))];
  const holding: string[] = [];
  for (const url of scripts) {
    if ((await (await fetch(url)).text()).includes(sentence)) holding.push(url);
  }
  expect(scripts.length).toBeGreaterThan(1);
  expect(holding).toHaveLength(1);
  expect(holding[0]).toMatch(/stability\.worker/);
});
