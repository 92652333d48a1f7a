import { afterAll, beforeAll, expect, test } from 'vitest';
import { brokenDemos } from '../demo/brokenDemos';
import { type DemoName, demo } from '../demo/demoAircraft';
import { type Bench, expectClean, openBench, settled } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 720, graphics: false });
  await bench.page.waitForFunction(() => window.counterpoise.stability.get().fresh);
});
afterAll(async () => {
  expectClean(bench);
  await bench.close();
});

/** The worst of the broken demos: dangerous ones, and things in one place or through the skin. */
const WORST: readonly (readonly [DemoName, string])[] = [
  ['sandmartin', 'the flight pack 150 mm too far aft'],
  ['sandmartin', 'the camera left at home'],
  ['sandmartin', 'the receiver inside the flight pack'],
  ['sandmartin', 'lead in the tail and a band that allows it'],
  ['sandmartin', 'the telemetry sender through the floor of the pod'],
  ['fieldfare', 'lead at the very tail, not locked'],
  ['fieldfare', 'a pack forgotten'],
  ['whimbrel', 'a motor of twice the mass'],
  ['corncrake', 'no ballast in the nose'],
  ['corncrake', 'far too much in the nose'],
];
const rowOf = ([name, fault]: (typeof WORST)[number]) => {
  const row = brokenDemos.find((one) => one.demo === name && one.fault === fault);
  if (!row) throw new Error(`no row ${name}, ${fault}`);
  return row;
};
const SIGNS = { danger: 'Danger', bad: 'Not good', caution: 'Caution', unknown: 'Not known', good: 'Good' };

test.each(WORST.map((worst) => [worst.join(', '), rowOf(worst)] as const))('%s', async (_name, row) => {
  const { page } = bench;
  await page.evaluate(
    (aircraft) => window.counterpoise.document.replace(aircraft),
    row.plant(demo(row.demo)),
  );
  await page.waitForFunction(() => {
    const { stability, verdict } = window.counterpoise;
    return stability.get().fresh && !verdict.checking();
  });
  await settled(page);
  const verdict = page.getByTestId('verdict');
  const words = ((await verdict.locator('.answer-headline').textContent()) ?? '')
    .replace(/\.$/, '')
    .replace(/\u202f/g, ' ');
  expect(words).toMatch(row.headline);
  await expect.poll(() => verdict.getByRole('img').first().getAttribute('aria-label')).toBe(SIGNS[row.tone]);

  // The remedy's button carries it out in one step, which mends what was wrong, and undo takes it back.
  const fix = verdict.locator('button.answer-fix');
  if ((await fix.count()) === 0) return;
  const steps = await page.evaluate(() => window.counterpoise.document.api.getState().past.length);
  await fix.click();
  await page.waitForFunction(() => !window.counterpoise.verdict.checking());
  const after = await page.evaluate(() => ({
    steps: window.counterpoise.document.api.getState().past.length,
    kinds: window.counterpoise.verdict.judgement().findings.map(({ kind }) => kind),
  }));
  expect(after.steps).toBe(steps + 1);
  expect(after.kinds).not.toContain('tail-heavy');
  expect(after.kinds).not.toContain('nose-heavy');
  await page.keyboard.press('Control+z');
  expect(await page.evaluate(() => window.counterpoise.document.api.getState().past.length)).toBe(steps);
});
