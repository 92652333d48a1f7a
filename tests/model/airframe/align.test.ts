import { describe, expect, test } from 'vitest';
import {
  alignCentred,
  alignFaces,
  distribute,
  faceStation,
  placeFace,
} from '../../../src/model/airframe/align';
import { itemById } from '../../../src/model/document/edit';
import type { Aircraft, Part } from '../../../src/model/document/types';
import { aircraftOf, boxPart } from '../aircraft';

const long = (id: string, lengthMm: number, at: readonly [number, number, number]): Part => ({
  ...boxPart(id, 10, at),
  shape: { kind: 'box', lengthMm, widthMm: 40, heightMm: 20 },
});

const bench = aircraftOf(
  [],
  [long('a', 100, [100, 5, 0]), long('b', 40, [300, -70, 3]), long('c', 60, [700, 30, 0])],
);
const at = (aircraft: Aircraft, id: string) => itemById(aircraft, id)?.positionMm;
const item = (aircraft: Aircraft, id: string) => {
  const found = itemById(aircraft, id);
  if (!found) throw new Error(id);
  return found;
};

describe('a face of a box, by hand: its middle less or more half its length', () => {
  test.each([
    ['front', 50],
    ['middle', 100],
    ['rear', 150],
  ] as const)('%s', (face, stationMm) => {
    expect(faceStation(item(bench, 'a'), face)).toBeCloseTo(stationMm, 9);
    const moved = placeFace(bench, 'a', face, 410);
    expect(faceStation(item(moved, 'a'), face)).toBeCloseTo(410, 9);
    // Only along x.
    expect(at(moved, 'a')?.slice(1)).toEqual([5, 0]);
  });

  test('turned by a quarter its width lies along the stations', () => {
    const turned = aircraftOf([], [{ ...long('a', 100, [100, 0, 0]), yawDeg: 90 }]);
    expect(faceStation(item(turned, 'a'), 'front')).toBeCloseTo(80, 6);
  });
});

describe('aligning', () => {
  test('fronts and rears go to those of the last chosen, which stays', () => {
    const fronts = alignFaces(bench, ['a', 'b', 'c'], 'b', 'front');
    expect([at(fronts, 'a')?.[0], at(fronts, 'b')?.[0], at(fronts, 'c')?.[0]]).toEqual([330, 300, 310]);
    const rears = alignFaces(bench, ['a', 'c'], 'c', 'rear');
    expect([at(rears, 'a')?.[0], at(rears, 'b')?.[0]]).toEqual([680, 300]);
  });

  test('on the centre line no buttline is left, and no station changes', () => {
    const centred = alignCentred(bench, ['a', 'b', 'c']);
    expect(['a', 'b', 'c'].map((id) => at(centred, id)?.[1])).toEqual([0, 0, 0]);
    expect(['a', 'b', 'c'].map((id) => at(centred, id)?.[0])).toEqual([100, 300, 700]);
  });

  test('what is locked stays', () => {
    const locked = { ...bench, parts: bench.parts.map((part) => ({ ...part, locked: part.id === 'a' })) };
    expect(
      alignFaces(locked, ['a', 'b', 'c'], 'c', 'middle').parts.map(({ positionMm }) => positionMm[0]),
    ).toEqual([100, 700, 700]);
    expect(at(alignCentred(locked, ['a']), 'a')?.[1]).toBe(5);
  });
});

describe('spacing evenly', () => {
  test('makes all gaps the same; the ends stay', () => {
    const spaced = distribute(bench, ['c', 'a', 'b']);
    if (typeof spaced === 'string') throw new Error(spaced);
    // Free between the ends: 670 − 150 − 40 = 480, so 240 on either side of the middle one.
    expect(at(spaced, 'b')?.[0]).toBeCloseTo(150 + 240 + 20, 9);
    expect([at(spaced, 'a'), at(spaced, 'c')]).toEqual([at(bench, 'a'), at(bench, 'c')]);
  });

  test('says why not with two, and with one locked between', () => {
    expect(distribute(bench, ['a', 'b'])).toMatch(/three or more/);
    const locked = { ...bench, parts: bench.parts.map((part) => ({ ...part, locked: part.id === 'b' })) };
    expect(distribute(locked, ['a', 'b', 'c'])).toMatch(/“b” is locked/);
  });
});
