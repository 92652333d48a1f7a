import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, judgeScreen, openBench, turnTo } from '../harness';
import { type Hand, handOn } from './hand';

let bench: Bench;
let hand: Hand;
let start: string;
beforeAll(async () => {
  bench = await openBench({ width: 390, height: 844, touch: true, graphics: false });
  await bench.page.locator('.app-name').waitFor();
  hand = handOn(bench, { touch: true });
  start = await hand.file();
});
afterAll(() => bench.close());

const aircraft = async () => JSON.parse(await hand.file());

test('an empty bench is judged as what it is', async () => {
  await hand.menu('New, an empty bench');
  const { parts, tanks, structure } = await aircraft();
  expect([parts, tanks, structure]).toEqual([[], [], []]);
  await judgeScreen(bench);
});

test('a name, an airframe, a pack and limits make an aircraft', async () => {
  const { page } = bench;
  await hand.press(page.locator('.app-name'));
  await hand.type(page.locator('#app-menu').getByLabel('Aircraft'), 'Wagtail');
  await page.keyboard.press('Escape');
  expect((await aircraft()).name).toBe('Wagtail');

  for (const thing of ['Fuselage tube', 'Wing', 'Pack 3S 2200 mAh']) {
    await turnTo(page, 'Manifest');
    await hand.button('Add a part');
    const dialog = page.getByRole('dialog');
    const made = dialog.getByTestId('shelf-maker');
    await hand.press(
      thing.startsWith('Pack')
        ? made.filter({ hasText: thing }).getByRole('button', { name: 'Add it' })
        : dialog.getByRole('button', { name: new RegExp(`^${thing}`) }).first(),
    );
    await dialog.waitFor({ state: 'hidden' });
    await judgeScreen(bench);
  }
  expect((await aircraft()).structure).toHaveLength(2);

  await turnTo(page, 'Card');
  await hand.button('Close, show the aircraft');
  await hand.openFold('band');
  await page.getByTestId('card').getByLabel('Stated', { exact: true }).selectOption({ label: 'By stations' });
  await hand.type(hand.field('Forward limit'), '150');
  await hand.type(hand.field('Aft limit'), '170');
  expect((await aircraft()).targetBand).toMatchObject({ forwardMm: 150, aftMm: 170 });
  await judgeScreen(bench);
});

test('the remedy of the verdict is carried out, and the verdict is no worse', async () => {
  const { page } = bench;
  const severity = () => page.evaluate(() => window.counterpoise.verdict.judgement().severity);
  const order = ['bad-aft', 'bad', 'caution', 'unknown', 'good'];
  const fix = page.locator('button.answer-fix');
  if (await fix.isVisible()) {
    const was = await severity();
    await hand.press(fix);
    await judgeScreen(bench);
    expect(order.indexOf(await severity())).toBeGreaterThanOrEqual(order.indexOf(was));
  }
});

test('undo leads all the way back to the same file', async () => {
  expect(await hand.undoAll()).toBeGreaterThan(5);
  expect(await hand.file()).toBe(start);
  await judgeScreen(bench);
});
