import { describe, expect, test } from 'vitest';
import { pocketIn } from '../../../src/engine/fit/pocket';
import { polygonArea } from '../../../src/engine/geometry/polygon';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import type { Shape } from '../../../src/engine/mass/shapes';
import { boxShape, saddle } from './randomSolids';

const at = (positionMm: Vec3, yawDeg = 0, pitchDeg = 0, rollDeg = 0): Pose => ({
  positionMm,
  yawDeg,
  pitchDeg,
  rollDeg,
});
const foam = { shape: boxShape(200, 100, 50), pose: at([0, 0, 0]) };

describe('a box let into a foam block from above', () => {
  const pocket = pocketIn(foam, { shape: boxShape(80, 40, 30), pose: at([20, 10, 20]) })!;

  test('volume, depth, outline and centroid', () => {
    // Its bottom at z = 5, the block's top at 25: 20 deep.
    expect(pocket.volumeMm3).toBeCloseTo(80 * 40 * 20, 6);
    expect(pocket.depthMm).toBeCloseTo(20, 9);
    expect(pocket.openToFace).toBe(true);
    expect(pocket.through).toBe(false);
    expect(pocket.faceNormal[2]).toBeCloseTo(1, 12);
    expect(pocket.outlineMm).toHaveLength(4);
    expect(polygonArea(pocket.outlineMm)).toBeCloseTo(80 * 40, 6);
    expect(pocket.removed.cgMm?.[0]).toBeCloseTo(20, 9);
    expect(pocket.removed.cgMm?.[2]).toBeCloseTo(15, 9);
    for (const corner of pocket.outlineInPlaceMm) expect(corner[2]).toBeCloseTo(25, 9);
  });

  test('the wall left is the least of the sides and the floor', () => {
    // Side at y = 30 against 50: 20; the floor 30; the end at x = 60 against 100: 40.
    expect(pocket.wallLeftMm).toBeCloseTo(20, 9);
  });
});

test('a block that stands turned gives the same pocket, turned with it', () => {
  const pose = at([300, 40, -20], 30, 20, 50);
  const turnedPart = pocketIn({ ...foam, pose }, { shape: boxShape(80, 40, 50), pose })!;
  expect(turnedPart.volumeMm3).toBeCloseTo(80 * 40 * 50, 6);
  expect(turnedPart.through).toBe(true);
  expect(turnedPart.wallLeftMm).toBeCloseTo(30, 6);
  expect(turnedPart.removed.cgMm?.[0]).toBeCloseTo(300, 6);
});

test('a drum lying half in: the half of its cylinder, by formula', () => {
  const drum: Shape = { kind: 'cylinder', lengthMm: 90, diameterMm: 30 };
  const pocket = pocketIn(foam, { shape: drum, pose: at([0, 0, 25]) })!;
  expect(pocket.volumeMm3 / ((Math.PI * 15 ** 2 * 90) / 2)).toBeCloseTo(1, 2);
  expect(pocket.depthMm).toBeCloseTo(15, 9);
  // Half a disc's centroid is 4r/3π below its flat side.
  expect(25 - pocket.removed.cgMm![2]).toBeCloseTo((4 * 15) / (3 * Math.PI), 2);
});

test('a saddle in a block takes out its own section only', () => {
  const area = 80 * 55 - (60 * 30 + ((60 + 40) / 2) * 12);
  const pocket = pocketIn(
    { shape: boxShape(200, 100, 90), pose: at([0, 0, 0]) },
    { shape: saddle, pose: at([0, 0, 0]) },
  )!;
  expect(pocket.volumeMm3).toBeCloseTo(area * 60, 4);
  expect(pocket.openToFace).toBe(false);
});

test('a part that touches the block or lies beside it needs no pocket', () => {
  expect(pocketIn(foam, { shape: boxShape(80, 40, 30), pose: at([0, 0, 40]) })).toBeNull();
  expect(pocketIn(foam, { shape: boxShape(80, 40, 30), pose: at([0, 80, 0]) })).toBeNull();
});
