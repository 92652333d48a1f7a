import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { type Bench, expectClean, openBench, openFold } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: false });
  await bench.page.waitForSelector('[data-testid=manifest]');
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

const card = () => bench.page.locator('.card');
const points = () => bench.page.evaluate(() => window.counterpoise.document.current().referencePoints.length);

test('a reference point that the band is stated from stays, and the table says why', async () => {
  const { page } = bench;
  await page.evaluate(() => {
    const { document } = window.counterpoise;
    const [first] = document.current().referencePoints;
    if (!first) throw new Error('The demo has no reference point.');
    const targetBand = { by: 'station', forwardMm: 0, aftMm: 1e4, statedFrom: first.id } as const;
    document.commit('State a band', { ...document.current(), targetBand });
  });
  await openFold(page, 'Points');
  const before = await points();
  await card().getByRole('button', { name: 'Remove point 1', exact: true }).last().click();
  await expect
    .poll(() => card().getByRole('alert').allTextContents())
    .toContainEqual(expect.stringMatching(/^There is no reference point/));
  expect(await points()).toBe(before);
});

test('a flow point too many is refused in words', async () => {
  const { page } = bench;
  await openFold(page, 'Fuel');
  await card().getByText('Temperature, ±, and flow in between').click();
  const table = card().locator('.rows-table', { hasText: 'Flow between idle and full' });
  for (let at = 0; at < 9 && (await table.getByRole('alert').count()) === 0; at += 1) {
    await table.getByRole('button', { name: 'Add a point' }).click();
  }
  await expect
    .poll(() => table.getByRole('alert').textContent())
    .toMatch(/Throttles rise between idle and full/);
  expect(
    await page.evaluate(() => window.counterpoise.document.current().fuel?.flow.table?.length),
  ).toBeLessThan(9);
});

test('Duplicate works on a part that took the name of a bay', async () => {
  const { page } = bench;
  const count = () => page.evaluate(() => window.counterpoise.document.current().parts.length);
  const name = await page.evaluate(() => {
    const { document, view } = window.counterpoise;
    const aircraft = document.current();
    const [bay] = aircraft.bays ?? [];
    const [part] = aircraft.parts;
    if (!bay || !part) throw new Error('The demo has no bay.');
    const parts = aircraft.parts.map((one) => (one === part ? { ...one, name: bay.id } : one));
    document.commit('Rename', { ...aircraft, parts });
    view.setState({ selectedId: part.id });
    return bay.id;
  });
  const before = await count();
  await page.getByRole('button', { name: `Duplicate ${name}` }).click();
  await expect.poll(count).toBe(before + 1);
});
