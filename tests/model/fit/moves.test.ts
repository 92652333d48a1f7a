import { describe, expect, test } from 'vitest';
import { add, length } from '../../../src/engine/geometry/vec3';
import { bodies } from '../../../src/model/airframe/bodies';
import { placeItem, removeItem } from '../../../src/model/document/edit';
import type { Hatch, Lead } from '../../../src/model/document/types';
import { clashesIn, clearances, hullFit } from '../../../src/model/fit/clearances';
import { clearMove } from '../../../src/model/fit/clearMove';
import { entryThroughAny } from '../../../src/model/fit/entryThroughAny';
import { keepApartFaults, keepApartFaultsOf } from '../../../src/model/fit/keepApart';
import { hasRoomAt, nearestRoom } from '../../../src/model/fit/roomAt';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { manifestRows } from '../../../src/model/words/manifestRows';
import { benchOf, blockAt, box, partAt, squareHull, slabWing as wing } from './fitAircraft';

describe('the move that clears', () => {
  const aircraft = benchOf(
    [squareHull],
    [partAt('pack', box(100, 40, 30), [300, 0, 0]), partAt('receiver', box(40, 40, 20), [365, 0, 12])],
  );

  test('of two boxes square to the axes: along the axis where they share least, and a tenth of a millimetre', () => {
    const [clash] = wholeFit(aircraft).problems;
    // They share 5 mm of length (50 + 20 − 65), 40 of width, 13 of height.
    const by = clearMove(aircraft, 'pack', clash!)!;
    expect(by[0]).toBeCloseTo(-5.1, 6);
    expect(Math.hypot(by[1], by[2])).toBeCloseTo(0, 6);
    expect(clashesIn(clearances(placeItem(aircraft, 'pack', add([300, 0, 0], by)), 'pack'))).toEqual([]);
  });

  test('of a wall poked through on two sides: in from both', () => {
    // Inner faces at 58; the pack’s sides reach 60 and 61.
    const poking = placeItem(aircraft, 'pack', [300, 40, -46]);
    const clash = wholeFit(poking).problems.find(({ kind }) => kind === 'through')!;
    const by = clearMove(poking, 'pack', clash)!;
    const fit = hullFit(placeItem(poking, 'pack', add([300, 40, -46], by)), 'pack');
    expect(fit.place === 'inside' && fit.clearance.distanceMm).toBeGreaterThanOrEqual(0);
    expect(length(by)).toBeLessThan(Math.hypot(2, 3) + 1);
  });

  test('a part wider than the hull has no such move', () => {
    const wide = benchOf([squareHull], [partAt('pack', box(100, 140, 30), [300, 0, 0])]);
    const [clash] = wholeFit(wide).problems;
    expect(clearMove(wide, 'pack', clash!)).toBeNull();
  });

  test('not the shortest way where that would run into the next thing', () => {
    // 5 mm forward would be shortest; a pump stands there. Then the least is up or down by what they share, 13.
    const barred = { ...aircraft, parts: [...aircraft.parts, partAt('pump', box(20, 20, 20), [237, 0, 0])] };
    const clash = wholeFit(barred).problems.find(({ key }) => key.includes('receiver'))!;
    const by = clearMove(barred, 'pack', clash)!;
    expect(by).toEqual([0, 0, expect.closeTo(-13, 0)]);
    const after = placeItem(barred, 'pack', add([300, 0, 0], by));
    expect(wholeFit(after).problems).toEqual([]);
  });

  test('half outside with its middle out it comes in; a thing in a wing goes where that is thick enough', () => {
    const out = benchOf([squareHull], [partAt('pack', box(100, 40, 30), [300, 70, 0])]);
    const by = clearMove(out, 'pack', wholeFit(out).problems[0]!)!;
    // Its outer face at 90, the wall's inner face at 58.
    expect(by[1]).toBeCloseTo(-32.1, 2);
    const slim = benchOf([wing], [partAt('servo', box(30, 20, 20), [470, 300, 0])]);
    const forward = clearMove(slim, 'servo', wholeFit(slim).problems[0]!)!;
    expect(forward[0]).toBeLessThan(-5);
    expect(wholeFit(placeItem(slim, 'servo', add([470, 300, 0], forward))).problems).toEqual([]);
  });
});

