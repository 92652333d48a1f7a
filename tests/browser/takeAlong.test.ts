import { readFile } from 'node:fs/promises';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { inProject } from '../../src/commands/paths.mjs';
import { linkTo } from '../../src/files/link/aircraftLink';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import type { Aircraft } from '../../src/model/document/types';
import { chooseVariant } from '../../src/model/document/variants';
import { writeAircraft } from '../../src/model/document/write';
import { parseAircraft } from '../../src/model/reading/read';
import { axe, type Bench, expectClean, openBench } from './harness';

let bench: Bench;
let whimbrel: Aircraft;
beforeAll(async () => {
  const read = parseAircraft(await readFile(inProject('demo-data/whimbrel.json'), 'utf8'));
  if (!read.ok) throw new Error('Whimbrel does not read');
  whimbrel = read.aircraft;
  bench = await openBench({ plainFiles: true, graphics: false });
  await bench.page.waitForSelector('[data-testid=manifest]');
});
afterEach(() => expectClean(bench));
afterAll(() => bench.close());

const onBench = async () =>
  writeAircraft(await bench.page.evaluate(() => window.counterpoise.document.api.getState().committed));

test('a link pasted into the address opens its aircraft, goes from the address, and undo brings the old one back', async () => {
  const { page } = bench;
  const before = await onBench();
  const { hash } = new URL(linkTo(whimbrel, page.url()).address);
  await page.evaluate((fragment) => {
    location.hash = fragment;
  }, hash);
  await expect.poll(() => page.locator('.aircraft-name').textContent()).toContain('Whimbrel');
  expect(await onBench()).toBe(writeAircraft(whimbrel));
  expect(page.url()).not.toContain('#');
  await page.evaluate(() => {
    location.hash = '#aircraft=AAAA';
  });
  await page.getByText('part of it was cut off or changed').waitFor();
  expect(await onBench()).toBe(writeAircraft(whimbrel));
  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await onBench()).toBe(before);
  await page.getByRole('button', { name: /^Redo/ }).click();
});

test('one tap puts a variant on the bench; a change counts for it only, or for all; the table tells the best', async () => {
  const { page } = bench;
  const choice = page.getByTestId('variants');
  await choice.getByRole('button', { name: 'Night' }).click();
  const night = balanceAt(chooseVariant(whimbrel, 'night'), { fuelFraction: 1, down: LEVEL });
  const shown = await page.evaluate(() => window.counterpoise.balance.get().cgMm);
  expect(shown?.[0]).toBeCloseTo(night.cgMm?.[0] ?? Number.NaN, 9);
  const camera = (variant: string) =>
    page.evaluate((id) => {
      const { document } = window.counterpoise;
      const { variants, parts } = document.current();
      const there = id === variants?.chosenId;
      return there ? parts.find((part) => part.id === 'camera')?.positionMm[0] : undefined;
    }, variant);
  const nudge = async () => {
    await page.getByTestId('manifest').getByText('Autopilot').click();
    await page.locator('.stage-picture').press('ArrowRight');
  };
  const stationOf = () =>
    page.evaluate(
      () => window.counterpoise.document.current().parts.find(({ id }) => id === 'autopilot')?.positionMm[0],
    );
  expect(await camera('night')).toBe(140);
  await nudge();
  expect(await stationOf()).toBe(360);
  await choice.getByRole('button', { name: 'Day' }).click();
  expect(await stationOf()).toBe(359);
  await choice.getByRole('combobox').selectOption('all');
  await nudge();
  await choice.getByRole('button', { name: 'Long range' }).click();
  expect(await stationOf()).toBe(360);

  await page.locator('.app-name').click();
  await page.getByRole('button', { name: 'Variants…' }).click();
  await page.getByText(/^Best: Night/).waitFor();
  await expect(page.locator('[data-variant=night]').textContent()).resolves.toContain('In the band');
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to the bench' }).click();
});

test('tables and drawings come as files, and no place of the sheet is out of reach', async () => {
  const { page } = bench;
  await page.locator('.app-name').click();
  await page.getByRole('button', { name: 'Take along…' }).click();
  await page.locator('[data-fact=link-length]').waitFor();
  const saved = async (name: string) => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name, exact: true }).click(),
    ]);
    const path = inProject('.cache/saved', download.suggestedFilename());
    await download.saveAs(path);
    return readFile(path, 'utf8');
  };
  expect(await saved('Parts')).toMatch(/^Id,Name,.*\r\n/);
  const beam = await saved('Beam, SVG');
  const broken = await page.evaluate((svg) => {
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
    return parsed.querySelector('parsererror')?.textContent ?? '';
  }, beam);
  expect(broken).toBe('');
  expect(beam).not.toMatch(/class=|var\(--/);
  await page.getByRole('button', { name: 'QR code' }).click();
  await page.getByText(/squares a side|too much for a QR code/).waitFor();
  expect(await axe(page)).toEqual([]);
  await page.keyboard.press('Escape');
});
