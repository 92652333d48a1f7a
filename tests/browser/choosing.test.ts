import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  type Bench,
  drag,
  expectClean,
  onPage,
  openBench,
  openFold,
  placeOf,
  settled,
  showView,
} from './harness';

// One page: what is chosen together, the own order of the list, and what is typed to a face.
let bench: Bench;
beforeAll(async () => {
  bench = await openBench({
    width: 1440,
    height: 900,
    reducedMotion: true,
    plainFiles: true,
    graphics: 'unpainted',
  });
  await bench.page.waitForSelector('.stage-bar');
});
afterAll(async () => {
  expectClean(bench);
  await bench.close();
});

const row = (id: string) => bench.page.locator(`[data-testid=manifest] tr[data-item="${id}"]`);
const card = () => bench.page.getByTestId('card');
const steps = () =>
  bench.page.evaluate(() => window.counterpoise.document.api.getState().past.map(({ label }) => label));
/** Half the length of a part along the stations, from the document: it is not turned. */
const halfLength = (id: string) =>
  bench.page.evaluate((wanted) => {
    const part = window.counterpoise.document.current().parts.find((one) => one.id === wanted);
    if (!part || !('lengthMm' in part.shape) || part.yawDeg !== 0 || part.pitchDeg !== 0)
      throw new Error(`${wanted} is no plain box`);
    return part.shape.lengthMm / 2;
  }, id);
const boxes = () =>
  bench.page.evaluate(() =>
    window.counterpoise.document
      .current()
      .parts.filter(
        ({ shape, locked, yawDeg, pitchDeg, rollDeg }) =>
          shape.kind === 'box' && !locked && yawDeg === 0 && pitchDeg === 0 && rollDeg === 0,
      )
      .map(({ id }) => id)
      .slice(0, 3),
  );

test('several are chosen in the list and on the stage, lined up in one step, and undone in one', async () => {
  const { page } = bench;
  const [a = '', b = '', c = ''] = await boxes();
  await row(a).click();
  await row(b).click({ modifiers: ['Shift'] });
  await showView(page, 'Side');
  const at = await onPage(page, await placeOf(page, c));
  await page.keyboard.down('Control');
  await page.mouse.click(at.x, at.y);
  await page.keyboard.up('Control');
  await card().getByRole('heading', { name: '3 chosen' }).waitFor();
  const before = await Promise.all([a, b, c].map((id) => placeOf(page, id)));
  const fronts = async () =>
    Promise.all([a, b, c].map(async (id) => (await placeOf(page, id))[0] - (await halfLength(id))));
  const leader = (await fronts())[2] ?? Number.NaN;
  await card().getByRole('button', { name: 'Front faces' }).click();
  for (const front of await fronts()) expect(front).toBeCloseTo(leader, 6);
  expect((await steps()).at(-1)).toBe('Line up front faces');
  await page.keyboard.press('Control+z');
  expect(await Promise.all([a, b, c].map((id) => placeOf(page, id)))).toEqual(before);
  // A plain click ends it.
  await row(a).click();
  await card().getByLabel('Station of its').waitFor();
});

test('several chosen are dragged and nudged together, in one step each; a click on one selects it alone', async () => {
  const { page } = bench;
  const [a = '', b = ''] = await boxes();
  await row(a).click();
  await row(b).click({ modifiers: ['Shift'] });
  await showView(page, 'Side');
  await settled(page);
  const both = () => Promise.all([a, b].map((id) => placeOf(page, id)));
  const start = await both();
  const shiftOf = async () => {
    const [a1, b1] = await both();
    return [a1, b1].map((now, i) => now?.map((mm, axis) => mm - (start[i]?.[axis] ?? 0)));
  };
  const count = (await steps()).length;
  const at = await onPage(page, await placeOf(page, a));
  await page.keyboard.down('Alt');
  await drag(page, at, { x: at.x + 40, y: at.y }, { steps: 4 });
  await page.keyboard.up('Alt');
  const [byA, byB] = await shiftOf();
  expect(byA?.[0]).toBeGreaterThan(1);
  for (const axis of [0, 1, 2]) expect(byB?.[axis]).toBeCloseTo(byA?.[axis] ?? Number.NaN, 6);
  expect((await steps()).slice(count)).toEqual([expect.stringMatching(/^Move .+ and 1 more$/)]);
  await page.keyboard.press('Control+z');
  expect(await both()).toEqual(start);
  await page.locator('.stage-picture').focus();
  await page.keyboard.press('Shift+ArrowRight');
  expect(await shiftOf()).toEqual([
    [10, 0, 0],
    [10, 0, 0],
  ]);
  await page.keyboard.press('Control+z');
  await card().getByRole('heading', { name: '2 chosen' }).waitFor();
  const onB = await onPage(page, await placeOf(page, b));
  await page.mouse.click(onB.x, onB.y);
  await card().getByLabel('Station of its').waitFor();
  expect(await page.evaluate(() => window.counterpoise.view.getState().groupIds)).toEqual([]);
});

