import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeAircraft } from '../../src/model/document/write';
import { type Bench, judgeScreen, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, graphics: false });
});
afterAll(() => bench.close());

const onBench = async () =>
  JSON.parse(await bench.page.evaluate(() => JSON.stringify(window.counterpoise.document.current())));
const text = async () => writeAircraft(await onBench());
const partNamed = async (name: string) =>
  (await onBench()).parts.find((part: { name: string }) => part.name === name);
const select = (name: string) =>
  bench.page.locator('.manifest .row').filter({ hasText: name }).getByRole('button').first().click();

test('a list is pasted, looked over, added as one step and taken back; a thing is made from its class', async () => {
  const { page } = bench;
  const before = await text();
  await page.getByTestId('manifest').getByRole('button', { name: 'Add a part' }).click();
  await page.getByRole('button', { name: 'A whole list from a table' }).click();
  const sheet = page.getByTestId('parts-table');
  await sheet
    .getByRole('textbox')
    .fill(
      'Item;Weight (g);Size;Qty\nCamera mast;12,5;30 x 8 x 8 mm;2\nLight;heavy;;\nBeacon;9,5;;\nTotal;34;;',
    );
  // What cannot be read says so in its row; a sum is left out; nothing goes without a word.
  await sheet.getByText('got “heavy”').waitFor();
  await expect
    .poll(() => sheet.textContent())
    .toContain('Not taken: 1 row cannot be read, 1 row left out, 1 row above');
  await sheet.getByRole('button', { name: 'Add 3 parts' }).click();
  await sheet.waitFor({ state: 'detached' });
  expect(await partNamed('Camera mast')).toMatchObject({ massG: 12.5 });
  expect(await partNamed('Camera mast 2')).toMatchObject({ massG: 12.5 });
  expect(await partNamed('Beacon')).toMatchObject({ massG: 9.5, sizeFrom: 'assumed' });
  await judgeScreen(bench);
  await page.getByRole('button', { name: /^Undo: Add 3 parts from a table/ }).click();
  expect(await text()).toBe(before);

  await page.getByTestId('manifest').getByRole('button', { name: 'Add a part' }).click();
  const maker = page.getByTestId('shelf-maker');
  await maker.getByLabel('Cells in series').fill('0');
  await expect
    .poll(() => maker.getByRole('alert').textContent())
    .toContain('expected a whole number, 1 to 14');
  await maker.getByLabel('Cells in series').fill('4');
  await maker.getByRole('button', { name: 'Add it' }).click();
  expect(await partNamed('Pack 4S 2200 mAh')).toMatchObject({ massFrom: 'typical', role: 'energy' });
  await page.getByRole('button', { name: /^Undo: / }).click();
  expect(await text()).toBe(before);
});

test('a pair is made, moved as one, and broken; an unknown mass is found from the whole', async () => {
  const { page } = bench;
  const card = page.getByTestId('card');
  const before = await text();
  await select('Aileron servo, right');
  await card.getByRole('button', { name: 'Make them a pair' }).click();
  const station = card.getByLabel('Station', { exact: true });
  await station.fill('800');
  await station.press('Enter');
  const [right, left] = [await partNamed('Aileron servo, right'), await partNamed('Aileron servo, left')];
  expect(left.positionMm).toEqual([right.positionMm[0], -right.positionMm[1], right.positionMm[2]]);
  expect(right.positionMm[0]).not.toBe(
    JSON.parse(before).parts.find(({ id }: { id: string }) => id === right.id).positionMm[0],
  );
  await judgeScreen(bench);
  await card.getByRole('button', { name: 'Break the pair' }).click();
  expect(await partNamed('Aileron servo, left')).not.toHaveProperty('twinId');

  const wholeG = await page.evaluate(() => window.counterpoise.balance.get().massG);
  await select('Camera');
  const { massG } = await partNamed('Camera');
  await card.getByLabel('Mass', { exact: true }).fill('100');
  await card.getByLabel('Mass', { exact: true }).press('Enter');
  await card.getByLabel('Mass is', { exact: true }).selectOption({ label: 'unknown' });
  await card
    .getByTestId('find-mass')
    .getByRole('textbox')
    .fill(String(Math.round(wholeG)));
  await card.getByRole('button', { name: 'Find the mass' }).click();
  // The scale is read to a gram: so is what is found.
  await expect.poll(async () => Math.abs((await partNamed('Camera')).massG - massG)).toBeLessThanOrEqual(1);
  expect(await partNamed('Camera')).toMatchObject({ massFrom: 'measured' });
  await judgeScreen(bench);
  for (let steps = 0; (await text()) !== before && steps < 8; steps += 1) {
    await page.getByRole('button', { name: /^Undo: / }).click();
  }
  expect(await text()).toBe(before);
});
