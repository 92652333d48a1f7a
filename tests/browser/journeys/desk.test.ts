import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, judgeScreen, openBench } from '../harness';
import { type Hand, handOn } from './hand';

let bench: Bench;
let hand: Hand;
let start: string;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, graphics: false });
  await bench.page.getByTestId('manifest').waitFor();
  hand = handOn(bench);
  start = await hand.file();
});
afterAll(() => bench.close());

const parts = async () =>
  JSON.parse(await hand.file()).parts as {
    id: string;
    name: string;
    role: string;
    massG: number;
    locked?: boolean;
    positionMm: number[];
  }[];
const rows = () => bench.page.locator('.manifest .row');

test('a part comes from the shelf, is renamed, moved, doubled, mirrored, locked and taken out', async () => {
  const { page } = bench;
  const before = await parts();
  await hand.button('Add a part');
  const dialog = page.getByRole('dialog');
  await page.keyboard.type('servo');
  await hand.press(dialog.getByTestId('shelf-maker').getByRole('button', { name: 'Add it' }));
  await dialog.waitFor({ state: 'hidden' });
  const [added] = (await parts()).slice(-1);
  expect(await parts()).toHaveLength(before.length + 1);

  await hand.type(hand.field('Name'), 'Rudder servo');
  await hand.type(hand.field('Mass'), '1.5 oz');
  await hand.type(hand.field('Station'), '400+12');
  await hand.type(hand.field('Buttline'), '30');
  const moved = (await parts()).find(({ id }) => id === added?.id);
  // An ounce is 28.349523125 g by definition.
  expect(moved?.massG).toBeCloseTo(1.5 * 28.349523125, 9);
  expect(moved?.positionMm.slice(0, 2)).toEqual([412, 30]);
  await judgeScreen(bench);

  await hand.button('Duplicate Rudder servo');
  expect(await parts()).toHaveLength(before.length + 2);
  await hand.select('Rudder servo');
  await hand.button('Mirror Rudder servo to the other side');
  expect((await parts()).at(-1)?.positionMm.slice(0, 2)).toEqual([412, -30]);

  // Keys of the manifest: lock, which holds for both of the mirrored pair, and a locked part stays where an arrow key would move it.
  await hand.select('Rudder servo');
  await page.keyboard.press('l');
  expect((await parts()).filter(({ locked }) => locked).length).toBe(
    before.filter(({ locked }) => locked).length + 2,
  );
  await page.keyboard.press('l');
  await page.keyboard.press('Delete');
  expect(await parts()).toHaveLength(before.length + 2);
  await judgeScreen(bench);
});

test('the filter leaves what has the words, and sorting turns the order', async () => {
  const { page } = bench;
  const all = await rows().count();
  await hand.type(page.getByRole('searchbox', { name: 'Filter by name or role' }), 'pack');
  const left = await rows().allTextContents();
  expect(left.length).toBeGreaterThan(0);
  expect(left.length).toBeLessThan(all);
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Delete');
  await expect.poll(() => rows().count()).toBeGreaterThanOrEqual(all);
  const heads = page.locator('.manifest thead');
  await hand.button('Mass', heads);
  const sorted = await page.locator('.manifest tbody').first().locator('.row .row-name').allTextContents();
  await hand.button('Mass', heads);
  const turned = await page.locator('.manifest tbody').first().locator('.row .row-name').allTextContents();
  expect(turned).not.toEqual(sorted);
  await judgeScreen(bench);
});

test('another pack in its place, and the remedy of the verdict', async () => {
  const { page } = bench;
  await hand.button('Arrange…');
  const sheet = page.getByTestId('arrange');
  await sheet.getByText('What if', { exact: true }).click();
  const pack = (await parts()).find(({ role }) => role === 'energy');
  await sheet.getByLabel('Instead of').selectOption(pack?.id ?? '');
  const before = await hand.file();
  await hand.button('Put it in', sheet);
  expect(await hand.file()).not.toBe(before);
  await hand.button('Close', sheet);
  await judgeScreen(bench);
  const fix = page.locator('button.answer-fix');
  if ((await fix.count()) > 0) {
    const kinds = () => page.evaluate(() => window.counterpoise.verdict.judgement().severity);
    const worse = ['bad-aft', 'bad', 'caution', 'unknown', 'good'];
    const was = await kinds();
    await hand.press(fix);
    await judgeScreen(bench);
    expect(worse.indexOf(await kinds())).toBeGreaterThanOrEqual(worse.indexOf(was));
  }
});

test('inches and ounces, and back', async () => {
  const { page } = bench;
  await hand.press(page.locator('.app-name'));
  await page.locator('#app-menu').getByLabel('Units').selectOption('inch-ounce');
  await page.keyboard.press('Escape');
  await judgeScreen(bench);
  await hand.select((await parts())[0]?.name ?? '');
  await judgeScreen(bench);
  await hand.press(page.locator('.app-name'));
  await page.locator('#app-menu').getByLabel('Units').selectOption('metric');
  await page.keyboard.press('Escape');
  await judgeScreen(bench);
});

test('bays are proposed, and undo leads all the way back to the same file', async () => {
  const { page } = bench;
  await hand.button('Close, show the aircraft');
  await hand.openFold('rooms');
  await hand.press(page.getByTestId('rooms').locator('summary').first());
  await hand.button('Propose bays between the formers');
  expect(JSON.parse(await hand.file()).bays.length).toBeGreaterThan(0);
  await judgeScreen(bench);
  expect(await hand.undoAll()).toBeGreaterThan(9);
  expect(await hand.file()).toBe(start);
  await judgeScreen(bench);
});
