import { describe, expect, test } from 'vitest';
import type { HullShape } from '../../../src/engine/fit/hull';
import { wallPath } from '../../../src/engine/fit/wallPath';
import { pointToAircraft, poseAtDatum } from '../../../src/engine/geometry/rotation';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import type { LoftSection } from '../../../src/engine/mass/shapes';
import { randomFrom } from '../../randomFrom';

const section = (xMm: number, widthMm: number, heightMm: number, roundness: number): LoftSection => ({
  xMm,
  widthMm,
  heightMm,
  centreYMm: 0,
  centreZMm: 0,
  roundness,
});
const tube = (skinMm: number, sections: readonly LoftSection[], pose: Pose = poseAtDatum): HullShape => ({
  shape: { kind: 'loft', sections },
  pose,
  skinMm,
  open: { front: false, rear: false },
});
const round = tube(2, [section(0, 100, 100, 1), section(400, 100, 100, 1)]);
const inner = 48;

const way = (hull: HullShape, from: Vec3, to: Vec3): readonly Vec3[] => {
  const found = wallPath(hull, from, to);
  if (!found) throw new Error('expected a way');
  expect(found[0]).toEqual(from);
  expect(found.at(-1)).toEqual(to);
  return found.slice(1, -1);
};
const degOf = ([, y, z]: Vec3) => (Math.atan2(z, y) * 180) / Math.PI;

describe('along the wall of a round tube', () => {
  test('each end goes square out to the wall, and between them the way is a helix', () => {
    const points = way(round, [100, 0, 30], [300, 20, 0]);
    expect(points[0]).toEqual([100, expect.closeTo(0, 9), expect.closeTo(inner, 9)]);
    expect(points.at(-1)).toEqual([300, expect.closeTo(inner, 9), expect.closeTo(0, 9)]);
    for (const point of points) {
      expect(Math.hypot(point[1], point[2])).toBeCloseTo(inner, 9);
      expect(degOf(point)).toBeCloseTo(90 - (90 * (point[0] - 100)) / 200, 9);
    }
    // No stretch longer than 20 mm along, nor wider than 5° round: here 90° in steps of 5.
    expect(points).toHaveLength(19);
  });

  test('the shorter way round, across the left side too', () => {
    const at = (deg: number, x: number): Vec3 => [
      x,
      30 * Math.cos((deg * Math.PI) / 180),
      30 * Math.sin((deg * Math.PI) / 180),
    ];
    for (const point of way(round, at(170, 100), at(-160, 160))) {
      const turned = (degOf(point) + 360) % 360;
      expect(turned).toBeCloseTo(170 + (30 * (point[0] - 100)) / 60, 9);
    }
    for (const point of way(round, at(-20, 160), at(20, 100)))
      expect(degOf(point)).toBeCloseTo(-20 + (40 * (160 - point[0])) / 60, 9);
  });

  test('straight along in steps of 20 mm, and round at one station in steps of 5°', () => {
    expect(way(round, [100, 0, -30], [200, 0, -40]).map(([x]) => x)).toEqual([100, 120, 140, 160, 180, 200]);
    const ring = way(round, [100, 30, 0], [100, 0, 30]);
    expect(ring.map(([x]) => x)).toEqual(Array.from({ length: 19 }, () => 100));
    ring.forEach((point, k) => {
      expect(degOf(point)).toBeCloseTo(5 * k, 9);
    });
  });

  test('a hull that stands turned takes its way along', () => {
    const pose: Pose = { positionMm: [500, -20, 60], yawDeg: 12, pitchDeg: -7, rollDeg: 33 };
    const [from, to]: [Vec3, Vec3] = [
      [100, 0, 30],
      [300, 20, 0],
    ];
    const straight = way(round, from, to);
    const turned = way({ ...round, pose }, pointToAircraft(pose, from), pointToAircraft(pose, to));
    turned.forEach((point, k) => {
      const expected = pointToAircraft(pose, straight[k]!);
      expect(Math.hypot(...point.map((at, axis) => at - expected[axis]!))).toBeLessThan(1e-6);
    });
  });
});

