import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Aircraft } from '../../src/model/document/types';
import { newProblems, wholeFit } from '../../src/model/fit/wholeFit';
import { demo } from '../demo/demoAircraft';
import { lostWays } from '../demo/lostWays';
import { redshank } from '../model/place/bench';
import { axe, type Bench, expectClean, judgeScreen, look, openBench, put, settled } from './harness';

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
  await expect.poll(() => sheet().getByRole('status').first().textContent()).toMatch(/^Cancelled/);
  await button('Put away').click();
  await button('Start').waitFor();
  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await steps()).toBe(before);
  await expect.poll(() => page.locator('[data-testid=ghost]').count()).toBe(0);
});

/** How long a search goes on: to its end, or where that is long until it has found something, or has a bound as well. */
type Until = 'the end' | 'found' | 'found and bounded';

/** Searches so far; what has not come to its end by then is cancelled. */
async function searched(until: Until): Promise<void> {
  await button('Start').click();
  if (until !== 'the end') {
    await page.waitForFunction((wanted) => {
      const figures = [...window.document.querySelectorAll('.progress .arrange-figures dd')];
      const [, best = '', bound = ''] = figures.map((figure) => figure.textContent ?? '');
      const isEnough = /\d/.test(best) && (wanted === 'found' || /[1-9]/.test(bound));
      return isEnough || window.document.querySelector('.result .arrange-sentence') !== null;
    }, until);
    // It may have ended by itself meanwhile: either way there is something to accept.
    await button('Cancel').evaluateAll((found) => {
      for (const cancel of found) (cancel as HTMLElement).click();
    });
  }
  await button('Accept').waitFor();
}

test('the least ballast with its bound, a ghost to look at, one step to accept and one to take back', async () => {
  expect((await look(page)).where).toBe('tail-heavy');
  await settled(page);
  const triangles = () => page.evaluate(() => document.querySelector('canvas')?.drawn?.render.triangles ?? 0);
  const without = await triangles();
  expect(without).toBeGreaterThan(0);
  const before = await steps();
  await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 100_000 }));
  await searched('found and bounded');
  // Proved, or with how much less might do; never more than was found.
  const said = page.locator('.result .arrange-sentence');
  const sentence = (await said.textContent()) ?? '';
  const proved = (await said.getAttribute('data-proved')) === 'true';
  const isCancelled = sentence.startsWith('Cancelled. ');
  const [, least, found, bound] =
    /^(?:Cancelled\. )?(?:No arrangement does it with less than (\d+) g\.(?: Proved\.)?|Found one with (\d+) g of ballast; none does it with less than (\d+) g\.)$/.exec(
      sentence,
    ) ?? [];
  expect(least ?? found, sentence).toBeDefined();
  expect(proved).toBe(least !== undefined && !isCancelled);
  expect(sentence.endsWith(' Proved.')).toBe(proved);
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
  await expect.poll(() => page.locator('[data-testid=ghost] .ghost-outline').count()).toBeGreaterThan(1);
  await settled(page);
  await expect.poll(triangles).toBeGreaterThan(without);
  expect(await axe(page)).toEqual([]);
  expect(await steps()).toBe(before);

  // One move after the other, and what is held stays in sight however far the list is scrolled.
  const count = await page.locator('.moves li').count();
  expect(count).toBeGreaterThan(1);
  await button('One move back').click();
  await expect.poll(() => page.locator('.moves li[data-shown=false]').count()).toBe(1);
  await button('One move on').click();
  await expect.poll(() => page.locator('.moves li[data-shown=false]').count()).toBe(0);
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
  await expect.poll(() => done.count()).toBe(1);
  // Large enough for a thumb, and its words tick it too.
  expect((await done.getByRole('checkbox').boundingBox())!.width).toBeGreaterThanOrEqual(16);
  await done.locator('strong').click();
  await expect.poll(() => done.count()).toBe(0);
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
  await expect.poll(() => page.getByTestId('verdict').textContent()).toContain('In the band');

  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await steps()).toBe(before);
  expect((await look(page)).where).toBe('tail-heavy');
});

const reasons = () => sheet().getByRole('region', { name: 'Why not' }).getByRole('listitem');

test('what cannot be is said, with what must give way and by how much', async () => {
  // Everything locked behind its band, and nowhere to put ballast.
  const base = redshank(540);
  const locked = { ...base, ballastSpots: [], parts: base.parts.map((part) => ({ ...part, locked: true })) };
  await put(page, locked);
  await button('Start').click();
  const limit = reasons().filter({ hasText: /limit give way by/ });
  await limit.first().waitFor();
  // The CG by hand, 2 810 g: the frame's 2 kg at 600, then 400 g at 700, 250 at 810, 40 at 200 and 120 at 300.
  const cgMm = (2000 * 600 + 400 * 700 + 250 * 810 + 40 * 200 + 120 * 300) / 2810;
  const mm = Number(/aft limit give way by ([\d.]+) mm/.exec((await limit.first().textContent()) ?? '')?.[1]);
  expect(mm).toBe(Math.ceil((cgMm - 540) * 10) / 10);
  // The result is of the aircraft as it was: an edit does not throw it away, and says so.
  await commit('Change the notes', { notes: 'another' });
  await button('Search again').waitFor();
  await button('Put away').click();
  await button('Start').waitFor();
});

test.each([
  ['whimbrel', 'the end'],
  ['corncrake', 'found'],
  ['sandmartin', 'found'],
  ['fieldfare', 'found'],
] as const)(
  '%s arranged and accepted is good on the screen, fits, and every part has the way in it had',
  async (name, until) => {
    const before = demo(name);
    await put(page, before);
    await page.waitForFunction(() => window.counterpoise.stability.get().fresh);
    await button('Start').waitFor();
    await page.evaluate(() => window.counterpoise.place.api.setState({ searchMs: 100_000 }));
    await searched(until);
    await button('Accept').click();
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
);

test('upright and dark: axe finds nothing on any of its pages, and nothing runs off to the side', async () => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.setViewportSize({ width: 820, height: 1180 });
  for (const name of ['Arrange', 'Ballast', 'What if']) {
    await sheet().getByText(name, { exact: true }).first().click();
    for (const more of await page.locator('.arrange-more summary').all()) await more.click();
    await settled(page);
    expect(await axe(page), name).toEqual([]);
  }
  const over = await page.evaluate(
    () => window.document.documentElement.scrollWidth - window.document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
  expectClean(bench);
});
