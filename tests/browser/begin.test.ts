import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { arrangementIds, arrangementOf } from '../../src/model/begin/arrangements';
import { firstSpanMm, type TapeField, tapeFields, wholeTape } from '../../src/model/begin/tape';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';
import { type Bench, judgeScreen, openBench, put } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1440, height: 900, graphics: false });
});
afterAll(() => bench.close());

/** The most that may be asked of a person from the empty bench to a verdict. */
const MOST_ACTIONS = 40;

/** Presses, entries and choices, each of which counts as one. */
function countingHand() {
  let actions = 0;
  const counted = (action: () => Promise<unknown>) => {
    actions += 1;
    return action();
  };
  return {
    count: () => actions,
    press: (target: Locator) => counted(() => target.click()),
    type: (field: Locator, text: string) =>
      counted(async () => {
        await field.focus();
        await field.page().keyboard.insertText(text);
      }),
    choose: (field: Locator, label: string) => counted(() => field.selectOption({ label })),
    key: (name: string) => counted(() => bench.page.keyboard.press(name)),
  };
}

const onBench = async () =>
  writeAircraft(
    JSON.parse(await bench.page.evaluate(() => JSON.stringify(window.counterpoise.document.current()))),
  );

test('from the empty bench to a verdict: a kit with its manual, by pointer', async () => {
  const { page } = bench;
  await put(page, blankAircraft());
  const before = await onBench();
  const hand = countingHand();
  const sheet = page.getByTestId('begin');
  const field = (label: string) => sheet.getByLabel(label, { exact: true });

  await hand.press(page.getByTestId('manifest').getByRole('button', { name: 'New aircraft' }));
  await hand.press(sheet.getByText('Low wing', { exact: true }));
  for (const [label, text] of [
    ['Span', '1.83m'],
    ['Root chord', '330'],
    ['Tip chord', '24 cm'],
    ['Tip behind root', '35'],
    ['Length', '1410'],
    ['Nose to wing', '13 1/2 in'],
    ['Tail span', '660'],
    ['Tail chord', '165'],
    ['Ready to fly', '3150'],
  ] as const) {
    await hand.type(field(label), text);
  }
  // What is being typed is what the drawing measures.
  await field('Nose to wing').focus();
  await expect.poll(() => page.getByTestId('begin-drawing').textContent()).toMatch(/Nose to wing 343\s*mm/);
  await hand.press(sheet.getByLabel('The airframe is finished and weighed'));
  await hand.type(field('It weighs'), '2010');
  await hand.type(field('Balances at'), '455');
  await hand.press(sheet.getByLabel('motor with propeller'));
  await expect
    .poll(() => sheet.textContent())
    .toContain('contains the structure, servos and motor with propeller');
  await hand.press(sheet.getByLabel('The manual gives CG limits'));
  await hand.type(field('From'), '105');
  // Limits the wrong way round are refused where they were typed, and nothing is put on the bench.
  await hand.type(field('To'), '95');
  await expect.poll(() => sheet.getByRole('alert').first().textContent()).toContain('ahead of the second');
  await field('To').fill('');
  await hand.type(field('To'), '115');
  await hand.press(sheet.getByRole('button', { name: 'Put it on the bench' }));

  await judgeScreen(bench);
  const made = await page.evaluate(() => window.counterpoise.document.current());
  // 13.5 in are 342.9 mm, by the definition of the inch.
  expect(made.targetBand).toMatchObject({
    forwardMm: 342.9 + 105,
    aftMm: 342.9 + 115,
    statedFrom: 'wing-root-le',
  });
  expect(made.bareAirframe).toMatchObject({ massG: 2010, stationMm: 455 });
  expect(await page.locator('.answer-headline').textContent()).not.toBe('');
  await expect.poll(() => page.getByTestId('card').textContent()).toContain('Flight pack');
  console.log(`A kit with its manual: ${hand.count()} actions.`);
  expect(hand.count()).toBeLessThanOrEqual(MOST_ACTIONS);

  await page.getByRole('button', { name: /^Undo: / }).click();
  expect(await onBench()).toBe(before);
});

test('and a flying wing that nobody weighed, by keys', async () => {
  const { page } = bench;
  await put(page, blankAircraft());
  const hand = countingHand();
  await page.getByTestId('manifest').getByRole('button', { name: 'New aircraft' }).focus();
  await hand.key('Enter');
  const sheet = page.getByTestId('begin');
  await sheet.getByRole('radio', { name: 'Delta' }).focus();
  await hand.key('Space');
  await hand.key('ArrowDown');
  await expect.poll(() => sheet.getByRole('radio', { name: 'Flying wing' }).isChecked()).toBe(true);
  await hand.key('Tab');
  await page.keyboard.insertText('1400');
  // Enter in a field takes the figure and no more; the button is what puts it on the bench.
  await hand.key('Enter');
  expect(await page.evaluate(() => window.counterpoise.view.getState().place)).toBe('begin');
  await sheet.getByRole('button', { name: 'Put it on the bench' }).focus();
  await hand.key('Enter');
  await judgeScreen(bench);
  await expect.poll(() => page.locator('.answer-headline').textContent()).toMatch(/^In the estimated band/);
  console.log(`A flying wing by its span: ${hand.count()} actions.`);
  expect(hand.count()).toBeLessThanOrEqual(MOST_ACTIONS);
});

const labels: Readonly<Record<TapeField, string | RegExp>> = {
  spanMm: 'Span',
  rootChordMm: 'Root chord',
  tipChordMm: 'Tip chord',
  sweepMm: 'Tip behind root',
  lengthMm: 'Length',
  wingAtMm: 'Nose to wing',
  tailSpanMm: /^(Tail|Foreplane) span$/,
  tailChordMm: /^(Tail|Foreplane) chord$/,
};

test.each(arrangementIds)('%s: all figures of the tape, and then a verdict to act on', async (id) => {
  const { page } = bench;
  await put(page, blankAircraft());
  const hand = countingHand();
  await hand.press(page.getByTestId('manifest').getByRole('button', { name: 'New aircraft' }));
  const sheet = page.getByTestId('begin');
  await hand.press(sheet.getByText(arrangementOf(id).name, { exact: true }));
  // A tenth larger than it is shown, as a tape reads it: to the whole millimetre.
  const tape = wholeTape(id, { spanMm: Math.round(firstSpanMm(id) * 1.1) }, 'electric');
  for (const field of tapeFields(id)) {
    await hand.type(sheet.getByLabel(labels[field], { exact: true }), String(Math.round(tape[field])));
  }
  await hand.press(sheet.getByRole('button', { name: 'Put it on the bench' }));
  await judgeScreen(bench);
  await expect.poll(() => page.locator('.answer-headline').textContent()).toMatch(/^(In the|Nose-heavy)/);
  await expect.poll(() => page.locator('[data-fact=fit]').textContent()).toContain('all fits');
  console.log(`${id} from the tape: ${hand.count()} actions.`);
  expect(hand.count()).toBeLessThanOrEqual(MOST_ACTIONS);
});