test('a cone’s way has a point at each section it passes, on the wall there', () => {
  const cone = tube(1, [section(0, 50, 50, 1), section(130, 90, 90, 1), section(400, 60, 60, 1)]);
  const points = way(cone, [60, 0, 10], [200, 0, 10]);
  expect(points.filter(([x]) => x === 130)).toHaveLength(1);
  for (const [x, y, z] of points) {
    const radius = x <= 130 ? 25 + (20 * x) / 130 : 45 - (15 * (x - 130)) / 270;
    expect(y).toBeCloseTo(0, 9);
    expect(z).toBeCloseTo(radius - 1, 9);
  }
});

describe('in a section with rounded corners', () => {
  // Width 140, height 90, skin 3: the inner face is 67 by 42 from the middle, its corners quarter ellipses.
  const [a, b] = [67, 42];
  const [ra, rb] = [0.6 * 70 - 3, 0.6 * 45 - 3];
  const oblong = tube(3, [section(0, 140, 90, 0.6), section(400, 140, 90, 0.6)]);
  const outline = Array.from({ length: 4000 }, (_, k): [number, number] => {
    const t = (Math.PI * k) / 2000;
    const corner: [number, number] = [ra * Math.cos(t), rb * Math.sin(t)];
    return [corner[0] + Math.sign(Math.cos(t)) * (a - ra), corner[1] + Math.sign(Math.sin(t)) * (b - rb)];
  });
  const sides = Array.from({ length: 2001 }, (_, k) => k / 1000 - 1).flatMap((s): [number, number][] => [
    [s * (a - ra), b],
    [s * (a - ra), -b],
    [a, s * (b - rb)],
    [-a, s * (b - rb)],
  ]);
  const face = [...outline, ...sides];

  test('every point is on the inner face, and each foot is the nearest of all of it, by trying all', () => {
    const random = randomFrom(71);
    for (let trial = 0; trial < 25; trial += 1) {
      const end = (x: number): Vec3 => [x, 120 * (random() - 0.5), 76 * (random() - 0.5)];
      const [from, to] = [end(50), end(150)];
      const points = way(oblong, from, to);
      for (const [, y, z] of points) {
        const [u, v] = [Math.abs(y) - (a - ra), Math.abs(z) - (b - rb)];
        if (u > 0 && v > 0) expect((u / ra) ** 2 + (v / rb) ** 2).toBeCloseTo(1, 9);
        else expect(Math.max(Math.abs(y) - a, Math.abs(z) - b)).toBeCloseTo(0, 9);
      }
      for (const [end, foot] of [
        [from, points[0]!],
        [to, points.at(-1)!],
      ] as const) {
        const nearest = Math.min(...face.map(([y, z]) => Math.hypot(y - end[1], z - end[2])));
        const far = Math.hypot(foot[1] - end[1], foot[2] - end[2]);
        // What was tried stands 0.06 mm apart.
        expect(far).toBeLessThan(nearest + 1e-6);
        expect(far).toBeGreaterThan(nearest - 0.05);
        expect(foot[0]).toBe(end[0]);
      }
    }
  });

  test('a square one keeps to its flats', () => {
    const square = tube(2, [section(0, 100, 100, 0), section(400, 100, 100, 0)]);
    for (const [, y, z] of way(square, [50, 0, 30], [150, 30, 0]))
      expect(Math.max(Math.abs(y), Math.abs(z))).toBeCloseTo(48, 9);
  });
});

test('no way from beyond the ends, nor where the wall leaves no room', () => {
  expect(wallPath(round, [-1, 0, 0], [100, 0, 0])).toBeNull();
  expect(wallPath(round, [100, 0, 0], [401, 0, 0])).toBeNull();
  expect(wallPath(round, [0, 0, 30], [400, 0, 30])).not.toBeNull();
  const waist = [section(0, 100, 100, 1), section(200, 4, 60, 1), section(400, 100, 100, 1)];
  expect(wallPath(tube(2, waist), [100, 0, 20], [300, 0, 20])).toBeNull();
  expect(wallPath(tube(1.9, waist), [100, 0, 20], [300, 0, 20])).not.toBeNull();
  expect(wallPath(tube(50, [section(0, 100, 100, 1)]), [0, 0, 0], [0, 0, 0])).toBeNull();
});
