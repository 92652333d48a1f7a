import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, type Bench, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: false });
  await bench.page.waitForSelector('.answer-headline');
});
afterAll(() => bench.close());

const power = () => bench.page.getByTestId('power');

test('the wiring holds, and the bench is quiet about it', async () => {
  const { page } = bench;
  expect(await page.locator('[data-fact="power"]').count()).toBe(0);
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Power' }).click();
  await power()
    .getByText(/everything is fed what it takes/)
    .waitFor();
});

test('a servo for 6 V on a pack of two cells: told at once with its sum, in the answer too; undo mends it', async () => {
  const { page } = bench;
  await power()
    .getByRole('button', { name: /^Tail servo, left/ })
    .click();
  const most = power().getByLabel('At most');
  await most.fill('6');
  await most.press('Enter');
  await power().getByText('“Tail servo, left” gets up to 8.4 V and takes at most 6.0 V.').waitFor();
  await power().getByText('The sum').first().click();
  await power().getByText('2 cells × 4.20 V = 8.4 V freshly charged').first().waitFor();
  await expect
    .poll(() => page.locator('.answer-headline').textContent())
    .toContain('the wiring does not hold');
  await expect.poll(() => page.locator('[data-fact="power"]').textContent()).toContain('1 fault');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await power()
    .getByText(/everything is fed what it takes/)
    .waitFor();
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
  await expect.poll(() => power().getByRole('row').count()).toBeGreaterThanOrEqual(4);
  expect(await axe(bench.page)).toEqual([]);
});
