import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Aircraft } from '../../src/model/document/types';
import { newProblems, wholeFit } from '../../src/model/fit/wholeFit';
import { demo } from '../demo/demoAircraft';
import { lostWays } from '../demo/lostWays';
import { redshank } from '../model/place/bench';
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
  bench = await openBench({ width: 1100, height: 760, graphics: 'unpainted' });
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

const commit = (step: string, change: Partial<Aircraft>) =>
  page.evaluate(
    ([label, fields]) => {
      const { document } = window.counterpoise;
      document.commit(label, { ...document.current(), ...fields });
    },
    [step, change] as const,
  );

/** The solver is held back on its way, so that a search is still running when something is done about it. */
async function withHeldSolver(during: () => Promise<void>): Promise<void> {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.context().route('**/*.wasm', async (route) => {
    await held;
    await route.continue().catch(() => {});
  });
  await during();
  release();
  await page.context().unroute('**/*.wasm');
}

const tilt = (down: readonly [number, number, number]) =>
  page.evaluate((way) => window.counterpoise.view.setState({ down: way }), down);

test('an edit or a tilt during a search says whose it is, and a cancelled one has done nothing', async () => {
  const before = await steps();
  const ofBefore = sheet().getByText('It goes on with the aircraft as it was');
  await withHeldSolver(async () => {
    await button('Start').click();
    await button('Cancel').waitFor();
    expect(await ofBefore.count()).toBe(0);
    const level = await page.evaluate(() => window.counterpoise.view.getState().down);
    await tilt([0.5, 0, -Math.sqrt(0.75)]);
    await ofBefore.waitFor();
    // Tilted back it is the search of this very state again.
    await tilt(level);
    await ofBefore.waitFor({ state: 'detached' });
    await commit('Change the notes', { notes: 'another' });
    await ofBefore.waitFor();
    await button('Search as it is now').click();
    await ofBefore.waitFor({ state: 'detached' });
    await button('Cancel').click();
  });
  expect(await sheet().getByRole('status').first().textContent()).toMatch(/^Cancelled/);
  await button('Put away').click();
  await button('Start').waitFor();
  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await steps()).toBe(before);
  expect(await page.locator('[data-testid=ghost]').count()).toBe(0);
});

test('the least ballast with its bound, a ghost to look at, one step to accept and one to take back', async () => {
  expect((await look(page)).where).toBe('tail-heavy');
  await settled(page);
  const triangles = () => page.evaluate(() => document.querySelector('canvas')?.drawn?.render.triangles ?? 0);
  const without = await triangles();
  expect(without).toBeGreaterThan(0);
  const before = await steps();
  await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 8000 }));
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
  await expect.poll(triangles).toBeGreaterThan(without);
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
  const done = page.locator('.moves li[data-done=true]');
  expect(await done.count()).toBe(1);
  // Large enough for a thumb, and its words tick it too.
  expect((await done.getByRole('checkbox').boundingBox())!.width).toBeGreaterThanOrEqual(16);
  await done.locator('strong').click();
  expect(await done.count()).toBe(0);
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

const reasons = () => sheet().getByRole('region', { name: 'Why not' }).getByRole('listitem');

test('what cannot be is said, with what must give way and by how much', async () => {
  // Everything locked behind its band, and nowhere to put ballast.
  const base = redshank(540);
  const locked = { ...base, ballastSpots: [], parts: base.parts.map((part) => ({ ...part, locked: true })) };
  await put(page, locked);
  await button('Start').click();
  const limit = reasons().filter({ hasText: /limit give way by/ });
  await limit.first().waitFor({ timeout: 60_000 });
  // The CG by hand, 2 810 g: the frame's 2 kg at 600, then 400 g at 700, 250 at 810, 40 at 200 and 120 at 300.
  const cgMm = (2000 * 600 + 400 * 700 + 250 * 810 + 40 * 200 + 120 * 300) / 2810;
  const mm = Number(/aft limit give way by ([\d.]+) mm/.exec((await limit.first().textContent()) ?? '')?.[1]);
  expect(mm).toBe(Math.ceil((cgMm - 540) * 10) / 10);
  // The result is of the aircraft as it was: an edit does not throw it away, and says so.
  await commit('Change the notes', { notes: 'another' });
  await button('Search again').waitFor();
  await button('Put away').click();
  await button('Start').waitFor();
}, 120_000);

/** To the end, or where that is long until something is found; then it is cancelled. */
async function searched(toTheEnd: boolean): Promise<void> {
  await button('Start').click();
  if (toTheEnd) return;
  await page.waitForFunction(
    () => {
      const figures = window.document.querySelectorAll('.progress .arrange-figures dd');
      return figures.length === 0 || /\d/.test(figures[1]?.textContent ?? '');
    },
    null,
    { timeout: 120_000 },
  );
  // It may end by itself before it is cancelled: either way there is something to accept.
  await Promise.race([
    button('Cancel')
      .click()
      .catch(() => {}),
    button('Accept').waitFor({ timeout: 120_000 }),
  ]);
}

test.each([
  ['whimbrel', true],
  ['corncrake', false],
  ['sandmartin', false],
  ['fieldfare', false],
] as const)(
  '%s arranged and accepted is good on the screen, fits, and every part has the way in it had',
  async (name, toTheEnd) => {
    const before = demo(name);
    await put(page, before);
    await page.waitForFunction(() => window.counterpoise.stability.get().fresh);
    await button('Start').waitFor();
    await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 60_000 }));
    await searched(toTheEnd);
    await button('Accept').click({ timeout: 120_000 });
    await button('Put away').click();
    await judgeScreen(bench);
    const { tone, text } = await page.evaluate(() => ({
      tone: window.counterpoise.verdict.judgement().severity,
      text: JSON.stringify(window.counterpoise.document.current()),
    }));
    expect(tone).toBe('good');
    const after: Aircraft = JSON.parse(text);
    expect(newProblems(wholeFit(before), wholeFit(after)).map(({ key }) => key)).toEqual([]);
    expect(lostWays(before, after)).toEqual([]);
  },
  180_000,
);

test('upright and dark: axe finds nothing on any of its pages, and nothing runs off to the side', async () => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.setViewportSize({ width: 820, height: 1180 });
  for (const name of ['Arrange', 'Ballast', 'What if']) {
    await sheet().getByText(name, { exact: true }).first().click();
    for (const more of await page.locator('.arrange-more summary').all()) await more.click();
    await settled(page);
    expect(await axe(page), name).toEqual([]);
    await screenshot(page, `arrange-${name.replace(' ', '-').toLowerCase()}-820`);
  }
  const over = await page.evaluate(
    () => window.document.documentElement.scrollWidth - window.document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
  expectClean(bench);
}, 60_000);
