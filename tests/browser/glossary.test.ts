import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, type Bench, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, graphics: false });
  await bench.page.waitForSelector('[data-fact=margin] .fact-value:not(:empty)');
});
afterAll(() => bench.close());

const word = () => bench.page.getByTestId('word');

test('a word of the answer opens by touch of the mouse and by keys, and gives the focus back', async () => {
  const { page } = bench;
  const term = page.locator('[data-fact=margin] .term');
  await term.click();
  await word().getByRole('img').waitFor();
  await expect.poll(() => page.getByRole('dialog').getByRole('heading').textContent()).toBe('Static margin');
  expect(await axe(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await word().waitFor({ state: 'detached' });
  await expect.poll(() => term.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await word().waitFor();
  await word().getByRole('button', { name: 'Neutral point' }).click();
  await expect.poll(() => word().getAttribute('data-word')).toBe('neutral-point');
  // The focus went along, so that the new word is read out and the keys go on from there.
  expect(
    await page.evaluate(() => document.activeElement?.closest('dialog')?.querySelector('h2')?.textContent),
  ).toBe('Neutral point');
  await page.keyboard.press('Escape');
  await word().waitFor({ state: 'detached' });
  await expect.poll(() => term.evaluate((element) => element === document.activeElement)).toBe(true);
  // The rest of the cell still opens the sum, and the words in it are words too.
  await page.locator('[data-fact=margin] .fact-value').click();
  await page.getByTestId('sum').getByRole('button', { name: 'Mean aerodynamic chord' }).click();
  await word()
    .getByText(/^MAC \d+ mm$/)
    .waitFor();
  await page.keyboard.press('Escape');
  await word().waitFor({ state: 'detached' });
  await page.getByTestId('sum').waitFor();
  await page.keyboard.press('Escape');
  await page.getByTestId('sum').waitFor({ state: 'detached' });
});

test('the whole list stands in the menu and is searched', async () => {
  const { page } = bench;
  await page.locator('.app-name').click();
  await page.getByRole('button', { name: 'Words', exact: true }).click();
  const list = page.getByTestId('words');
  const all = await list.getByRole('listitem').count();
  expect(all).toBeGreaterThan(30);
  await list.getByRole('searchbox').fill('air trap');
  await expect.poll(() => list.getByRole('listitem').count()).toBe(1);
  await list.getByRole('button', { name: /^Header tank/ }).click();
  await expect.poll(() => word().getAttribute('data-word')).toBe('header-tank');
  await word().getByRole('button', { name: 'All words' }).click();
  await expect.poll(() => list.getByRole('listitem').count()).toBe(all);
  expect(await axe(page)).toEqual([]);
  await page.keyboard.press('Escape');
});
