import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Remedy, remedyFor } from '../../../src/model/advice/remedy';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { placeItem } from '../../../src/model/document/edit';
import type { Aircraft, Fuselage, Part, StructurePiece, TankItem } from '../../../src/model/document/types';
import { clashesOf } from '../../../src/model/fit/clash';
import { parseAircraft } from '../../../src/model/reading/read';
import { aircraftOf, boxPart } from '../aircraft';

/** Boxes 100 mm long: a fixed engine, and two things behind it that may be moved. */
const engine: Part = { ...boxPart('engine', 900, [500, 0, 0]), locked: true };
const pack = boxPart('pack', 100, [700, 0, 0]);
const camera = boxPart('camera', 60, [800, 60, 0]);
const AFT_MM = 532;

const tailHeavy = (more: readonly Part[] = [], structure: readonly StructurePiece[] = []): Aircraft => ({
  ...aircraftOf(structure, [engine, pack, camera, ...more]),
  targetBand: { by: 'station', forwardMm: 500, aftMm: AFT_MM },
});

const remedyOf = (aircraft: Aircraft): Remedy | null =>
  remedyFor(aircraft, balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }));

type Weighed = { readonly massG: number; readonly stationMm: number };
const weighed = ({ parts, tanks }: Aircraft): Weighed[] => [
  ...parts.map(({ massG, positionMm }) => ({ massG, stationMm: positionMm[0] })),
  ...tanks.map(({ emptyMassG, positionMm }) => ({ massG: emptyMassG, stationMm: positionMm[0] })),
];
const totals = (all: readonly Weighed[]) => {
  const massG = all.reduce((sum, one) => sum + one.massG, 0);
  return { massG, cgMm: all.reduce((sum, one) => sum + one.massG * one.stationMm, 0) / massG };
};

/** Moving a part by d moves the CG by d × its mass / total mass. */
const stationOnLimit = (aircraft: Aircraft, { massG, positionMm }: Part): number => {
  const total = totals(weighed(aircraft));
  return positionMm[0] - ((total.cgMm - AFT_MM) * total.massG) / massG;
};

function expectMove(aircraft: Aircraft, part: Part): void {
  const remedy = remedyOf(aircraft);
  if (remedy?.by !== 'moving') throw new Error(`expected a move, got ${JSON.stringify(remedy)}`);
  expect(remedy.item.id).toBe(part.id);
  expect(remedy.fromMm).toBe(part.positionMm[0]);
  expect(remedy.toMm).toBeCloseTo(stationOnLimit(aircraft, part), 6);
}

const hull = (noseMm: number, tailMm: number): Fuselage => ({
  id: 'hull',
  kind: 'fuselage',
  name: 'Hull',
  sides: 'centre',
  buttlineMm: 0,
  sections: [noseMm, tailMm].map((stationMm) => ({
    stationMm,
    widthMm: 300,
    heightMm: 100,
    waterlineMm: 0,
    roundness: 1,
  })),
  skinMm: 1,
  mass: { by: 'weighed', massG: 0 },
});

