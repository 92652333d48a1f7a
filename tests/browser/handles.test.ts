import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, drag, middleOf, openBench, settled, showView } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, reducedMotion: true, graphics: 'unpainted' });
});
afterAll(() => bench.close());

const hull = () =>
  bench.page.evaluate(() => {
    const piece = window.counterpoise.document.current().structure.find(({ kind }) => kind === 'fuselage');
    if (piece?.kind !== 'fuselage') throw new Error('the demo aircraft has a hull');
    return { id: piece.id, sections: piece.sections };
  });
const steps = () => bench.page.evaluate(() => window.counterpoise.document.api.getState().past.length);
const knob = (id: string) => bench.page.locator(`.handle[data-handle="${id}"]`);

test('a hull’s height is dragged, typed over and stepped by keys in the side elevation, one step each', async () => {
  const { page } = bench;
  const { id, sections } = await hull();
  await showView(page, 'Side');
  await page.evaluate((chosen) => window.counterpoise.view.setState({ selectedId: chosen }), id);
  const at = sections.reduce((most, s, i) => (s.heightMm > sections[most]!.heightMm ? i : most), 0);
  const height = knob(`${at} height`);
  await height.waitFor({ state: 'visible' });
  await settled(page);
  const box = (await height.boundingBox())!;
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(24);

  const from = await middleOf(page, `.handle[data-handle="${at} height"]`);
  await drag(page, from, { x: from.x, y: from.y - 20 }, { steps: 3 });
  const dragged = (await hull()).sections[at]!;
  expect(dragged.heightMm).toBeGreaterThan(sections[at]!.heightMm);
  expect(dragged.heightMm % 5).toBe(0);
  expect(await steps()).toBe(1);

  const field = page.locator('.handle-field input');
  await field.fill('21,5 cm');
  await field.press('Enter');
  expect((await hull()).sections[at]!.heightMm).toBe(215);
  await height.focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  expect((await hull()).sections[at]!.heightMm).toBe(217);
  await field.fill('−3');
  await field.press('Enter');
  await expect.poll(() => page.locator('.handle-field [role=alert]').textContent()).toContain('Expected');
  expect(await steps()).toBe(4);
  for (let step = 0; step < 4; step += 1) await page.evaluate(() => window.counterpoise.document.undo());
  expect((await hull()).sections).toEqual(sections);
});

test('Escape puts back what is in hand, and a locked tank has no knobs', async () => {
  const { page } = bench;
  const before = await hull();
  const from = await middleOf(page, '.handle');
  await drag(page, from, { x: from.x + 25, y: from.y - 25 }, { steps: 3, cancel: true });
  expect(await hull()).toEqual(before);
  await page.evaluate(() => {
    const { document, view } = window.counterpoise;
    const aircraft = document.current();
    document.commit('Lock', {
      ...aircraft,
      tanks: aircraft.tanks.map((tank) => ({ ...tank, locked: true })),
    });
    view.setState({ selectedId: aircraft.tanks[0]!.id });
  });
  await page.locator('.handles').waitFor({ state: 'detached' });
  // Its card is longer than the window; the card's place scrolls, the page never does.
  await page.getByTestId('clearances').waitFor({ state: 'attached' });
  const card = await page.locator('.card-place').evaluate((place) => place.scrollHeight - place.clientHeight);
  expect(card).toBeGreaterThan(0);
  const larger = await page.evaluate(() => [
    document.documentElement.scrollHeight - innerHeight,
    document.documentElement.scrollWidth - innerWidth,
  ]);
  expect(larger).toEqual([0, 0]);
});

test('a column pasted from a spreadsheet into the sections is one step', async () => {
  const { page } = bench;
  const { id, sections } = await hull();
  await page.evaluate((chosen) => window.counterpoise.view.setState({ selectedId: chosen }), id);
  const before = await steps();
  const paste = (text: string) =>
    page
      .getByTestId('card')
      .getByLabel('Width, section 2', { exact: true })
      .evaluate((input, pasted) => {
        const clipboardData = new DataTransfer();
        clipboardData.setData('text/plain', pasted);
        input.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
      }, text);
  await page.getByTestId('card').getByLabel('Width, section 2', { exact: true }).waitFor();
  await paste('61,5\n72,5\r\n');
  const widths = (await hull()).sections.map(({ widthMm }) => widthMm);
  expect(widths).toEqual(sections.map(({ widthMm }, i) => [widthMm, 61.5, 72.5][i] ?? widthMm));
  expect(await steps()).toBe(before + 1);
  await paste('61\nnarrow');
  await expect
    .poll(() => page.getByTestId('card').getByRole('alert').first().textContent())
    .toContain('Row 2, width');
  expect(await steps()).toBe(before + 1);
});
