import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { downFromAttitude } from '../../src/engine/liquid/attitude';
import { balanceAt } from '../../src/model/balance/balance';
import type { Aircraft } from '../../src/model/document/types';
import { axe, type Bench, expectClean, look, openBench, openFold, settled, showView } from './harness';

/** One page for the whole file: the tests follow each other as a person would go on. */
let bench: Bench;
/** What stands on the bench, to be worked out again without the page. */
let aircraft: Aircraft;
/** The station under the disc on the travel, which is that of now. */
const cgShown = async () => figureIn((await bench.page.locator('.travel-label').textContent()) ?? '');
/** The first figure in a text as it stands on the screen: thin spaces within, a true minus before. */
const figureIn = (text: string) =>
  Number(
    text
      .replaceAll('\u202f', '')
      .replaceAll('\u2212', '-')
      .match(/-?\d+(\.\d+)?/)?.[0],
  );

beforeAll(async () => {
  bench = await openBench({ width: 1100, height: 820, graphics: 'unpainted' });
  await bench.page.waitForSelector('[data-testid=stage] canvas');
  await showView(bench.page, 'Side');
  aircraft = await bench.page.evaluate(() => window.counterpoise.document.current());
  await bench.page.evaluate(() => window.counterpoise.view.setState({ fuelFraction: 0.5 }));
});
afterAll(async () => {
  expectClean(bench);
  await bench.close();
});

describe('attitude', () => {
  test('the slider tilts the liquid, and the CG on the screen is the engine’s for that attitude', async () => {
    const { page } = bench;
    await page.getByRole('button', { name: /^Attitude/ }).click();
    await settled(page);
    await page.getByRole('slider', { name: 'Nose up or down' }).fill('30');
    await settled(page);
    const pitchDeg = 30;
    const down = downFromAttitude({ pitchDeg, rollDeg: 0, forwardG: 0, sideG: 0 });
    const wanted = balanceAt(aircraft, { fuelFraction: 0.5, down });
    await expect.poll(cgShown).toBeCloseTo(wanted.cgMm![0], 1);
    const surface = await page.evaluate(() => window.counterpoise.balance.get().liquids[0]?.surface?.down);
    // Held nose up by 30° at rest, down lies sin 30° aft of straight down.
    expect(surface?.[0]).toBeCloseTo(0.5, 12);
    await expect.poll(() => page.getByTestId('attitude').textContent()).toContain('Attitude travel');
  });

  test('level again in one press', async () => {
    const { page } = bench;
    await page.getByRole('button', { name: 'Level it' }).click();
    const { cgMm } = await look(page);
    expect(cgMm[0]).toBeCloseTo(balanceAt(aircraft, { fuelFraction: 0.5, down: [0, 0, -1] }).cgMm![0], 9);
  });
});

test('a switch takes its part off: mass and CG by the lever rule', async () => {
  const { page } = bench;
  const before = await look(page);
  const switches = page.getByTestId('switches');
  await switches.getByRole('button', { name: 'off', exact: true }).click();
  const after = await look(page);
  const sender = aircraft.parts.find(({ id }) => id === 'video-sender')!;
  expect(after.massG).toBeCloseTo(before.massG - sender.massG, 6);
  const lever = (before.massG * before.cgMm[0] - sender.massG * sender.positionMm[0]) / after.massG;
  expect(after.cgMm[0]).toBeCloseTo(lever, 6);
  await switches.getByRole('button', { name: 'on', exact: true }).click();
  await expect.poll(() => page.getByTestId('verdict').textContent()).toContain('video sender off');
});

test('the sum on the screen adds up to the CG on the screen', async () => {
  const { page } = bench;
  const shown = await cgShown();
  await page.locator('[data-fact=cg-full] .fact').click();
  const sum = page.getByTestId('sum');
  await sum.waitFor();
  const lines = await sum
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent ?? '')),
    );
  expect(lines.length).toBeGreaterThan(30);
  let [mass, moment] = [0, 0];
  for (const line of lines) {
    const [own, arm, product] = line.map(figureIn);
    expect(own! * arm!).toBeCloseTo(product!, 3);
    mass += own!;
    moment += product!;
  }
  expect((moment / mass).toFixed(1)).toBe(shown.toFixed(1));
  expect(Math.round(mass)).toBe(Math.round((await look(page)).massG));
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
});

test('how sure it is stands on the card in words', async () => {
  await openFold(bench.page, 'Certainty');
  const words = () => bench.page.getByTestId('how-sure').textContent();
  await expect.poll(words).toMatch(/CG ± \d+\.\d.mm \(95 %\)/);
  expect(await words()).toMatch(/\d+ % sure that the whole burn is in the band\..*would help most\./s);
});
