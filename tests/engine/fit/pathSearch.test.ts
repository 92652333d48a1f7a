import { describe, expect, test } from 'vitest';
import { findPath, type PathQuery, poseTravelMm } from '../../../src/engine/fit/pathSearch';
import { shapesClash } from '../../../src/engine/fit/shapeDistance';
import { solidOf } from '../../../src/engine/fit/solid';
import { poseAtDatum } from '../../../src/engine/geometry/rotation';
import type { Pose } from '../../../src/engine/geometry/types';
import { boxShape, placed } from './randomSolids';

const at = (x: number, y: number, z: number): Pose => ({ ...poseAtDatum, positionMm: [x, y, z] });

/** A wall across y = 0 with a slot of 24 × 70 standing upright, in front of it a plate lying flat. */
const wall = [
  placed(boxShape(400, 10, 400), [0, 0, 235]),
  placed(boxShape(400, 10, 400), [0, 0, -235]),
  placed(boxShape(188, 10, 70), [106, 0, 0]),
  placed(boxShape(188, 10, 70), [-106, 0, 0]),
];
const plate = boxShape(60, 20, 16);

const query = (over: Partial<PathQuery>): PathQuery => ({
  from: at(0, 80, 0),
  to: at(0, -80, 0),
  clear: (pose) => !wall.some((part) => shapesClash(solidOf({ shape: plate, pose }), part)),
  reachMm: Math.hypot(30, 10, 8),
  minMm: [-100, -120, -100],
  maxMm: [100, 120, 100],
  tiltDeg: 100,
  stepMm: 2,
  budget: 40_000,
  seed: 7,
  ...over,
});

describe('a plate 60 wide through a slot 24 wide and 70 high', () => {
  const { poses, tried } = findPath(query({}));

  test('a path is found, and it turns the plate', () => {
    expect(poses).not.toBeNull();
    expect(tried).toBeGreaterThan(1);
    expect(Math.max(...poses!.map(({ pitchDeg }) => Math.abs(pitchDeg)))).toBeGreaterThan(45);
  });

  test('it runs from end to end in small steps, clear at each and between them', () => {
    const { clear, reachMm, from, to } = query({});
    expect(poses![0]).toEqual(from);
    expect(poses!.at(-1)).toEqual(to);
    for (const [i, pose] of poses!.entries()) {
      expect(clear(pose)).toBe(true);
      if (i > 0) expect(poseTravelMm(poses![i - 1]!, pose, reachMm)).toBeLessThan(2 + 1e-9);
    }
  });

  test('the same seed gives the same path', () => {
    expect(findPath(query({})).poses).toEqual(poses);
  });
});

test('through a slot that is too narrow no path is found, and the budget is kept', () => {
  const thick = boxShape(60, 30, 30);
  const { poses, tried } = findPath(
    query({
      clear: (pose) => !wall.some((part) => shapesClash(solidOf({ shape: thick, pose }), part)),
      minMm: [-60, -100, -60],
      maxMm: [60, 100, 60],
      budget: 1500,
    }),
  );
  expect(poses).toBeNull();
  expect(tried).toBeLessThan(1500 + 120);
});

test('where the last pose itself is not clear the search ends at once', () => {
  const { poses, tried } = findPath(query({ to: at(106, 0, 0) }));
  expect(poses).toBeNull();
  expect(tried).toBe(1);
});
