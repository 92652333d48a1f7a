import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import {
  addPart,
  duplicatePart,
  mirrorPart,
  movedStructure,
  placeItem,
  removeItem,
  replaceStructure,
} from '../../../src/model/document/edit';
import { freeId } from '../../../src/model/document/ids';
import type { Aircraft, Part } from '../../../src/model/document/types';
import { aircraftFaults } from '../../../src/model/reading/faults';

const demo = (name: string): Aircraft =>
  JSON.parse(readFileSync(new URL(`../../../demo-data/${name}.json`, import.meta.url), 'utf8'));
const sandmartin = demo('sandmartin');
const cg = (aircraft: Aircraft) => balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });

const wedge: Omit<Part, 'id'> = {
  name: 'Wedge',
  role: 'other',
  shape: {
    kind: 'prism',
    lengthMm: 40,
    outlineMm: [
      [0, 0],
      [60, 0],
      [0, 30],
    ],
  },
  massG: 300,
  positionMm: [500, 70, 10],
  yawDeg: 20,
  pitchDeg: -10,
  rollDeg: 35,
};

describe('edits', () => {
  test('share what they do not touch', () => {
    const moved = placeItem(sandmartin, sandmartin.parts[0]!.id, [1, 2, 3]);
    expect(moved.structure).toBe(sandmartin.structure);
    expect(moved.tanks).toBe(sandmartin.tanks);
    expect(moved.parts[1]).toBe(sandmartin.parts[1]);
    expect(removeItem(sandmartin, 'no-such-thing')).toEqual(sandmartin);
  });

  test('a mirrored part carries its mass properties to the other side, whatever its shape', () => {
    const one = addPart({ ...sandmartin, structure: [], tanks: [], parts: [] }, wedge);
    const both = mirrorPart(one.aircraft, one.id)!;
    const alone = cg(one.aircraft);
    const pair = cg(both.aircraft);
    expect(pair.massG).toBe(600);
    // Mirror images: the pair's CG is on the centre line, at the single one's station and waterline.
    expect(pair.cgMm![1]).toBeCloseTo(0, 9);
    expect(pair.cgMm![0]).toBeCloseTo(alone.cgMm![0], 9);
    expect(pair.cgMm![2]).toBeCloseTo(alone.cgMm![2], 9);
    expect(Math.abs(pair.inertiaAboutCgGmm2.xy)).toBeLessThan(1e-6 * pair.inertiaAboutCgGmm2.xx);
    expect(Math.abs(pair.inertiaAboutCgGmm2.yz)).toBeLessThan(1e-6 * pair.inertiaAboutCgGmm2.xx);
  });

  test('a part on the plane of symmetry has no mirror copy', () => {
    const one = addPart(sandmartin, { ...wedge, positionMm: [500, 0, 0] });
    expect(mirrorPart(one.aircraft, one.id)).toBeNull();
  });

  test('a duplicate has an id of its own and is not locked', () => {
    const copy = duplicatePart(sandmartin, sandmartin.parts[0]!.id, [10, 0, 0])!;
    expect(copy.id).not.toBe(sandmartin.parts[0]!.id);
    expect(copy.aircraft.parts.at(-1)).toMatchObject({ id: copy.id, locked: false });
    expect(aircraftFaults(copy.aircraft)).toEqual([]);
    expect(freeId(sandmartin, 'Größe 3!')).toMatch(/^[a-z0-9][a-z0-9-]*$/);
  });

  test('moving every piece of structure moves the bare CG by as much', () => {
    const bare: Aircraft = { ...sandmartin, parts: [], tanks: [], fuel: null, bareAirframe: null };
    const moved = bare.structure.reduce(
      (all, piece) => replaceStructure(all, movedStructure(piece, [25, 0, -8])),
      bare,
    );
    const [before, after] = [cg(bare).cgMm!, cg(moved).cgMm!];
    expect(after[0] - before[0]).toBeCloseTo(25, 6);
    expect(after[1] - before[1]).toBeCloseTo(0, 6);
    expect(after[2] - before[2]).toBeCloseTo(-8, 6);
  });

  test('taking anything out of a demo aircraft leaves a document that reads', () => {
    for (const name of ['sandmartin', 'fieldfare', 'whimbrel', 'corncrake']) {
      const aircraft = demo(name);
      for (const { id } of [...aircraft.parts, ...aircraft.structure]) {
        expect(aircraftFaults(removeItem(aircraft, id)), `${name} without ${id}`).toEqual([]);
      }
    }
  });
});
