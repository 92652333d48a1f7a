import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shapeDistance, shapeOverlap, shapesClash } from '../../../src/engine/fit/shapeDistance';
import { movedSolid, type Solid, solidOf } from '../../../src/engine/fit/solid';
import { pointToAircraft } from '../../../src/engine/geometry/rotation';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { add, cross, distance, dot, length, normalise, scale, sub } from '../../../src/engine/geometry/vec3';
import type { Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { between } from '../../between';
import { foundFirst } from '../../foundCases';
import { clearingFound } from './clearingFound';
import { anyShapes, boxShape, convexShapes, directions, placed, points, poses, saddle } from './randomSolids';

const ball = (diameterMm: number): Shape => ({ kind: 'sphere', diameterMm });
const rod = (lengthMm: number, diameterMm: number): Shape => ({ kind: 'cylinder', lengthMm, diameterMm });

describe('distances by formula', () => {
  test('two boxes square to the axes: the gaps along the axes, by Pythagoras', () => {
    const a = placed(boxShape(10, 20, 30), [0, 0, 0]);
    for (const [at, expected] of [
      [[18, 0, 0], 5],
      [[18, 30, 0], Math.hypot(5, 10)],
      [[18, 30, 45], Math.hypot(5, 10, 15)],
      [[13, 0, 0], 0],
    ] as const) {
      expect(shapeDistance(a, placed(boxShape(16, 20, 30), at)).distanceMm).toBeCloseTo(expected, 9);
    }
  });

  test('a box stood on its edge above another: half its diagonal nearer', () => {
    const tilted = placed(boxShape(20, 20, 20), [0, 0, 50], 0, 0, 45);
    const { distanceMm } = shapeDistance(tilted, placed(boxShape(40, 40, 10), [0, 0, 0]));
    expect(distanceMm).toBeCloseTo(45 - 10 * Math.SQRT2, 9);
  });

  test('two balls, anyhow: distance of the centres less the radii; on overlap its negative', () => {
    fc.assert(
      fc.property(points, points, between(1, 60), (p, q, d) => {
        const apart = distance(p, q) - (d + 20) / 2;
        const [a, b] = [placed(ball(d), p), placed(ball(20), q)];
        if (apart > 1e-3) {
          const { distanceMm, pointsMm } = shapeDistance(a, b);
          expect(distanceMm).toBeCloseTo(apart, 9);
          expect(distance(pointsMm[0], p)).toBeCloseTo(d / 2, 9);
          expect(distance(...pointsMm)).toBeCloseTo(apart, 9);
        } else if (apart < -1e-3 && distance(p, q) > 1e-3) {
          expect(shapeOverlap(a, b)?.depthMm).toBeCloseTo(-apart, 7);
        }
      }),
    );
  });

  test('two cylinders: side by side, end to end, crossed, and rim to rim', () => {
    const a = placed(rod(40, 20), [0, 0, 0]);
    const apart = (b: Solid) => shapeDistance(a, b).distanceMm;
    expect(apart(placed(rod(40, 10), [5, 30, 40]))).toBeCloseTo(50 - 15, 6);
    expect(apart(placed(rod(10, 30), [45, 3, 4]))).toBeCloseTo(20, 9);
    expect(apart(placed(rod(200, 10), [3, 0, 32], 90))).toBeCloseTo(32 - 15, 6);
    // Ends 10 mm apart, axes 50 mm: the rims face each other across (10, 50 − 20).
    expect(apart(placed(rod(40, 20), [50, 50, 0]))).toBeCloseTo(Math.hypot(10, 30), 6);
  });

  test('a cone against a plane above its flank: height over the slant', () => {
    const cone: Shape = { kind: 'frustum', lengthMm: 60, frontDiameterMm: 0, rearDiameterMm: 80 };
    // The flank z = 40·(x + 30)/60 in the plane y = 0; a ball's centre 70 above the axis at x = 0.
    const slant = Math.hypot(60, 40);
    const { distanceMm } = shapeDistance(placed(cone, [0, 0, 0]), placed(ball(10), [0, 0, 70]));
    expect(distanceMm).toBeCloseTo(((70 - 20) * 60) / slant - 5, 6);
  });

  test('a ball off the end of an ellipsoid’s axes, and an ellipsoid against a flat face', () => {
    const egg: Shape = { kind: 'ellipsoid', lengthMm: 60, widthMm: 40, heightMm: 20 };
    expect(shapeDistance(placed(egg, [0, 0, 0]), placed(ball(10), [0, 0, 30])).distanceMm).toBeCloseTo(15, 6);
    // Pitched by t it reaches √(a² sin² t + c² cos² t) up.
    const t = (35 * Math.PI) / 180;
    const up = Math.hypot(30 * Math.sin(t), 10 * Math.cos(t));
    const lid = placed(boxShape(300, 300, 10), [0, 0, 60]);
    expect(shapeDistance(placed(egg, [0, 0, 0], 0, 35), lid).distanceMm).toBeCloseTo(55 - up, 6);
  });

  test('a capsule against a box edge', () => {
    const pill: Shape = { kind: 'capsule', lengthMm: 50, diameterMm: 10 };
    const { distanceMm } = shapeDistance(
      placed(pill, [0, 30, 30], 40),
      placed(boxShape(500, 20, 20), [0, 0, 0]),
    );
    const end = 20 * Math.sin((40 * Math.PI) / 180);
    expect(distanceMm).toBeCloseTo(Math.hypot(20 - end, 20) - 5, 6);
  });

  test('two capsules, anyhow and nearly parallel: least distance of their axes by ternary search, less the radii', () => {
    const lengths = between(0.1, 60);
    const small = between(-1, 1);
    const anyhow = fc.oneof(
      poses,
      poses.chain((p) => small.map((yawDeg) => ({ ...p, yawDeg, pitchDeg: 0 }))),
    );
    fc.assert(
      fc.property(lengths, lengths, anyhow, anyhow, (l, m, p, q) => {
        const pill = (lengthMm: number): Shape => ({
          kind: 'capsule',
          lengthMm: lengthMm + 8,
          diameterMm: 8,
        });
        const [a, b] = [solidOf({ shape: pill(l), pose: p }), solidOf({ shape: pill(m), pose: q })];
        const [from, to] = [pointToAircraft(q, [-m / 2, 0, 0]), pointToAircraft(q, [m / 2, 0, 0])];
        const offAxis = (x: number) => {
          const point = pointToAircraft(p, [x, 0, 0]);
          const t = dot(sub(point, from), sub(to, from)) / (m * m);
          return distance(point, add(from, scale(sub(to, from), Math.min(1, Math.max(0, t)))));
        };
        let [low, high] = [-l / 2, l / 2];
        for (let i = 0; i < 120; i += 1) {
          const [u, v] = [low + (high - low) / 3, high - (high - low) / 3];
          if (offAxis(u) < offAxis(v)) high = v;
          else low = u;
        }
        const expected = offAxis((low + high) / 2) - 8;
        expect(shapeDistance(a, b).distanceMm).toBeCloseTo(Math.max(0, expected), 7);
      }),
      { numRuns: 300 },
    );
  });

  test('a rod within a saddle keeps its distance to the nearest wall, not to the hull around the saddle', () => {
    const inside = placed(rod(100, 20), [0, 0, 5]);
    const { distanceMm } = shapeDistance(inside, placed(saddle, [0, 0, 0]));
    expect(distanceMm).toBeCloseTo(22 - 5 - 10, 6);
    expect(shapeOverlap(inside, placed(saddle, [0, 0, 0]))).toBeNull();
  });
});

describe('the shortest way out, by formula', () => {
  test('of two boxes square to the axes: the least of the overlaps', () => {
    const overlap = shapeOverlap(
      placed(boxShape(40, 40, 40), [0, 0, 0]),
      placed(boxShape(40, 40, 40), [30, 12, -33]),
    );
    expect(overlap?.depthMm).toBeCloseTo(7, 9);
    expect(overlap?.clearByMm[2]).toBeCloseTo(7, 9);
    expect(Math.hypot(overlap!.clearByMm[0], overlap!.clearByMm[1])).toBeLessThan(1e-9);
  });

  test('of boxes with one centre: half of both heights', () => {
    const overlap = shapeOverlap(
      placed(boxShape(90, 50, 20), [1, 2, 3]),
      placed(boxShape(70, 60, 8), [1, 2, 3]),
    );
    expect(overlap?.depthMm).toBeCloseTo(14, 9);
  });

  test('of a cylinder sunk into a plate', () => {
    const plate = placed(boxShape(400, 400, 100), [0, 0, -50]);
    const overlap = shapeOverlap(placed(rod(80, 30), [0, 0, 12], 25), plate);
    expect(overlap?.depthMm).toBeCloseTo(3, 2);
    expect(overlap?.clearByMm[2]).toBeCloseTo(3, 2);
  });

  test('of two boxes, anyhow: the least overlap over the 15 separating axes (Gottschalk, Lin, Manocha 1996)', () => {
    const size = between(5, 80);
    const sizes = fc.tuple(size, size, size);
    const axesOf = (pose: Parameters<typeof pointToAircraft>[0]): Vec3[] =>
      [0, 1, 2].map((i) =>
        pointToAircraft({ ...pose, positionMm: [0, 0, 0] }, [+(i === 0), +(i === 1), +(i === 2)]),
      );
    let clashes = 0;
    fc.assert(
      fc.property(sizes, sizes, poses, poses, (s, t, p, q) => {
        const near = { ...q, positionMm: add(p.positionMm, scale(q.positionMm, 0.4)) };
        const [u, v] = [axesOf(p), axesOf(near)];
        const crossed = u.flatMap((a) => v.map((b) => cross(a, b)));
        const overlaps = [...u, ...v, ...crossed].flatMap((raw) => {
          const axis = length(raw) > 1e-6 ? normalise(raw) : null;
          if (!axis) return [];
          const reach = (list: Vec3[], size: readonly number[]) =>
            list.reduce((sum, one, i) => sum + (Math.abs(dot(one, axis)) * size[i]!) / 2, 0);
          return [reach(u, s) + reach(v, t) - Math.abs(dot(sub(near.positionMm, p.positionMm), axis))];
        });
        const least = Math.min(...overlaps);
        const depth = shapeOverlap(
          solidOf({ shape: boxShape(...s), pose: p }),
          solidOf({ shape: boxShape(...t), pose: near }),
        )?.depthMm;
        if (least < 1e-3) return;
        clashes += 1;
        expect(depth! / least).toBeGreaterThan(1 - 1e-9);
        expect(depth! / least).toBeLessThan(1 + 1.1e-3);
      }),
      { numRuns: 300 },
    );
    expect(clashes).toBeGreaterThan(50);
  });

  test('things that only touch do not clash', () => {
    expect(shapeOverlap(placed(rod(78, 80), [1099, 0, 30]), placed(rod(36, 84), [1042, 0, 30]))).toBeNull();
    expect(shapeOverlap(placed(ball(20), [0, 0, 0]), placed(boxShape(20, 20, 20), [20, 3, 4]))).toBeNull();
  });
});

/** A point well inside a shape that holds its own origin: a share of the way out to its furthest point. */
const innerPoint = (shape: Shape, way: Vec3, share: number): Vec3 => {
  const { convexes } = placed(shape, [0, 0, 0]);
  const out = new Float64Array(3);
  convexes[0]!.support(...way, out, 0);
  const middle = convexes[0]!;
  const centre = scale(add(middle.minMm, middle.maxMm), 0.5);
  const tip = add([out[0]!, out[1]!, out[2]!], scale(way, middle.radiusMm));
  return add(centre, scale(sub(tip, centre), share));
};

describe('no clash is missed, at any orientation', () => {
  test('ten thousand pairs with a point in both', () => {
    const inner = between(0, 0.98);
    fc.assert(
      fc.property(
        convexShapes,
        convexShapes,
        poses,
        poses,
        directions,
        directions,
        inner,
        inner,
        (s, t, a, b, p, q, i, j) => {
          const pointA = pointToAircraft(a, innerPoint(s, p, i));
          const pointB = pointToAircraft(b, innerPoint(t, q, j));
          const moved = { ...b, positionMm: add(b.positionMm, sub(pointA, pointB)) };
          const [one, other] = [solidOf({ shape: s, pose: a }), solidOf({ shape: t, pose: moved })];
          if (!shapesClash(one, other)) throw new Error('missed');
          if (shapeDistance(one, other).distanceMm > 0) throw new Error('a gap where there is none');
        },
      ),
      { numRuns: 10_000 },
    );
  });

  test('a thousand pairs either side of a plane do not clash, and keep at least its gap', () => {
    fc.assert(
      fc.property(anyShapes, anyShapes, poses, poses, directions, (s, t, a, b, n) => {
        const gap = 0.01;
        const corners = (shape: Shape, pose: typeof a) => solidOf({ shape, pose }).convexes;
        const reach = (solid: Solid['convexes'], way: Vec3) => {
          const out = new Float64Array(3);
          const ends = solid.map((convex) => {
            convex.support(...way, out, 0);
            return dot([out[0]!, out[1]!, out[2]!], way) + convex.radiusMm;
          });
          return Math.max(...ends);
        };
        const upTo = reach(corners(s, a), n);
        const from = -reach(corners(t, b), scale(n, -1));
        const moved = { ...b, positionMm: add(b.positionMm, scale(n, upTo - from + gap)) };
        const [one, other] = [solidOf({ shape: s, pose: a }), solidOf({ shape: t, pose: moved })];
        expect(shapesClash(one, other)).toBe(false);
        expect(shapeDistance(one, other).distanceMm).toBeGreaterThan(gap * 0.999);
      }),
      { numRuns: 1000 },
    );
  });

  test('the convex pieces reach as far as the tessellated shape, which lies within it, whatever the way', () => {
    fc.assert(
      fc.property(anyShapes, directions, (shape, way) => {
        const out = new Float64Array(3);
        const reach = Math.max(
          ...placed(shape, [0, 0, 0]).convexes.map((convex) => {
            convex.support(...way, out, 0);
            return dot([out[0]!, out[1]!, out[2]!], way) + convex.radiusMm;
          }),
        );
        const drawn = Math.max(...tessellate(shape, { segments: 96 }).verticesMm.map((v) => dot(v, way)));
        // Corners lie on the surface, their chords at most 80·(1 − cos(π/96))/2 = 0.03 mm within.
        expect(reach).toBeGreaterThan(drawn - 0.01);
        expect(reach).toBeLessThan(drawn + 0.05);
      }),
      { numRuns: 100 },
    );
  });

  test('the clearing move clears, and one a hundredth shorter does not', () => {
    let clashes = 0;
    fc.assert(
      fc.property(anyShapes, anyShapes, poses, poses, (s, t, a, b) => {
        const near = { ...b, positionMm: add(a.positionMm, scale(b.positionMm, 0.3)) };
        const [one, other] = [solidOf({ shape: s, pose: a }), solidOf({ shape: t, pose: near })];
        const overlap = shapeOverlap(one, other);
        if (!overlap || overlap.depthMm < 1e-3) return;
        clashes += 1;
        const { clearByMm } = overlap;
        expect(Math.hypot(...clearByMm)).toBeCloseTo(overlap.depthMm, 9);
        expect(shapesClash(movedSolid(one, clearByMm), other)).toBe(false);
        expect(shapesClash(movedSolid(one, scale(clearByMm, 0.99)), other)).toBe(true);
      }),
      { ...foundFirst(clearingFound), numRuns: 250 },
    );
    expect(clashes).toBeGreaterThan(50);
  });
});
