import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, drag, middleOf, openBench, showView } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 820, height: 1180, touch: true, graphics: 'unpainted' });
});
afterAll(() => bench.close());

test('a finger drags a knob as large as a fingertip: a tank made longer in the top elevation', async () => {
  const { page } = bench;
  await showView(page, 'Top');
  const lengths = () =>
    page.evaluate(() => {
      const { shape } = window.counterpoise.document.current().tanks.at(-1)!;
      return 'lengthMm' in shape ? shape.lengthMm : 0;
    });
  await page.evaluate(() => {
    const { document, view } = window.counterpoise;
    const aircraft = document.current();
    const box = { kind: 'box', lengthMm: 200, widthMm: 60, heightMm: 60 } as const;
    const tank = {
      ...aircraft.tanks.at(-1)!,
      shape: box,
      startMl: null,
      unusableMl: 0,
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
    };
    document.commit('A box', { ...aircraft, tanks: [...aircraft.tanks.slice(0, -1), tank] });
    view.setState({ selectedId: tank.id });
  });
  const knobOf = page.locator('.handle[data-handle="lengthMm"]');
  await knobOf.waitFor({ state: 'visible' });
  const box = (await knobOf.boundingBox())!;
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
  const from = await middleOf(page, '.handle[data-handle="lengthMm"]');
  await drag(page, from, { x: from.x + 24, y: from.y }, { steps: 3, touch: true });
  await page.waitForFunction(() => window.counterpoise.reshape.api.getState().pieceId === null);
  expect(await lengths()).toBeGreaterThan(200);
  await page.evaluate(() => window.counterpoise.document.undo());
  expect(await lengths()).toBe(200);
});
