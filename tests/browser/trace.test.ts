import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inProject } from '../../src/commands/paths.mjs';
import { type Bench, drag, expectClean, middleOf, openBench, settled, showView } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({
    width: 1440,
    height: 900,
    plainFiles: true,
    graphics: 'unpainted',
    reducedMotion: true,
  });
});
afterAll(() => bench.close());

const sheet = () => bench.page.getByTestId('trace');
const hand = () => bench.page.getByTestId('trace-hand');
const fromMenu = async (name: string) => {
  await bench.page.locator('.app-name').click();
  await bench.page.getByRole('button', { name, exact: true }).click();
};
const shown = () =>
  bench.page.evaluate(() => {
    const { trace, axis, document } = window.counterpoise;
    return {
      trace: trace.shown()?.trace,
      image: trace.shown()?.picture.image,
      kept: trace.isKept(),
      mmPerStagePx: axis.getState().station.mmPerPx,
      steps: document.api.getState().past.length,
      fits: JSON.stringify(document.current()),
    };
  });

/** A page with the plan of a body on it, as a browser writes it. */
const planPng = async () =>
  Buffer.from(
    await bench.page.evaluate(() => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [3200, 800];
      const paper = canvas.getContext('2d')!;
      paper.fillStyle = '#fff';
      paper.fillRect(0, 0, 3200, 800);
      paper.lineWidth = 12;
      paper.ellipse(1600, 400, 1500, 200, 0, 0, 7);
      paper.stroke();
      return canvas.toDataURL('image/png').split(',')[1]!;
    }),
    'base64',
  );

async function choosePicture(name: string, buffer: Buffer, mimeType: string): Promise<void> {
  const chooser = bench.page.waitForEvent('filechooser');
  await sheet()
    .getByRole('button', { name: /picture…/ })
    .click();
  await (await chooser).setFiles({ name, mimeType, buffer });
}

test('a drawing is laid under the side view, scaled by clicks, squared by keys, held, and kept in the file', async () => {
  const { page } = bench;
  await fromMenu('Lay a drawing under…');
  await sheet().getByText('Drawing under the side view').waitFor();
  await choosePicture('plan.svg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'image/svg+xml');
  await page.getByText(/plan\.svg is an SVG drawing, which can carry scripts/).waitFor();
  await choosePicture('plan.png', await planPng(), 'image/png');
  await sheet().getByText('Hold it where it lies').waitFor();
  const first = await shown();
  expect(first.kept).toBe(false);
  expect(first.image).toMatch(/^data:image\/webp;base64,/);
  const natural = await page.evaluate(async (address) => {
    const image = new Image();
    image.src = address;
    await image.decode();
    return [image.naturalWidth, image.naturalHeight];
  }, first.image!);
  expect(natural).toEqual([1600, 400]);

  await sheet().getByRole('button', { name: 'Scale…' }).click();
  const middle = await middleOf(page, '[data-testid=trace-hand]');
  await page.keyboard.press('Escape');
  await hand().waitFor({ state: 'detached' });
  await sheet().getByRole('button', { name: 'Scale…' }).click();
  await page.mouse.click(middle.x - 200, middle.y);
  await sheet().getByText('Now its other end.').waitFor();
  await page.mouse.click(middle.x + 200, middle.y);
  const length = sheet().getByLabel('Its length');
  await length.fill('a yard');
  await length.press('Enter');
  await sheet().getByRole('alert').waitFor();
  await length.fill('1000 mm');
  await length.press('Enter');
  await hand().waitFor({ state: 'detached' });
  const scaled = await shown();
  // 400 px of the stage have become 1000 mm.
  const factor = 1000 / (400 * first.mmPerStagePx);
  expect(scaled.trace!.mmPerPx / first.trace!.mmPerPx).toBeCloseTo(factor, 6);

  await sheet().getByRole('button', { name: 'Square…' }).click();
  await hand().waitFor();
  await page.keyboard.press('Enter');
  for (let i = 0; i < 10; i += 1) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Enter');
  await hand().waitFor({ state: 'detached' });
  // Right 100 and down 10: its slope undone.
  expect((await shown()).trace!.turnDeg).toBeCloseTo((Math.atan2(10, 100) * 180) / Math.PI, 3);
  await sheet().getByLabel('Hold it where it lies').check();
  expect(await sheet().getByRole('button', { name: 'Move…' }).isDisabled()).toBe(true);

  const laid = await shown();
  expect([laid.steps, laid.fits]).toEqual([0, first.fits]);
  expect(await page.evaluate(() => Object.keys(sessionStorage).join())).toContain('counterpoise.drawings.');
  await sheet()
    .getByLabel(/^Keep it in the file: \d+ kB$/)
    .check();
  const kept = await shown();
  expect([kept.kept, kept.steps]).toEqual([true, 1]);
  expect(kept.trace).toEqual(laid.trace);
});

test('a handle is dragged over it, the saved text has it, and it is there when that is opened', async () => {
  const { page } = bench;
  const laid = await shown();
  await sheet().getByRole('button', { name: 'Close' }).click();
  await page.evaluate(() => {
    const { view, document } = window.counterpoise;
    const hull = document.current().structure.find(({ kind }) => kind === 'fuselage');
    view.setState({ selectedId: hull!.id });
  });
  await page.locator('.handle').first().waitFor({ state: 'visible' });
  await settled(page);
  const from = await middleOf(page, '.handle[data-handle$="height"]');
  await drag(page, from, { x: from.x, y: from.y - 24 }, { steps: 3 });
  const after = await shown();
  expect([after.steps, after.trace]).toEqual([laid.steps + 1, laid.trace]);
  expect(after.fits).not.toBe(laid.fits);

  const [download] = await Promise.all([page.waitForEvent('download'), fromMenu('Save as a file')]);
  const path = inProject('.cache/saved', 'traced.json');
  await download.saveAs(path);
  const text = await readFile(path, 'utf8');
  expect(JSON.parse(text)).toMatchObject({
    traces: [{ view: 'side', locked: true }],
    traceImages: [{ image: laid.image }],
  });
  await page.evaluate(() => window.counterpoise.trace.remove());
  expect((await shown()).trace).toBeUndefined();
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), fromMenu('Open a file…')]);
  await chooser.setFiles({ name: 'traced.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.waitForFunction(() => window.counterpoise.trace.isKept());
  await showView(page, 'Side');
  expect((await shown()).trace).toEqual(laid.trace);
  expectClean(bench);
});
