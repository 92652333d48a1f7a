import { describe, expect, test } from 'vitest';
import { massMirror, massSum } from '../../../src/engine/mass/massProperties';
import { bareAirframeDifference, bodies, structureMass } from '../../../src/model/airframe/bodies';
import { placeItem } from '../../../src/model/document/edit';
import type { Aircraft, BareAirframe } from '../../../src/model/document/types';
import { readAircraft } from '../../../src/model/reading/read';
import { manifestRows } from '../../../src/model/words/manifestRows';
import { aircraftOf, boxBlock, boxPart, dunlinJson } from '../aircraft';

const dunlin = (): Aircraft => {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  return read.aircraft;
};
const sumOf = (aircraft: Aircraft) => massSum(bodies(aircraft).map(({ mass }) => mass));
const one = (aircraft: Aircraft, id: string) => bodies(aircraft).find((body) => body.id === id)!.mass;

describe('a part', () => {
  test('is a uniform box: I = m(b² + c²)/12 about its middle (any mechanics textbook)', () => {
    const {
      massG,
      cgMm,
      inertiaAboutCgGmm2: t,
    } = one(aircraftOf([], [boxPart('pack', 120, [300, -20, 5])]), 'pack');
    expect(massG).toBe(120);
    expect(cgMm).toEqual([300, -20, 5]);
    expect(t.xx).toBeCloseTo((120 * (40 ** 2 + 20 ** 2)) / 12, 6);
    expect(t.yy).toBeCloseTo((120 * (100 ** 2 + 20 ** 2)) / 12, 6);
    expect(t.zz).toBeCloseTo((120 * (100 ** 2 + 40 ** 2)) / 12, 6);
  });
});

describe('a mass source', () => {
  test('foam weighs its volume, skin its area', () => {
    // A box of 20 × 10 × 5 cm: 1 litre; 2(200 + 100 + 50) cm² = 0.07 m².
    expect(one(aircraftOf([boxBlock('b', [0, 0, 0], { by: 'foam', gPerMl: 0.03 })]), 'b').massG).toBeCloseTo(
      30,
      9,
    );
    expect(one(aircraftOf([boxBlock('b', [0, 0, 0], { by: 'skin', gPerM2: 500 })]), 'b').massG).toBeCloseTo(
      35,
      9,
    );
  });

  test('weighed: the pair weighs right plus left, and shifts the CG to the heavy side', () => {
    const pair = aircraftOf([
      boxBlock('pod', [100, 50, 0], { by: 'weighed', massG: 60, leftMassG: 40 }, 'both'),
    ]);
    expect(one(pair, 'pod.right').massG).toBe(60);
    expect(one(pair, 'pod.left').massG).toBe(40);
    // (60·50 − 40·50)/100
    expect(sumOf(pair).cgMm?.[1]).toBeCloseTo(10, 12);
  });

  test('weighed: without a left mass both weigh the same and mirror each other', () => {
    const pair = aircraftOf([boxBlock('pod', [100, 50, 7], { by: 'weighed', massG: 60 }, 'both')]);
    expect(one(pair, 'pod.left')).toEqual(massMirror(one(pair, 'pod.right')));
  });

  test('the panels of a wing share what was weighed', () => {
    const aircraft = dunlin();
    const panels = bodies(aircraft).filter(({ sourceId }) => sourceId === 'wing');
    const of = (side: string) =>
      panels.filter((body) => body.side === side).reduce((sum, { mass }) => sum + mass.massG, 0);
    expect(of('right')).toBeCloseTo(871, 9);
    expect(of('left')).toBeCloseTo(864, 9);
  });

  test('a hull is a skin unless it is said to be solid', () => {
    // At equal mass a skin has more inertia about its axis than a solid: all of it lies outside.
    const aircraft = dunlin();
    const fuselage = aircraft.structure.find(({ id }) => id === 'fuselage')!;
    if (fuselage.kind !== 'fuselage') throw new Error('expected the fuselage');
    const spreadAs = (spread: 'solid' | 'skin') =>
      one(aircraftOf([{ ...fuselage, mass: { by: 'weighed', massG: 1450, spread } }]), 'fuselage');
    expect(one(aircraft, 'fuselage')).toEqual(spreadAs('skin'));
    expect(spreadAs('skin').inertiaAboutCgGmm2.xx).toBeGreaterThan(spreadAs('solid').inertiaAboutCgGmm2.xx);
  });
});

