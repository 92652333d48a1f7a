import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Aircraft } from '../../src/model/document/types';
import { newProblems, wholeFit } from '../../src/model/fit/wholeFit';
import { demo } from '../demo/demoAircraft';
import {
  axe,
  type Bench,
  expectClean,
  judgeScreen,
  look,
  openBench,
  put,
  screenshot,
  settled,
} from './harness';

let bench: Bench;
let page: Page;

beforeAll(async () => {
  bench = await openBench({ width: 1100, height: 760 });
  page = bench.page;
  await page.waitForSelector('[data-testid=stage] canvas');
  // As by hand: the flight pack put on a shelf farther aft and locked there, and little else left free.
  await page.evaluate(() => {
    const { document } = window.counterpoise;
    const aircraft = document.current();
    document.commit('Move Flight pack', {
      ...aircraft,
      parts: aircraft.parts.map((part) => {
        if (part.id === 'flight-pack') return { ...part, locked: true, positionMm: [430, -30, 40] as const };
        const isFree = part.role === 'ballast' || ['camera', 'receiver', 'telemetry'].includes(part.id);
        return isFree ? part : { ...part, locked: true };
      }),
    });
  });
  await page.getByRole('button', { name: 'Arrange…' }).click();
  await page.getByRole('button', { name: 'Start' }).waitFor();
  // The search comes after the first paint.
  await page.waitForFunction(() => window.counterpoise.place.solver() !== null);
});

afterAll(() => bench.close());

const sheet = () => page.getByTestId('arrange');
const button = (name: string) => sheet().getByRole('button', { name, exact: true });
const steps = async () => (await look(page)).steps;

test('a search can be cancelled, and nothing has happened', async () => {
  const before = await steps();
  // The solver is held back on its way, so that the search is still running when it is cancelled.
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.context().route('**/*.wasm', async (route) => {
    await held;
    await route.continue().catch(() => {});
  });
  await button('Start').click();
  await button('Cancel').click();
  release();
  await page.context().unroute('**/*.wasm');
  expect(await sheet().getByRole('status').textContent()).toMatch(/^Cancelled/);
  await button('Put away').click();
  await button('Start').waitFor();
  expect(await steps()).toBe(before);
  expect(await page.locator('[data-testid=ghost]').count()).toBe(0);
});

test('the least ballast with its bound, a ghost to look at, one step to accept and one to take back', async () => {
  expect((await look(page)).where).toBe('tail-heavy');
  await settled(page);
  const stage = page.locator('[data-testid=stage] canvas');
  const without = await stage.screenshot();
  const before = await steps();
  await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 15_000 }));
  await button('Start').click();
  await button('Accept').waitFor({ timeout: 120_000 });
  // Proved, or with how much less might do; never more than was found.
  const said = page.locator('.result .arrange-sentence');
  const sentence = (await said.textContent()) ?? '';
  const proved = (await said.getAttribute('data-proved')) === 'true';
  const [, least, found, bound] =
    /^(?:No arrangement does it with less than (\d+) g\. Proved\.|Found one with (\d+) g of ballast; none does it with less than (\d+) g\.)$/.exec(
      sentence,
    ) ?? [];
  expect(proved).toBe(least !== undefined);
  const grams = Number(least ?? found);
  expect(Number(bound ?? 0)).toBeLessThan(grams);
  expect(grams).toBeGreaterThan(0);

  // The ghost and what stays aboard as it is carry what the sentence says, on the beam and on the stage.
  const ghostG = await page.evaluate(() => {
    const { place, document } = window.counterpoise;
    const ghosts = place.get().ghost?.parts ?? [];
    // Ballast that is not locked is taken out first.
    const stays = document.current().parts.filter(({ locked }) => locked);
    const ballast = [...ghosts, ...stays].filter(({ role }) => role === 'ballast');
    return ballast.reduce((sum, { massG }) => sum + massG, 0);
  });
  expect(ghostG).toBeCloseTo(grams, 6);
  expect(await page.locator('[data-testid=ghost] .ghost-outline').count()).toBeGreaterThan(1);
  await settled(page);
  expect((await stage.screenshot()).equals(without)).toBe(false);
  expect(await axe(page)).toEqual([]);
  await screenshot(page, 'arrange');
  expect(await steps()).toBe(before);

  // One move after the other, and what is held stays in sight however far the list is scrolled.
  const count = await page.locator('.moves li').count();
  expect(count).toBeGreaterThan(1);
  await button('One move back').click();
  expect(await page.locator('.moves li[data-shown=false]').count()).toBe(1);
  await button('One move on').click();
  expect(await page.locator('.moves li[data-shown=false]').count()).toBe(0);
  await page.locator('.arrange-body').evaluate((body) => body.scrollTo(0, body.scrollHeight));
  expect(await button('Put away').boundingBox()).not.toBeNull();

  await button('Accept').click();
  await page.waitForFunction(() => window.counterpoise.place.get().ghost === null);
  expect(await steps()).toBe(before + 1);
  // What was accepted is a plan with a box to tick for each move.
  await page
    .getByRole('checkbox', { name: / is done$/ })
    .first()
    .check();
  expect(await page.locator('.moves li[data-done=true]').count()).toBe(1);
  await button('Put away').click();
  // In the band and level enough, with the video sender and without.
  for (const position of ['on', 'off']) {
    await page.evaluate(
      (at) => window.counterpoise.view.setState({ positions: { 'video-sender': at } }),
      position,
    );
    const { where, cgMm } = await look(page);
    expect(where, position).toBe('inside');
    expect(Math.abs(cgMm[1]), position).toBeLessThanOrEqual(1.001);
  }
  await page.evaluate(() => window.counterpoise.view.setState({ positions: {} }));
  expect(await page.getByTestId('verdict').textContent()).toContain('In the band');

  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await steps()).toBe(before);
  expect((await look(page)).where).toBe('tail-heavy');
}, 150_000);

