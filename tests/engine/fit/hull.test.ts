import { describe, expect, test } from 'vitest';
import { hullClearance, hullHolds, hullOf } from '../../../src/engine/fit/hull';
import { poseAtDatum } from '../../../src/engine/geometry/rotation';
import type { LoftSection, LoftShape, Shape } from '../../../src/engine/mass/shapes';
import { boxShape, placed } from './randomSolids';

const section = (xMm: number, size: number, roundness: number): LoftSection => ({
  xMm,
  widthMm: size,
  heightMm: size,
  centreYMm: 0,
  centreZMm: 0,
  roundness,
});
const hull = (sections: readonly LoftSection[], skinMm: number, open = { front: false, rear: false }) =>
  hullOf({ shape: { kind: 'loft', sections } as LoftShape, pose: poseAtDatum, skinMm, open });

const ball = (diameterMm: number): Shape => ({ kind: 'sphere', diameterMm });

describe('a square tube of 100 with walls of 2', () => {
  const square = hull([section(0, 100, 0), section(400, 100, 0)], 2);

  test('a box in it: the nearest wall, less the skin', () => {
    const { distanceMm, pointsMm } = hullClearance(placed(boxShape(80, 40, 30), [200, 10, -20]), square);
    expect(distanceMm).toBeCloseTo(50 - 2 - 15 - 20, 9);
    expect(pointsMm[0][2]).toBeCloseTo(-35, 9);
    expect(pointsMm[1][2]).toBeCloseTo(-48, 9);
  });

  test('a box that pokes through the wall: by how much, and one that only bites into the skin', () => {
    const through = hullClearance(placed(boxShape(80, 40, 30), [200, 36, 0]), square);
    expect(through.distanceMm).toBeCloseTo(50 - 2 - 20 - 36, 9);
    const bite = hullClearance(placed(boxShape(80, 40, 30), [200, 29, 0]), square);
    expect(bite.distanceMm).toBeCloseTo(-1, 9);
  });

  test('a box stood on its edge pokes through by its corner', () => {
    const { distanceMm } = hullClearance(placed(boxShape(80, 40, 40), [200, 0, -30], 0, 0, 45), square);
    expect(distanceMm).toBeCloseTo(50 - 2 - 30 - 20 * Math.SQRT2, 6);
  });

  test('the end wall counts, unless the end is open', () => {
    const nearEnd = placed(boxShape(20, 20, 20), [385, 0, 0]);
    expect(hullClearance(nearEnd, square).distanceMm).toBeCloseTo(15 - 10 - 2, 9);
    const pipe = hull([section(0, 100, 0), section(400, 100, 0)], 2, { front: false, rear: true });
    const past = placed(boxShape(60, 20, 30), [395, 0, 0]);
    expect(hullClearance(past, pipe).distanceMm).toBeCloseTo(50 - 2 - 15, 6);
    expect(hullClearance(past, square).distanceMm).toBeCloseTo(-25 - 2, 6);
  });
});

describe('a round hull of 200', () => {
  const round = hull([section(0, 200, 1), section(500, 200, 1)], 1.5);

  test('a ball off the middle: radius less its own, less how far it is off', () => {
    const { distanceMm } = hullClearance(placed(ball(40), [250, 30, 40]), round);
    // Never more than the truth, and within the facets' 0.03 mm.
    expect(distanceMm).toBeLessThan(100 - 1.5 - 20 - 50 + 1e-6);
    expect(distanceMm).toBeGreaterThan(100 - 1.5 - 20 - 50 - 0.031);
  });

  test('a box with its corners near the wall: the corner’s distance from the axis', () => {
    const { distanceMm } = hullClearance(placed(boxShape(100, 120, 90), [250, 0, 0]), round);
    expect(distanceMm).toBeCloseTo(100 - 1.5 - Math.hypot(60, 45), 1);
    const out = hullClearance(placed(boxShape(100, 160, 150), [250, 0, 0]), round);
    expect(out.distanceMm).toBeCloseTo(100 - 1.5 - Math.hypot(80, 75), 1);
  });

  test('a ball that pokes through: its radius and how far it is off, less the hull’s', () => {
    expect(hullClearance(placed(ball(60), [250, 0, 85]), round).distanceMm).toBeCloseTo(
      100 - 1.5 - 85 - 30,
      1,
    );
  });
});

test('a cone: the distance is square to its wall', () => {
  const cone = hull([section(0, 20, 1), section(300, 220, 1)], 0);
  // Wall r = 10 + x/3: from a point on the axis at x the distance is r·cos(slope).
  const slope = Math.atan(1 / 3);
  const { distanceMm } = hullClearance(placed(ball(10), [150, 0, 0]), cone);
  expect(distanceMm).toBeCloseTo(60 * Math.cos(slope) - 5, 1);
});

test('a point is in the hull or not, by its rounded section', () => {
  const rounded = hull([section(0, 100, 0.5), section(100, 200, 0.5)], 1);
  expect(hullHolds(rounded, [50, 74.9, 0])).toBe(true);
  expect(hullHolds(rounded, [50, 75.1, 0])).toBe(false);
  // At x = 50 the half size is 75 and the corner's radius 37.5, about (37.5, 37.5).
  const corner = 37.5 * (1 + Math.SQRT1_2);
  expect(hullHolds(rounded, [50, corner - 0.01, corner - 0.01])).toBe(true);
  expect(hullHolds(rounded, [50, corner + 0.01, corner + 0.01])).toBe(false);
  expect(hullHolds(rounded, [-1, 0, 0])).toBe(false);
  expect(hullHolds(rounded, [101, 0, 0])).toBe(false);
});

test('round hulls of any size up to 800 mm across: never more room than there is, nor by the facets more than 0.03 mm less', () => {
  for (const size of [24, 50, 61, 88, 130, 260, 333, 520, 799]) {
    const round = hull([section(0, size, 1), section(2000, size, 1)], 1);
    // All round, so that flats and corners of the facets are met.
    for (let deg = 0; deg < 90; deg += 3.7) {
      const offMm = size / 4;
      const [y, z] = [offMm * Math.cos((deg * Math.PI) / 180), offMm * Math.sin((deg * Math.PI) / 180)];
      const { distanceMm } = hullClearance(placed(ball(6), [1000, y, z]), round);
      const truth = size / 2 - 1 - 3 - offMm;
      expect(distanceMm).toBeLessThan(truth + 1e-9);
      expect(distanceMm).toBeGreaterThan(truth - 0.0301);
    }
  }
});
