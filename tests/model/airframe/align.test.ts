import { describe, expect, test } from 'vitest';
import {
  alignCentred,
  alignFaces,
  distribute,
  faceStation,
  placeFace,
} from '../../../src/model/airframe/align';
import { itemById, mirrorPart } from '../../../src/model/document/edit';
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

const done = (answer: Aircraft | string): Aircraft => {
  if (typeof answer === 'string') throw new Error(answer);
  return answer;
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
    const centred = done(alignCentred(bench, ['a', 'b', 'c']));
    expect(['a', 'b', 'c'].map((id) => at(centred, id)?.[1])).toEqual([0, 0, 0]);
    expect(['a', 'b', 'c'].map((id) => at(centred, id)?.[0])).toEqual([100, 300, 700]);
  });

  test('what is locked stays', () => {
    const locked = { ...bench, parts: bench.parts.map((part) => ({ ...part, locked: part.id === 'a' })) };
    expect(
      alignFaces(locked, ['a', 'b', 'c'], 'c', 'middle').parts.map(({ positionMm }) => positionMm[0]),
    ).toEqual([100, 700, 700]);
    expect(at(done(alignCentred(locked, ['a'])), 'a')?.[1]).toBe(5);
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

describe('a mirrored pair among what is lined up', () => {
  const twins = mirrorPart(bench, 'b');
  if (!twins) throw new Error('b stands off centre');
  const { aircraft, id: twin } = twins;

  test('is one of what is spaced: the ends stay, and the gaps are the same', () => {
    const pairAtEnd = ['b', twin, 'a', 'c'];
    const spaced = done(distribute(placeFace(aircraft, 'b', 'middle', 20), pairAtEnd));
    // From the pair's rear at 40 to the front of c at 670, less the 100 of a, in two gaps.
    expect([at(spaced, 'b')?.[0], at(spaced, twin)?.[0], at(spaced, 'c')?.[0]]).toEqual([20, 20, 700]);
    expect(faceStation(item(spaced, 'a'), 'front')).toBeCloseTo(40 + (670 - 40 - 100) / 2, 9);
    const between = done(distribute(aircraft, ['a', 'b', twin, 'c']));
    expect(faceStation(item(between, twin), 'front')).toBeCloseTo(150 + (670 - 150 - 40) / 2, 9);
    expect(distribute(aircraft, ['a', 'b', twin])).toMatch(/a mirrored pair counts as one/);
  });

  test('is not put on the centre line, where both would stand in one place', () => {
    expect(alignCentred(aircraft, ['a', 'b'])).toMatch(/“b” is one of a mirrored pair/);
  });
});
