import { describe, expect, test } from 'vitest';
import { type Advice, advise } from '../../../src/model/advice/advise';
import type { Spoken } from '../../../src/model/advice/figures';
import { applyRemedy, type Remedy } from '../../../src/model/advice/remedy';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft, Part, StructurePiece } from '../../../src/model/document/types';
import { aircraftOf, boxPart } from '../aircraft';
import { HULL } from './randomAircraft';

/** Boxes 100 mm long: a fixed engine, and two things behind it that may be moved. */
const engine: Part = { ...boxPart('engine', 900, [500, 0, 0]), locked: true };
const pack: Part = { ...boxPart('pack', 100, [700, 0, 0]), role: 'energy' };
const camera: Part = { ...boxPart('camera', 60, [800, 60, 0]), role: 'payload' };
const AFT_MM = 532;

const tailHeavy = (more: readonly Part[] = [], structure: readonly StructurePiece[] = []): Aircraft => ({
  ...aircraftOf(structure, [engine, pack, camera, ...more]),
  targetBand: { by: 'station', forwardMm: 500, aftMm: AFT_MM },
  lateralToleranceMm: 0,
});

/** A hull that weighs nothing, so that the sums are those of the parts. */
const SHELL: StructurePiece = { ...HULL, mass: { by: 'weighed', massG: 0 } };

const METRIC: Spoken = { units: 'metric', fromMm: 0 };
const adviceOn = (aircraft: Aircraft, spoken = METRIC): Advice =>
  advise(aircraft, { down: LEVEL, estimate: null }, spoken);
function remedyOf(aircraft: Aircraft, spoken = METRIC): Remedy {
  const { remedy } = adviceOn(aircraft, spoken);
  if (!remedy) throw new Error('expected a remedy');
  return remedy;
}

const total = (parts: readonly Part[]) => {
  const massG = parts.reduce((sum, part) => sum + part.massG, 0);
  return { massG, cgMm: parts.reduce((sum, part) => sum + part.massG * part.positionMm[0], 0) / massG };
};

/** Moving a part by d moves the CG by d × its mass / total mass: how far it must go forward at least. */
function leastMove({ parts }: Aircraft, { massG }: Part): number {
  const whole = total(parts);
  return ((whole.cgMm - AFT_MM) * whole.massG) / massG;
}

/** By the least and what leaves a tenth of the band, 3.2 but at most 3 mm, to the aft limit; in whole millimetres. */
function expectMove(aircraft: Aircraft, part: Part): void {
  const { kind, edits, words } = remedyOf(aircraft);
  expect([kind, edits.length, edits[0]!.do]).toEqual(['move', 1, 'move']);
  const edit = edits[0]!;
  if (edit.do !== 'move') return;
  expect(edit.id).toBe(part.id);
  const byMm = -edit.byMm[0];
  const leastMm = leastMove(aircraft, part);
  const reserveMm = (3 * total(aircraft.parts).massG) / part.massG;
  expect(byMm).toBeGreaterThanOrEqual(leastMm - 1e-9);
  expect(byMm).toBeLessThanOrEqual(Math.ceil(leastMm + reserveMm + 1e-9));
  expect(Number.isInteger(byMm)).toBe(true);
  expect(words).toBe(`Move “${part.id}” ${byMm}\u202fmm forward`);
}

describe('a move that does it', () => {
  test('is that of the heavier part, which has the shorter way', () => {
    expectMove(tailHeavy(), pack);
  });

  test('is not of a part that is locked', () => {
    const aircraft = tailHeavy();
    const parts = [engine, { ...pack, locked: true }, camera];
    expectMove({ ...aircraft, parts }, camera);
  });

  test('goes past what stands in its way, to where it is free', () => {
    // The valve fills 540…640 of the pack's lane: its front end, at 650 − least, must leave that.
    const valve: Part = { ...boxPart('valve', 5, [590, 0, 0]), locked: true };
    const parts = [engine, pack, valve, { ...camera, locked: true }];
    const { edits } = remedyOf({ ...tailHeavy([], [SHELL]), parts });
    const edit = edits[0]!;
    // Between the engine's rear at 550 and the valve's rear at 640 there is no room; ahead of the engine it is 400.
    expect(edit).toMatchObject({ do: 'move', id: 'pack' });
    if (edit.do === 'move') expect(700 + edit.byMm[0]).toBeLessThanOrEqual(400);
  });

  test('is spoken in whole hundredths of an inch where a person reads inches', () => {
    const { edits, words } = remedyOf(tailHeavy(), { units: 'inch-ounce', fromMm: 0 });
    const inches = Number(/“pack” ([\d.]+)\u202fin forward/.exec(words)![1]);
    const edit = edits[0]!;
    expect(edit.do === 'move' && -edit.byMm[0]).toBeCloseTo(inches * 25.4, 9);
    expect(inches * 25.4).toBeGreaterThanOrEqual(leastMove(tailHeavy(), pack));
  });

  test('leaves no part sticking out of the skin', () => {
    // The hull's nose is at 0 and 60 mm wide: a heavy move of a light, wide part does not fit there.
    const wide: Part = {
      ...boxPart('wide', 60, [400, 0, 0]),
      shape: { kind: 'box', lengthMm: 80, widthMm: 110, heightMm: 60 },
    };
    const aircraft: Aircraft = {
      ...aircraftOf([HULL], [{ ...engine, positionMm: [600, 0, 0] }, wide]),
      targetBand: { by: 'station', forwardMm: 500, aftMm: 532 },
      lateralToleranceMm: 0,
    };
    const { remedy } = adviceOn(aircraft);
    expect(remedy?.kind).not.toBe('move');
  });
});

