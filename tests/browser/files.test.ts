import { readFile } from 'node:fs/promises';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { inProject } from '../../src/commands/paths.mjs';
import { parseAircraft } from '../../src/model/reading/read';
import { type Bench, expectClean, look, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 720, plainFiles: true, graphics: false });
  await bench.page.waitForSelector('[data-testid=manifest]');
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

const choose = async (name: string) => {
  await bench.page.locator('.app-name').click();
  await bench.page.getByRole('button', { name }).click();
};

const open = async (name: string, text: string) => {
  const [chooser] = await Promise.all([bench.page.waitForEvent('filechooser'), choose('Open a file…')]);
  await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
};

test('a saved file holds the aircraft on the bench, to the last field, and opens again', async () => {
  const { page } = bench;
  const [download] = await Promise.all([page.waitForEvent('download'), choose('Save as a file')]);
  expect(download.suggestedFilename()).toBe('sandmartin.json');
  const path = inProject('.cache/saved', download.suggestedFilename());
  await download.saveAs(path);
  const text = await readFile(path, 'utf8');
  const read = parseAircraft(text);
  expect(read.ok && read.aircraft).toEqual(await page.evaluate(() => window.counterpoise.document.current()));

  // A heavier camera typed into the file by hand, and a field that the bench does not know.
  const edited = JSON.parse(text);
  const camera = edited.parts.find((part: { id: string }) => part.id === 'camera');
  camera.massG += 100;
  camera.colour = 'grey';
  const before = await look(page);
  await open('mine.json', JSON.stringify(edited));
  await page.waitForFunction(
    (was) => Math.abs(window.counterpoise.balance.get().massG - was - 100) < 1e-6,
    before.massG,
  );
  const kept = await page.evaluate(
    () =>
      window.counterpoise.document.current().parts.find(({ id }) => id === 'camera') as { colour?: string },
  );
  expect(kept.colour).toBe('grey');
});

test('a bad file tells every fault with its place, and changes nothing', async () => {
  const { page } = bench;
  const before = await page.evaluate(() => JSON.stringify(window.counterpoise.document.current()));
  const bad = JSON.parse(before);
  bad.parts[0].massG = 'heavy';
  bad.parts[1].positionMm = [1, 2];
  bad.lateralToleranceMm = -4;
  await open('bad.json', JSON.stringify(bad));
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  const said = (await dialog.textContent()) ?? '';
  for (const word of ['bad.json', 'massG', 'positionMm', 'lateralToleranceMm', 'heavy'])
    expect(said).toContain(word);
  expect(await page.evaluate(() => JSON.stringify(window.counterpoise.document.current()))).toBe(before);
  await page.keyboard.press('Escape');
  await open('broken.json', '{ "format": ');
  await dialog.waitFor();
  await expect.poll(() => dialog.textContent()).toMatch(/line 1/i);
  await page.keyboard.press('Escape');
});

test('a typed entry takes units and sums, is one step, and a bad one says why and changes nothing', async () => {
  const { page } = bench;
  await page.locator('[data-testid=manifest] [data-item="flight-pack"] button').first().click();
  const mass = page.getByTestId('card').getByLabel('Mass', { exact: true });
  const massG = () =>
    page.evaluate(
      () => window.counterpoise.document.current().parts.find(({ id }) => id === 'flight-pack')?.massG,
    );
  await mass.fill('4.5 oz');
  await mass.press('Enter');
  // The ounce is 28.349523125 g exactly (international pound, 1959).
  expect(await massG()).toBeCloseTo(4.5 * 28.349523125, 9);
  await mass.fill('412+36');
  await mass.press('Enter');
  expect(await massG()).toBe(448);
  await mass.fill('a lot');
  await mass.press('Enter');
  expect(await page.getByTestId('card').getByRole('alert').textContent()).not.toBe('');
  expect(await massG()).toBe(448);
  await mass.press('Escape');
  await page.locator('[data-testid=beam] svg[tabindex="0"]').focus();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await massG()).toBe(478);
});
