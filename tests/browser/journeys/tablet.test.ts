import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, drag, judgeScreen, middleOf, openBench, turnTo } from '../harness';
import { type Hand, handOn } from './hand';

let bench: Bench;
let hand: Hand;
let start: string;
beforeAll(async () => {
  bench = await openBench({ width: 820, height: 1180, touch: true, graphics: false });
  await bench.page.getByTestId('manifest').waitFor();
  hand = handOn(bench, { touch: true });
  start = await hand.file();
});
afterAll(() => bench.close());

const fuelLeft = () => bench.page.evaluate(() => window.counterpoise.view.getState().fuelFraction);

test('switches of the load state, the attitude and the burn', async () => {
  const { page } = bench;
  const switches = page.getByTestId('switches');
  const other = switches.locator('fieldset button[aria-pressed=false]');
  if (!(await other.first().isVisible())) await hand.press(switches.locator('.switches-button'));
  const before = await page.evaluate(() => window.counterpoise.balance.get().massG);
  await hand.press(other.last());
  await judgeScreen(bench);
  const off = await page.evaluate(() => window.counterpoise.balance.get().massG);
  await hand.press(other.first());
  await judgeScreen(bench);
  // One of the two at least takes something off or puts the legs up; the mass never grows by a switch.
  expect(off).toBeLessThanOrEqual(before);

  await hand.button(/^Attitude: /);
  await hand.button('30° climb', page.getByTestId('attitude'));
  await judgeScreen(bench);
  await hand.button('Level it');

  const disc = await middleOf(page, '.travel-handle');
  await drag(page, disc, { x: disc.x, y: disc.y + 16 }, { touch: true });
  const left = await fuelLeft();
  expect(left).toBeLessThan(1);
  expect(left).toBeGreaterThan(0);
  await judgeScreen(bench);
  // None of this is the aircraft's.
  expect(await hand.file()).toBe(start);
});

test('a fuel profile is chosen, and a phase added, typed and removed', async () => {
  const { page } = bench;
  await hand.press(page.locator('button.profile'));
  const dialog = page.getByRole('dialog');
  const choice = dialog.locator('.profiles button[aria-pressed=false]').first();
  const name = (await choice.textContent()) ?? '';
  await hand.press(choice);
  const profile = async () => JSON.parse(await hand.file()).fuel.profile;
  const chosen = await profile();
  expect(name).toContain(chosen.name);
  const count = chosen.phases.length;
  await hand.button('Add a phase', dialog);
  await hand.type(dialog.getByLabel(`Lasts, phase ${count + 1}`), '90 s');
  expect((await profile()).phases.at(-1).durationS).toBe(90);
  await hand.button(`Remove phase ${count + 1}`, dialog);
  expect(await profile()).toEqual(chosen);
  await hand.button('Close', dialog);
  await judgeScreen(bench);
});

test('a table of sections, and the airframe as the scales say', async () => {
  const { page } = bench;
  await turnTo(page, 'Card');
  await hand.openFold('points');
  const points = JSON.parse(await hand.file()).referencePoints;
  await hand.button('Add a point');
  await hand.type(hand.field(`Station, point ${points.length + 1}`), '12.5 cm');
  expect(JSON.parse(await hand.file()).referencePoints.at(-1).positionMm[0]).toBe(125);
  await hand.openFold('airframe');
  const fold = page.locator('[data-fold=airframe]');
  const weighed = async () => JSON.parse(await hand.file()).bareAirframe;
  await hand.type(fold.getByLabel('Weighed mass'), '4000');
  await hand.type(fold.getByLabel('CG station'), '25 cm');
  expect((await weighed()).massG).toBe(4000);
  await fold.getByLabel('Use it to').selectOption({ label: 'Replace the shapes' });
  expect((await weighed()).use).toBe('replace');
  await judgeScreen(bench);
});

test('undo leads all the way back to the same file', async () => {
  expect(await hand.undoAll()).toBeGreaterThan(5);
  expect(await hand.file()).toBe(start);
  await judgeScreen(bench);
});
