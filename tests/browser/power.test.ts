import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, type Bench, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: false });
  await bench.page.waitForSelector('.answer-headline');
});
afterAll(() => bench.close());

const power = () => bench.page.getByTestId('power');

test('the fact in the answer leads to what is wrong, with its sum', async () => {
  const { page } = bench;
  await page.locator('[data-fact="power"] button').click();
  await power().waitFor();
  await power().getByText('“Tail servo, right” gets up to 8.4 V and takes at most 6.0 V.').waitFor();
  await power().getByText('The sum').first().click();
  await power().getByText('2 cells × 4.20 V = 8.4 V freshly charged').first().waitFor();
});

test('a servo that takes more mends it, one at a time, and undo brings the fault back', async () => {
  const { page } = bench;
  await power()
    .getByRole('button', { name: /^Tail servo, right/ })
    .click();
  const most = power().getByLabel('At most');
  await most.fill('8.4');
  await most.press('Enter');
  await expect.poll(() => power().locator('.power-problems li').count()).toBe(1);
  await power()
    .getByRole('button', { name: /^Tail servo, left/ })
    .click();
  await power().getByLabel('At most').fill('8.4');
  await power().getByLabel('At most').press('Enter');
  await power()
    .getByText(/everything is fed what it takes/)
    .waitFor();
  await expect.poll(() => page.locator('[data-fact="power"]').textContent()).toContain('holds');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await power().locator('.power-problems li').waitFor();
});

test('a refused figure says why and changes nothing', async () => {
  const least = power().getByLabel('At least');
  await least.fill('9');
  await least.press('Enter');
  await power()
    .getByText(/least voltage of "Tail servo, left" is above the most/)
    .waitFor();
  await least.press('Escape');
});

test('the smaller pack is taken in one step, and one pack or two is compared', async () => {
  const { page } = bench;
  const massG = () => page.evaluate(() => window.counterpoise.balance.get().massG);
  const before = await massG();
  await power().getByRole('button', { name: 'Take 850 mAh' }).click();
  // 118 g for 1800 mAh; as much for each mAh: 55.7 g for 850.
  await expect
    .poll(async () => before - (await massG()))
    .toBeCloseTo(118 - Math.round((118 * 850) / 1800), 3);
  await page.keyboard.press('Control+z');
  await expect.poll(massG).toBe(before);
  await power().getByRole('button', { name: 'Compare' }).click();
  await power()
    .getByRole('row', { name: /Two packs in place of Flight pack/ })
    .waitFor();
  expect(await power().getByRole('row').count()).toBeGreaterThanOrEqual(4);
  expect(await axe(bench.page)).toEqual([]);
});
