import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, type Bench, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: false });
  await bench.page.waitForSelector('.answer-headline');
});
afterAll(() => bench.close());

const verdict = () => bench.page.getByTestId('weigh-verdict');
const said = async () => (await verdict().getByRole('status').textContent()) ?? '';

test('the verdict names the last weigh-in, and leads to it', async () => {
  const { page } = bench;
  const last = page.getByRole('button', { name: /Weighed 12 May/ });
  await last.waitFor();
  await last.click();
  await verdict().waitFor();
  expect(await said()).toMatch(/do not agree/);
});

test('the slip that comes first is mended by one button and one undo step', async () => {
  const { page } = bench;
  await verdict()
    .getByRole('button', { name: /Put Silencer at buttline/ })
    .click();
  await expect.poll(said).toMatch(/agree within/);
  await page.keyboard.press('Control+z');
  await expect.poll(said).toMatch(/do not agree/);
});

test('a new weigh-in is read off the scales: the figures typed make the station, sum by sum', async () => {
  const { page } = bench;
  await page.getByRole('button', { name: 'Weigh it' }).click();
  await page.getByRole('button', { name: 'On scales' }).click();
  await expect.poll(said).toBe('All the scales read nothing.');
  for (const [name, grams] of [
    ['Nose leg: reads', '700'],
    ['Main leg, left: reads', '3000'],
    ['Main leg, right: reads', '3000'],
  ] as const) {
    const field = page.getByLabel(name);
    await field.fill(grams);
    await field.press('Enter');
  }
  // (700·146 + 6000·842)/6700 by hand.
  const station = (700 * 146 + 6000 * 842) / 6700;
  await expect
    .poll(
      async () =>
        await verdict()
          .getByRole('row', { name: /CG along/ })
          .textContent(),
    )
    .toContain(station.toFixed(1));
});

test('tilted and swung: what was typed and tapped makes the height and the period', async () => {
  const { page } = bench;
  const start = async (way: RegExp) => {
    await page.getByRole('button', { name: 'Weigh it' }).click();
    await page.getByRole('button', { name: way }).click();
  };
  const type = async (name: string, figure: string) => {
    const field = page.getByLabel(name, { exact: true });
    await field.fill(figure);
    await field.press('Enter');
  };
  await start(/^Tilted/);
  await expect.poll(said).toMatch(/mass of the whole aircraft is needed|has not been read yet/);
  await type('Whole, weighed', '6845');
  await type('Tilt 2: pitch', '-10');
  await type('Tilt 1: reads', '740');
  await type('Tilt 2: reads', '1240');
  await expect.poll(said).toMatch(/^Tilt and list/);
  await verdict()
    .getByRole('row', { name: /CG height/ })
    .waitFor();
  await start(/^Swung/);
  const tap = page.getByRole('button', { name: /^Tap as it passes/ });
  for (let taps = 0; taps < 4; taps += 1) await tap.click();
  await page.getByRole('button', { name: 'Take this run' }).click();
  // A busy machine makes ragged taps, and a long gap counts as two swings.
  expect(Number(await page.getByLabel('Run 1: full swings').inputValue())).toBeGreaterThanOrEqual(3);
  await type('Run 1: full swings', '10');
  await type('Run 1: time', '20.6');
  await page.getByText(/^Period 2\.060 s ±/).waitFor();
});

test('part by part: one tap ticks off what weighs just that', async () => {
  const { page } = bench;
  await page.getByText('Part by part').click();
  await page.getByRole('button', { name: 'Camera weighs just that' }).click();
  await page.getByRole('button', { name: 'Camera is weighed' }).waitFor();
  await expect.poll(() => page.getByText(/^1 of \d+ weighed/).count()).toBe(1);
});

test('it reads well to everybody, and the bench is there again afterwards', async () => {
  const { page } = bench;
  expect(await axe(page)).toEqual([]);
  await page.getByText('The whole aircraft').click();
  await verdict().waitFor();
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Bench', exact: true }).click();
  await page.getByTestId('stage').waitFor();
  await expect.poll(() => page.getByTestId('weigh-in').count()).toBe(0);
});