test('a station is typed to the front face, from a reference point that is named beside it', async () => {
  const { page } = bench;
  const [a = ''] = await boxes();
  await row(a).click();
  await card().getByLabel('Station of its').selectOption('front');
  await page.locator('.measure-from select').selectOption('wing-root-le');
  const field = card().getByLabel('Station', { exact: true });
  await field.fill('110');
  await field.press('Enter');
  const root = await page.evaluate(
    () =>
      window.counterpoise.document.current().referencePoints.find(({ id }) => id === 'wing-root-le')
        ?.positionMm[0] ?? Number.NaN,
  );
  expect((await placeOf(page, a))[0]).toBeCloseTo(root + 110 + (await halfLength(a)), 6);
  await expect
    .poll(() => card().locator('.station-of').textContent())
    .toContain('behind the wing root leading edge');
  await page.keyboard.press('Escape');
  await page.evaluate(() => window.counterpoise.view.setState({ measureFromId: null, face: 'middle' }));
});

test('a line is put elsewhere in the list by keys and by its grip, and what is listed is what the file says', async () => {
  const { page } = bench;
  const listed = () =>
    page
      .locator('[data-testid=manifest] tbody')
      .first()
      .locator('tr[data-item]')
      .evaluateAll((rows) => rows.map((one) => one.getAttribute('data-item') ?? ''));
  const inFile = () => page.evaluate(() => window.counterpoise.document.current().parts.map(({ id }) => id));
  const [first = '', second = '', third = ''] = await listed();
  await row(first).click();
  await row(first).locator('th button').focus();
  await page.keyboard.press('Alt+ArrowDown');
  expect((await listed()).slice(0, 3)).toEqual([second, first, third]);
  expect(await inFile()).toEqual(await listed());
  const grip = await row(second).locator('.row-grip').boundingBox();
  const over = await row(third).boundingBox();
  if (!grip || !over) throw new Error('no row');
  await page.mouse.move(grip.x + 6, grip.y + grip.height / 2);
  await page.mouse.down();
  await page.mouse.move(grip.x + 6, over.y + over.height - 2, { steps: 4 });
  await page.mouse.up();
  expect((await listed()).slice(0, 3)).toEqual([first, third, second]);
  expect(await inFile()).toEqual(await listed());
});

test('what is deleted hands focus and selection to the next line at once, not with the next picture', async () => {
  const { page } = bench;
  const rows = page.locator('[data-testid=manifest] tbody').first().locator('tr[data-item]');
  const [second = '', third = ''] = await rows.evaluateAll((all) =>
    all.slice(1, 3).map((each) => each.getAttribute('data-item') ?? ''),
  );
  await row(second).click();
  await row(second).locator('th button').focus();
  const focused = await page.evaluate(async () => {
    const key = new KeyboardEvent('keydown', { key: 'Delete', bubbles: true, cancelable: true });
    document.activeElement?.dispatchEvent(key);
    await Promise.resolve().then(() => {});
    return document.activeElement?.closest('tr')?.getAttribute('data-item') ?? null;
  });
  expect(focused).toBe(third);
  expect(await page.evaluate(() => window.counterpoise.view.getState().selectedId)).toBe(third);
  expect(await row(second).count()).toBe(0);
  await page.keyboard.press('Control+z');
  await row(second).waitFor();
});

test('an estimate never becomes a weighed mass by choosing “Weighed”: only what is typed does', async () => {
  const { page } = bench;
  const wing = await page.evaluate(() => {
    const { document } = window.counterpoise;
    const now = document.current();
    const piece = now.structure.find((one) => one.kind === 'surface');
    if (!piece) throw new Error('no surface');
    const mass = { by: 'foam', gPerMl: 0.03 } as const;
    document.commit('Foam', {
      ...now,
      structure: now.structure.map((one) => (one.id === piece.id ? { ...piece, mass } : one)),
    });
    window.counterpoise.view.setState({ selectedId: piece.id });
    return piece.id;
  });
  const massOf = () =>
    page.evaluate((id) => {
      const piece = window.counterpoise.document.current().structure.find((one) => one.id === id);
      return piece && 'mass' in piece ? piece.mass : null;
    }, wing);
  const massBy = card().getByLabel('Mass by');
  const fold = card().locator('.fold > h3 > button').getByText('Mass', { exact: true });
  await massBy.or(fold).first().waitFor();
  if (!(await massBy.isVisible())) await openFold(page, 'Mass');
  await massBy.selectOption('weighed');
  expect(await massOf()).toEqual({ by: 'foam', gPerMl: 0.03 });
  const field = card().getByPlaceholder('not weighed yet');
  await expect.poll(() => field.inputValue()).toBe('');
  await field.fill('123');
  await field.press('Enter');
  await expect.poll(massOf).toMatchObject({ by: 'weighed', massG: 123 });
});

test('Ctrl+S saves, and lessons are said as the gestures are made', async () => {
  const { page } = bench;
  const lesson = page.getByTestId('lesson');
  await page.evaluate(() => window.counterpoise.view.setState({ learned: [], selectedId: null }));
  const [a = ''] = await boxes();
  await row(a).hover();
  await expect.poll(() => lesson.textContent()).toContain('disc');
  await page.evaluate((id) => {
    const { drag } = window.counterpoise;
    drag.pickUp(id);
    drag.moveTo([400, 0, 0]);
    drag.setDown();
  }, a);
  await expect.poll(() => lesson.textContent()).toContain('Arrow keys');
  expect(await page.evaluate(() => window.counterpoise.view.getState().learned)).toEqual(['drag', 'nudge']);
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  expect((await download).suggestedFilename()).toMatch(/sandmartin.*\.json$/i);
});