describe('the bare airframe as weighed', () => {
  const shapes = [
    boxBlock('front', [0, 0, 0], { by: 'weighed', massG: 300 }),
    boxBlock('rear', [1000, 0, 40], { by: 'weighed', massG: 100 }),
  ];
  const weighed = (massG: number, stationMm: number, use: BareAirframe['use']): Aircraft => ({
    ...aircraftOf(shapes),
    bareAirframe: { massG, stationMm, buttlineMm: 0, use },
  });

  test('compared: says by how much and changes nothing', () => {
    // Shapes: 400 g at (300·0 + 100·1000)/400 = 250 mm. Missing: 100 g at (500·300 − 400·250)/100 = 500 mm.
    const aircraft = weighed(500, 300, 'compare');
    expect(bareAirframeDifference(aircraft)).toMatchObject({
      massG: 100,
      stationMm: 50,
      buttlineMm: 0,
      waterlineMm: null,
      placeMm: [500, 0, 10],
    });
    expect(sumOf(aircraft)).toEqual(sumOf(aircraftOf(shapes)));
    expect(bareAirframeDifference(aircraftOf(shapes))).toBeNull();
  });

  test('correcting: what is missing is added where it must sit', () => {
    const aircraft = weighed(500, 300, 'correct');
    const correction = one(aircraft, 'bare-airframe');
    expect(correction.massG).toBe(100);
    expect(correction.cgMm?.[0]).toBeCloseTo(500, 9);
    expect(sumOf(aircraft).massG).toBe(500);
    expect(sumOf(aircraft).cgMm?.[0]).toBeCloseTo(300, 9);
  });

  test.each([
    ['replacing', weighed(500, 300, 'replace')],
    ['correcting with nothing missing', weighed(400, 260, 'correct')],
    ['correcting with less than the shapes', weighed(350, 260, 'correct')],
    ['correcting from outside the airframe', weighed(401, 270, 'correct')],
  ])('%s: weighed mass and CG, inertia of the shapes scaled', (_, aircraft) => {
    const { massG, stationMm } = aircraft.bareAirframe!;
    const sum = sumOf(aircraft);
    expect(bodies(aircraft).map(({ id }) => id)).toEqual(['bare-airframe']);
    expect(sum.massG).toBe(massG);
    expect(sum.cgMm).toEqual([stationMm, 0, 10]);
    const before = structureMass(shapes).inertiaAboutCgGmm2;
    expect(sum.inertiaAboutCgGmm2.yy / before.yy).toBeCloseTo(massG / 400, 12);
    expect(sum.inertiaAboutCgGmm2.xz / before.xz).toBeCloseTo(massG / 400, 12);
  });

  test('without any shapes it is a mass at its place', () => {
    const aircraft = { ...weighed(500, 300, 'correct'), structure: [] };
    expect(sumOf(aircraft)).toMatchObject({ massG: 500, cgMm: [300, 0, 0] });
    expect(bareAirframeDifference(aircraft)).toMatchObject({ massG: 500, stationMm: null });
  });
});

describe('dragging a part', () => {
  test('leaves every other body the very same object', () => {
    const before = dunlin();
    const [old, now] = [bodies(before), bodies(placeItem(before, 'receiver', [600, 0, 0]))];
    const changed = now.filter((body, i) => body !== old[i]).map(({ id }) => id);
    expect(changed).toEqual(['receiver']);
  });
});

describe('the manifest', () => {
  test('has one row for each item, sides together, and adds up', () => {
    const aircraft = dunlin();
    const rows = manifestRows(aircraft);
    expect(rows.map(({ id }) => id)).toEqual(
      [...aircraft.structure, ...aircraft.tanks, ...aircraft.parts].map(({ id }) => id),
    );
    expect(rows.find(({ id }) => id === 'main-gear')?.massG).toBe(2 * (78 + 61));
    expect(rows.reduce((sum, { massG }) => sum + massG, 0)).toBeCloseTo(sumOf(aircraft).massG, 6);
    expect(rows.find(({ id }) => id === 'engine')).toMatchObject({ locked: true, massFrom: null });
    expect(rows.find(({ id }) => id === 'receiver')).toMatchObject({ locked: false, massFrom: 'typical' });
  });

  test('still adds up when the weighed airframe stands for the shapes', () => {
    const aircraft: Aircraft = { ...dunlin(), bareAirframe: { ...dunlin().bareAirframe!, use: 'replace' } };
    const rows = manifestRows(aircraft).filter(({ counted }) => counted);
    expect(rows.reduce((sum, { massG }) => sum + massG, 0)).toBeCloseTo(sumOf(aircraft).massG, 6);
    expect(rows.filter(({ group }) => group === 'structure').map(({ id }) => id)).toEqual(['bare-airframe']);
  });
});