describe('the shortest move that would just do', () => {
  test('is that of the heavier part when nothing is in its way', () => {
    expectMove(tailHeavy(), pack);
  });

  test('is passed over where another part stands', () => {
    const valve: Part = { ...boxPart('valve', 5, [590, 0, 0]), locked: true };
    const aircraft = tailHeavy([valve]);
    expect(clashesOf(aircraft, 'pack')).toEqual([]);
    expectMove(aircraft, camera);
  });

  test('stands where the part beside it leaves room', () => {
    const beside: Part = { ...boxPart('valve', 5, [590, 41, 0]), locked: true };
    expectMove(tailHeavy([beside]), pack);
  });

  test('is passed over where a tank stands', () => {
    const tank: TankItem = {
      id: 'tank',
      name: 'Tank',
      shape: { kind: 'box', lengthMm: 100, widthMm: 40, heightMm: 20 },
      positionMm: [590, 0, 0],
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
      emptyMassG: 5,
      startMl: 0,
      unusableMl: 0,
      feeds: 'outlet',
      rank: 1,
    };
    expectMove({ ...tailHeavy(), tanks: [tank] }, camera);
  });

  test('is passed over where the part would reach past the nose, though its middle would not', () => {
    const reach = stationOnLimit(tailHeavy(), pack) - 50;
    expectMove(tailHeavy([], [hull(reach - 1, 900)]), pack);
    expectMove(tailHeavy([], [hull(reach + 1, 900)]), camera);
  });

  test('is passed over where the part would reach past the tail', () => {
    const tailMm = 700;
    const noseHeavy = (endMm: number): Aircraft => ({
      ...aircraftOf(
        [hull(200, endMm)],
        [
          { ...engine, positionMm: [500, 0, 0] },
          { ...pack, positionMm: [600, 0, 0] },
          { ...camera, positionMm: [400, 60, 0] },
        ],
      ),
      targetBand: { by: 'station', forwardMm: 508, aftMm: 530 },
    });
    // CG 500 + (100·100 − 60·100)/1060 = 503.77 mm: the pack goes 4.23·1060/100 = 44.8 mm aft, to 694.8 at its end.
    expect(remedyOf(noseHeavy(tailMm))).toMatchObject({ by: 'moving', item: { id: 'pack' } });
    expect(remedyOf(noseHeavy(tailMm - 10))).toMatchObject({ by: 'moving', item: { id: 'camera' } });
  });

  test('a former drawn as a loft is no hull', () => {
    const reach = stationOnLimit(tailHeavy(), pack) - 50;
    const section = { widthMm: 100, heightMm: 100, centreYMm: 0, centreZMm: 0, roundness: 1 };
    const former: StructurePiece = {
      id: 'former',
      kind: 'block',
      name: 'Former',
      sides: 'centre',
      shape: {
        kind: 'loft',
        sections: [
          { ...section, xMm: -2 },
          { ...section, xMm: 2 },
        ],
      },
      positionMm: [800, 0, 0],
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
      mass: { by: 'weighed', massG: 0 },
    };
    expectMove(tailHeavy([], [former, hull(reach + 1, 900)]), camera);
  });
});

test('where every move is barred it is ballast in the nose: W·(CG − limit)/(limit − station)', () => {
  // The weight-and-balance formula of the FAA Aviation Maintenance Technician Handbook – General, ch. 4.
  const barred = [boxPart('one', 5, [590, 0, 0]), boxPart('two', 5, [700, 60, 0])];
  const aircraft = tailHeavy(
    barred.map((part) => ({ ...part, locked: true })),
    [hull(400, 900)],
  );
  const { massG, cgMm } = totals(weighed(aircraft));
  const remedy = remedyOf(aircraft);
  if (remedy?.by !== 'ballast') throw new Error(`expected ballast, got ${JSON.stringify(remedy)}`);
  expect(remedy.stationMm).toBeGreaterThan(400);
  expect(remedy.massG).toBeCloseTo((massG * (cgMm - AFT_MM)) / (AFT_MM - remedy.stationMm), 6);
});

test.each(['corncrake', 'fieldfare'])('the advice for %s can be followed', (name) => {
  const url = new URL(`../../../demo-data/${name}.json`, import.meta.url);
  const read = parseAircraft(readFileSync(url, 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  const { aircraft } = read;
  const remedy = remedyOf(aircraft);
  if (!remedy) throw new Error(`no advice for ${name}`);
  const followed = remedy.by === 'moving' ? moved(aircraft, remedy) : withLead(aircraft, remedy);
  if (remedy.by === 'moving') expect(clashesOf(followed, remedy.item.id)).toEqual([]);
  expect(balanceAt(followed, { fuelFraction: 1, down: LEVEL }).fit?.where).toBe('inside');
});

const moved = (aircraft: Aircraft, { item, toMm }: Extract<Remedy, { by: 'moving' }>): Aircraft =>
  placeItem(aircraft, item.id, [toMm, item.positionMm[1], item.positionMm[2]]);

/** Lead of that mass; a hair more, so that rounding does not leave it short. */
const withLead = (
  aircraft: Aircraft,
  { massG, stationMm }: Extract<Remedy, { by: 'ballast' }>,
): Aircraft => ({
  ...aircraft,
  parts: [...aircraft.parts, boxPart('lead', massG + 1e-6, [stationMm, 0, 0])],
});