const commit = (step: string, change: Partial<Aircraft>) =>
  page.evaluate(
    ([label, fields]) => {
      const { document } = window.counterpoise;
      document.commit(label, { ...document.current(), ...fields });
    },
    [step, change] as const,
  );

const reasons = () => sheet().getByRole('region', { name: 'Why not' }).getByRole('listitem');

test('a band that cannot be kept is said, with what must give way and by how much', async () => {
  await commit('Narrow the band', { targetBand: { by: 'station', forwardMm: 752, aftMm: 753 } });
  await button('Start').click();
  await reasons().first().waitFor({ timeout: 90_000 });
  const mm = Number(/limit give way by ([\d.]+) mm/.exec((await reasons().first().textContent()) ?? '')?.[1]);
  expect(mm).toBeGreaterThan(0);
  // The result is of the aircraft as it was: an edit does not throw it away, and says so.
  await page.getByRole('button', { name: /^Undo/ }).click();
  await button('Search again').waitFor();
  await button('Put away').click();
  await button('Start').waitFor();
}, 150_000);

test('upright and dark: axe finds nothing on any of its pages, and nothing runs off to the side', async () => {
  const tablet = await openBench({ width: 820, height: 1180, dark: true, touch: true });
  await tablet.page.getByRole('button', { name: 'Arrange…' }).click();
  for (const name of ['Arrange', 'Ballast', 'What if']) {
    await tablet.page.getByTestId('arrange').getByText(name, { exact: true }).first().click();
    for (const more of await tablet.page.locator('.arrange-more summary').all()) await more.click();
    await settled(tablet.page);
    expect(await axe(tablet.page), name).toEqual([]);
    await screenshot(tablet.page, `arrange-${name.replace(' ', '-').toLowerCase()}-820`);
  }
  const over = await tablet.page.evaluate(
    () => window.document.documentElement.scrollWidth - window.document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
  expectClean(tablet);
  await tablet.close();
});

test.each(['whimbrel', 'corncrake'] as const)(
  '%s arranged and accepted is good on the screen, and fits',
  async (name) => {
    const before = demo(name);
    await put(page, before);
    await page.waitForFunction(() => window.counterpoise.stability.get().fresh);
    if (!(await sheet().isVisible())) await page.getByRole('button', { name: 'Arrange…' }).click();
    await button('Start').waitFor();
    await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 12_000 }));
    await button('Start').click();
    await button('Accept').click({ timeout: 120_000 });
    await button('Put away').click();
    await judgeScreen(bench);
    const { tone, text } = await page.evaluate(() => ({
      tone: window.counterpoise.verdict.judgement().severity,
      text: JSON.stringify(window.counterpoise.document.current()),
    }));
    expect(tone).toBe('good');
    expect(newProblems(wholeFit(before), wholeFit(JSON.parse(text))).map(({ key }) => key)).toEqual([]);
  },
  180_000,
);
