import { expect, test } from 'vitest';
import { tipBallast } from '../../../src/engine/balance/ballast';
import { massPoint, massSum } from '../../../src/engine/mass/massProperties';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { levelTip, wingTip } from '../../../src/model/balance/levelTip';
import { aircraftOf, boxPart } from '../aircraft';
import { surface } from '../surface';

/** Root leading edge at station 500, tip 800 mm out and swept back by 300 mm, tip chord 120: its middle at 860. */
const swept = surface({ id: 'wing', spanMm: 800, rootChordMm: 200, tipChordMm: 120 });
const wing = { ...swept, panels: [{ ...swept.panels[0]!, sweepMm: 300 }] };
const aircraft = aircraftOf([wing], [boxPart('camera', 400, [450, 60, 0])]);

test('the tip is where the swept wing ends, on either side', () => {
  expect(wingTip(aircraft, 'right')!.slice(0, 2)).toEqual([860, 800]);
  expect(wingTip(aircraft, 'left')!.slice(0, 2)).toEqual([860, -800]);
});

test('the mass and the shift are those of the aircraft balanced anew with the mass at that tip', () => {
  const before = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
  const tip = levelTip(aircraft, { massG: before.massG, cgMm: before.cgMm! })!;
  expect(tip.side).toBe('left');
  const added = { ...boxPart('lead', tip.massG, tip.tipMm) };
  const after = balanceAt(
    { ...aircraft, parts: [...aircraft.parts, added] },
    { fuelFraction: 1, down: LEVEL },
  );
  expect(after.cgMm![1]).toBeCloseTo(0, 9);
  expect(after.cgMm![0] - before.cgMm![0]).toBeCloseTo(tip.stationShiftMm, 9);
  // The wing is swept, so levelling makes it more tail-heavy.
  expect(tip.stationShiftMm).toBeGreaterThan(1);
});

/** Against the sum of two points: 5000 g at [600, −3], tip at [900, 1200]. By hand 5000·3/1200 = 12.5 g. */
test('by hand', () => {
  const tip = tipBallast(5000, [600, -3, 0], [900, 1200, 0])!;
  expect(tip.massG).toBeCloseTo(12.5, 12);
  const sum = massSum([massPoint(5000, [600, -3, 0]), massPoint(12.5, [900, 1200, 0])]);
  expect(sum.cgMm![1]).toBeCloseTo(0, 12);
  expect(tip.stationShiftMm).toBeCloseTo(sum.cgMm![0] - 600, 12);
  expect(tipBallast(5000, [600, -3, 0], [900, -1200, 0])).toBeNull();
  expect(tipBallast(5000, [600, -3, 0], [900, 0, 0])).toBeNull();
});

test('level, or without a wing on the light side, there is no tip to put a mass at', () => {
  expect(levelTip(aircraft, { massG: 5000, cgMm: [600, 0, 0] })).toBeNull();
  expect(levelTip(aircraftOf([]), { massG: 5000, cgMm: [600, -3, 0] })).toBeNull();
});
