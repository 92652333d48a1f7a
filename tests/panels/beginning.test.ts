import { expect, test } from 'vitest';
import { arrangementIds } from '../../src/model/begin/arrangements';
import { motorsOf } from '../../src/model/begin/beginAircraft';
import { tapeFields } from '../../src/model/begin/tape';
import { families } from '../../src/model/begin/thing';
import { beginningOf, firstBand, firstKit, firstSheet, sheetFaults } from '../../src/panels/begin/beginning';
import { howMeasured } from '../../src/panels/begin/howMeasured';

test('a sheet on which nothing was typed is an aircraft already', () => {
  for (const arrangement of arrangementIds) expect(sheetFaults({ ...firstSheet, arrangement })).toEqual({});
});

test('what was opened and not filled in is asked for, and asks for nothing itself', () => {
  const sheet = { ...firstSheet, kit: firstKit, band: firstBand };
  expect(sheetFaults(sheet)).toMatchObject({ kit: expect.any(String), band: expect.any(String) });
  expect(beginningOf(sheet)).toMatchObject({ kit: null, band: null });
});

/** Why it must be said: `rebuilt` among the tests of the model. */
test('tip chord and sweep are asked for where the straight part of the wing ends', () => {
  for (const field of ['tipChordMm', 'sweepMm'] as const)
    expect(howMeasured[field]).toMatch(/where the straight part .*ends/i);
});

test('an aircraft that weighs less than its airframe is refused', () => {
  const sheet = { ...firstSheet, massG: 900, kit: { ...firstKit, massG: 1000 } };
  expect(sheetFaults(sheet).massG).toMatch(/more than the airframe/);
});

/** Opening the sheet from the empty bench, the arrangement, and the button; each figure, choice and tick is one more. */
const PRESSES = 3;
const KIT = 1 + 2 + families.length;
const LIMITS = 1 + 2 + 1;

test.each(arrangementIds)(
  '%s: every figure that can be typed and every choice are at most 40 actions',
  (id) => {
    const choices = 1 + (motorsOf(id).length > 1 ? 2 : 0);
    const actions = PRESSES + tapeFields(id).length + choices + 1 + KIT + LIMITS;
    console.log(`${id}: at most ${actions} actions from the empty bench to a verdict.`);
    expect(actions).toBeLessThanOrEqual(40);
  },
);
