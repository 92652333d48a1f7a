import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Aircraft } from '../../src/model/document/types';
import {
  type Bench,
  drag,
  expectClean,
  look,
  middleOf,
  onPage,
  openBench,
  placeOf,
  settled,
  showView,
} from './harness';

/** The pack that the demo aircraft is best balanced with. */
const PACK = 'flight-pack';

// One page for all, put back to the same aircraft before each test: opening it is most of the time.
let bench: Bench;
let demo: Aircraft;
beforeAll(async () => {
  bench = await openBench({ width: 1100, height: 760, graphics: 'unpainted' });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
  // Without its leads, which would follow the pack, and the cradle that it is let into: each would add its own
  // small share to the shift rule below.
  demo = await bench.page.evaluate(() => {
    const now = window.counterpoise.document.current();
    const structure = now.structure.filter((piece) => !(piece.kind === 'block' && piece.cuttable));
    return { ...now, leads: [], structure };
  });
});
beforeEach(() =>
  bench.page.evaluate((aircraft) => {
    window.counterpoise.document.replace(aircraft);
    window.counterpoise.view.setState({ view: 'free', selectedId: null, fuelFraction: 1 });
  }, demo),
);
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

/** Mass × distance ÷ total mass: the shift rule of every weight-and-balance handbook (FAA-H-8083-25). */
const expectedShift = (ownG: number, byMm: number, totalG: number) => (ownG * byMm) / totalG;

const massOf = (id: string) =>
  bench.page.evaluate(
    (wanted) => window.counterpoise.document.current().parts.find((part) => part.id === wanted)?.massG ?? 0,
    id,
  );
const text = (testId: string) => bench.page.getByTestId(testId).textContent();
const curve = () => bench.page.locator('.travel-curve').first().getAttribute('d');

describe('dragging a pack', () => {
  test('on the beam: document, disc, verdict and curve answer while it is dragged; it is one step', async () => {
    const { page } = bench;
    const before = await look(page);
    const [x0, y0, z0] = await placeOf(page, PACK);
    const [verdict0, curve0] = [await text('verdict'), await curve()];
    const from = await middleOf(page, `[data-testid=beam] [data-item="${PACK}"] .weight-shape`);

    await drag(
      page,
      from,
      { x: from.x + 120, y: from.y },
      {
        beforeRelease: async () => {
          const during = await look(page);
          const [x] = await placeOf(page, PACK);
          expect(during.previewing).toBe(true);
          expect(x).toBeGreaterThan(x0 + 50);
          const shift = expectedShift(await massOf(PACK), x - x0, before.massG);
          expect(during.cgMm[0] - before.cgMm[0]).toBeCloseTo(shift, 6);
          await expect.poll(() => text('verdict')).not.toBe(verdict0);
          await expect.poll(curve).not.toBe(curve0);
        },
      },
    );

    const after = await look(page);
    const [x1, y1, z1] = await placeOf(page, PACK);
    expect(after).toMatchObject({ previewing: false, steps: before.steps + 1, selectedId: PACK });
    expect([y1, z1]).toEqual([y0, z0]);

    await page.keyboard.press('Control+z');
    expect(await placeOf(page, PACK)).toEqual([x0, y0, z0]);
    expect((await look(page)).cgMm).toEqual(before.cgMm);
    await page.keyboard.press('Control+Shift+z');
    expect((await placeOf(page, PACK))[0]).toBe(x1);
  });

  test('Escape on the beam puts everything back', async () => {
    const { page } = bench;
    const before = await look(page);
    const from = await middleOf(page, `[data-testid=beam] [data-item="${PACK}"] .weight-shape`);
    await drag(page, from, { x: from.x + 200, y: from.y }, { cancel: true });
    expect(await look(page)).toMatchObject({ cgMm: before.cgMm, steps: before.steps, previewing: false });
  });

  test.each([
    ['Side', [60, 0], [0, 2]],
    ['Top', [60, -14], [0, 1]],
  ] as const)(
    'in %s elevation it follows the pointer in that plane',
    async (view, [dx, dy], [across, upright]) => {
      const { page } = bench;
      await showView(page, view);
      const start = await placeOf(page, PACK);
      const before = await look(page);
      // From above the span may be drawn at a scale of its own.
      const [mmPerPx, uprightMmPerPx] = await page.evaluate((shown) => {
        const { station, spanStretch } = window.counterpoise.axis.getState();
        return [station.mmPerPx, station.mmPerPx * (shown === 'Top' ? spanStretch : 1)] as const;
      }, view);
      const from = await onPage(page, start);
      await page.keyboard.down('Alt');
      await drag(page, from, { x: from.x + dx, y: from.y + dy });
      await page.keyboard.up('Alt');
      const end = await placeOf(page, PACK);
      // A pixel is a pixel: the part has moved as far as the pointer, to the tenth of a millimetre kept.
      expect(Math.abs(end[across] - start[across] - dx * mmPerPx)).toBeLessThanOrEqual(1.1 * mmPerPx);
      expect(Math.abs(end[upright] - start[upright] + dy * uprightMmPerPx)).toBeLessThanOrEqual(
        1.1 * uprightMmPerPx,
      );
      const after = await look(page);
      const shift = expectedShift(await massOf(PACK), end[0] - start[0], before.massG);
      expect(after.cgMm[0] - before.cgMm[0]).toBeCloseTo(shift, 6);
      expect(after.steps).toBe(before.steps + 1);
    },
  );

  test('Escape on the stage puts everything back, and the view can be turned again afterwards', async () => {
    const { page } = bench;
    await showView(page, 'Side');
    const start = await placeOf(page, PACK);
    const { steps } = await look(page);
    const from = await onPage(page, start);
    await drag(page, from, { x: from.x + 90, y: from.y + 10 }, { cancel: true });
    expect(await placeOf(page, PACK)).toEqual(start);
    expect((await look(page)).steps).toBe(steps);

    await showView(page, 'Free');
    const stage = await page.locator('[data-testid=stage] canvas').boundingBox();
    if (!stage) throw new Error('no stage');
    const corner = { x: stage.x + 24, y: stage.y + 24 };
    await drag(page, corner, { x: corner.x + 100, y: corner.y + 30 });
    await settled(page);
    expect((await look(page)).steps).toBe(steps);
  });

  test('arrow keys nudge by 1 mm, with Shift by 10 mm, each one step', async () => {
    const { page } = bench;
    await page.locator(`[data-testid=manifest] [data-item="${PACK}"]`).first().click();
    const [x0] = await placeOf(page, PACK);
    await page.locator('[data-testid=beam] svg[tabindex="0"]').focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    expect((await placeOf(page, PACK))[0]).toBe(x0 + 11);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect((await placeOf(page, PACK))[0]).toBe(x0);
  });
});

test('a locked part does not move', async () => {
  const { page } = bench;
  const locked = await page.evaluate(
    () => window.counterpoise.document.current().parts.find((part) => part.locked)?.id ?? null,
  );
  expect(locked).not.toBeNull();
  const start = await placeOf(page, locked as string);
  const { steps } = await look(page);
  const from = await middleOf(page, `[data-testid=beam] [data-item="${locked}"] .weight-shape`);
  await drag(page, from, { x: from.x - 80, y: from.y });
  expect(await placeOf(page, locked as string)).toEqual(start);
  expect((await look(page)).steps).toBe(steps);
});