describe('room along the station axis', () => {
  const aircraft = benchOf(
    [squareHull],
    [partAt('pack', box(100, 40, 30), [300, 0, 0]), partAt('servo', box(20, 20, 20), [100, 0, 0])],
  );

  test('the whole millimetre nearest to the wanted one that is free of others and in the hull', () => {
    const whole = [{ fromMm: -400, toMm: 900 }];
    // The pack takes 250 to 350, the servo half of 20 on either side; the hull's ends are at 2 and 598.
    expect(nearestRoom(aircraft, 'servo', whole, 290)).toBe(240);
    expect(nearestRoom(aircraft, 'servo', whole, -150)).toBe(12);
    expect(nearestRoom(aircraft, 'servo', [{ fromMm: 245, toMm: 355 }], 300)).toBeNull();
    expect(nearestRoom(aircraft, 'servo', [{ fromMm: 245.5, toMm: 900 }], 300)).toBe(360);
    expect(hasRoomAt(aircraft, 'servo', [100, 0, 200])).toBe(false);
  });
});

describe('in through any hatch', () => {
  const hatch = (id: string, x: number, sizeMm: number): Hatch => ({
    id,
    name: id,
    centreMm: [x, 0, 60],
    lengthMm: sizeMm,
    widthMm: sizeMm,
    normal: [0, 0, 1],
  });
  const parts = [partAt('pack', box(120, 50, 40), [120, 0, -30])];

  test('the nearest first; where that is too small the next', () => {
    const both = benchOf([squareHull], parts, { hatches: [hatch('far', 420, 110), hatch('near', 200, 110)] });
    expect(entryThroughAny(both, 'pack')).toMatchObject({ found: true, hatchId: 'near' });
    const small = benchOf([squareHull], parts, { hatches: [hatch('far', 300, 160), hatch('near', 120, 30)] });
    expect(entryThroughAny(small, 'pack')).toMatchObject({ found: true, hatchId: 'far' });
  });

  test('found through none: what was tried through all is counted, and the nearest is told of', () => {
    const shut = benchOf([squareHull], parts, { hatches: [hatch('far', 420, 30), hatch('near', 210, 30)] });
    const one = entryThroughAny({ ...shut, hatches: [hatch('near', 210, 30)] }, 'pack', { budget: 800 })!;
    const two = entryThroughAny(shut, 'pack', { budget: 800 })!;
    expect(two).toMatchObject({ found: false, hatchId: 'near' });
    expect(two.tried).toBeGreaterThan(one.tried);
    expect(entryThroughAny(benchOf([squareHull], parts), 'pack')).toBeNull();
  });
});

test('what one part breaks of the rules is what the check of all finds with it', () => {
  const aircraft = benchOf(
    [],
    [
      partAt('receiver', box(40, 30, 15), [0, 0, 0], { role: 'radio' }),
      partAt('controller', box(40, 30, 15), [60, 0, 0], { role: 'powerplant' }),
      partAt('pump', box(40, 30, 15), [500, 0, 0], { role: 'powerplant' }),
    ],
  );
  const [fault] = keepApartFaults(aircraft);
  // 60 between middles less two half lengths.
  expect(keepApartFaultsOf(aircraft, 'receiver')).toMatchObject([{ itemId: 'controller', distanceMm: 20 }]);
  expect(fault?.distanceMm).toBeCloseTo(20, 9);
  expect(keepApartFaultsOf(aircraft, 'pump')).toEqual([]);
});

describe('the manifest', () => {
  const lead: Lead = {
    id: 'lead',
    name: 'Lead',
    from: 'pack',
    to: 'receiver',
    lengthMm: 500,
    massGPerM: 30,
    waypointsMm: [],
  };
  const aircraft = benchOf(
    [blockAt('tray', box(200, 80, 20), [0, 0, 0], { cuttable: true })],
    [partAt('pack', box(100, 40, 30), [0, 0, 0]), partAt('receiver', box(40, 30, 15), [300, 0, 0])],
    { leads: [lead] },
  );

  test('lists a lead with the mass of the length owned, half way between its ends', () => {
    const row = manifestRows(aircraft).find(({ group }) => group === 'lead');
    expect(row).toMatchObject({ id: 'lead', massG: expect.closeTo(15, 9) });
    expect(row?.cgMm?.[0]).toBeCloseTo(150, 9);
  });

  test('its lines add up to the sum, cut-outs taken off', () => {
    const rows = manifestRows(aircraft);
    const sumG = rows.reduce((sum, { massG }) => sum + massG, 0);
    expect(sumG).toBeCloseTo(
      bodies(aircraft).reduce((sum, { mass }) => sum + mass.massG, 0),
      9,
    );
    // 200 × 80 × 20 less 100 × 40 × 20 mm³ of foam at 0.03 g/ml.
    expect(rows.find(({ id }) => id === 'tray')?.massG).toBeCloseTo(0.03 * (320 - 80), 9);
  });

  test('a lead taken out by its id leaves its ends aboard', () => {
    const without = removeItem(aircraft, 'lead');
    expect(without.leads).toEqual([]);
    expect(without.parts).toEqual(aircraft.parts);
  });
});