test('a pair moves together, each as far as the other', () => {
  const half = (id: string, buttlineMm: number): Part => ({
    ...boxPart(id, 100, [700, buttlineMm, 0]),
    role: 'energy',
  });
  const parts = [engine, half('left', -60), half('right', 60)];
  // CG (900·500 + 200·700)/1100 = 536.36; both forward by at least 4.36·1100/200 = 24 mm.
  const { kind, edits } = remedyOf({ ...tailHeavy(), parts });
  expect(kind).toBe('move-pair');
  const moves = edits.flatMap((edit) => (edit.do === 'move' ? [edit] : []));
  expect(moves.map(({ id }) => id)).toEqual(['left', 'right']);
  expect(moves[0]!.byMm).toEqual(moves[1]!.byMm);
  expect(-moves[0]!.byMm[0]).toBeGreaterThanOrEqual(24);
  expect(-moves[0]!.byMm[0]).toBeLessThanOrEqual(24 + (3 * 1100) / 200 + 1);
});

describe('ballast', () => {
  const lead = (massG: number, stationMm: number, locked = false): Part => ({
    ...boxPart('lead', massG, [stationMm, 0, 60]),
    role: 'ballast',
    locked,
  });
  const fixed = (part: Part): Part => ({ ...part, locked: true });

  test('that is too much in the nose is reduced, not outweighed at the tail', () => {
    const parts = [engine, fixed(pack), fixed(camera), lead(444, 40)];
    const { kind, edits } = remedyOf({ ...tailHeavy(), parts });
    expect(kind).toBe('reduce-ballast');
    const edit = edits[0]!;
    if (edit.do !== 'weigh') throw new Error(edit.do);
    // FAA Aviation Maintenance Technician Handbook – General, p. 4-23: W·(CG − limit)/(limit − station).
    const bare = total([engine, pack, camera]);
    const toReach = (limitMm: number) => (bare.massG * (bare.cgMm - limitMm)) / (limitMm - 40);
    expect(edit.massG).toBeGreaterThanOrEqual(toReach(AFT_MM));
    expect(edit.massG).toBeLessThanOrEqual(Math.ceil(toReach(AFT_MM - 3)));
  });

  test('that is not needed at all is taken out', () => {
    const parts = [engine, fixed({ ...pack, positionMm: [520, 0, 100] }), lead(200, 900)];
    expect(remedyOf({ ...tailHeavy(), parts })).toMatchObject({
      kind: 'reduce-ballast',
      edits: [{ do: 'remove', id: 'lead' }],
    });
  });

  test('in two pieces is taken out and reduced, before any is added at the other end', () => {
    const second: Part = { ...lead(300, 60), id: 'second', name: 'second', positionMm: [60, 50, 60] };
    const parts = [engine, fixed(pack), fixed(camera), lead(300, 40), second];
    const { kind, edits, words } = remedyOf({ ...tailHeavy([], [SHELL]), parts });
    expect([kind, edits.map((edit) => edit.do)]).toEqual(['reduce-ballast', ['remove', 'weigh']]);
    // The farther one goes: of 300 g at 60 so much stays as W·(CG − limit)/(limit − station) of what is left asks for.
    const bare = total([engine, pack, camera]);
    const toReach = (limitMm: number) => (bare.massG * (bare.cgMm - limitMm)) / (limitMm - 60);
    const edit = edits[1]!;
    if (edit.do !== 'weigh') throw new Error(edit.do);
    expect(edit).toMatchObject({ id: 'second' });
    expect(edit.massG).toBeGreaterThanOrEqual(toReach(AFT_MM));
    expect(edit.massG).toBeLessThanOrEqual(Math.ceil(toReach(AFT_MM - 3)));
    expect(words).toBe(`Take out “lead” and reduce “second” from 300\u202fg to ${edit.massG}\u202fg`);
  });

  test('at the wrong end is taken out before any is added at the other', () => {
    // Without the lead in the tail the CG is aft still, (500·900 + 800·300)/1200 = 575 mm, and in the nose it is too light.
    const heavy = fixed(boxPart('heavy', 300, [800, 0, 0]));
    const parts = [engine, heavy, lead(5, 820)];
    const aircraft: Aircraft = { ...tailHeavy(), parts, structure: [SHELL] };
    const { kind, edits, words } = remedyOf(aircraft);
    expect(kind).toBe('add-ballast');
    expect(edits.map((edit) => edit.do)).toEqual(['remove', 'add']);
    expect(words).toMatch(/^Take out “lead” and add /);
  });

  test('comes last, and as little as W·(CG − limit)/(limit − station) with the reserve', () => {
    const parts = [engine, fixed(pack), fixed(camera)];
    const { kind, edits } = remedyOf({ ...tailHeavy(), parts, structure: [SHELL] });
    expect(kind).toBe('add-ballast');
    const edit = edits[0]!;
    if (edit.do !== 'add') throw new Error(edit.do);
    const { massG, cgMm } = total(parts);
    const [stationMm] = edit.part.positionMm;
    const toReach = (limitMm: number) => (massG * (cgMm - limitMm)) / (limitMm - stationMm);
    expect(edit.part.massG).toBeGreaterThanOrEqual(toReach(AFT_MM));
    expect(edit.part.massG).toBeLessThanOrEqual(Math.ceil(toReach(AFT_MM - 3)));
  });
});

test('carrying out a remedy whose part is gone changes nothing', () => {
  const remedy = remedyOf(tailHeavy());
  const gone: Aircraft = { ...tailHeavy(), parts: [engine] };
  expect(applyRemedy(gone, remedy)).toEqual(gone);
});
