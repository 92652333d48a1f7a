import { expect, test } from 'vitest';
import { type Triangle, triangleTree } from '../../../src/engine/fit/triangleTree';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { add, cross, distance, dot, lerp, scale, sub } from '../../../src/engine/geometry/vec3';
import { randomFrom } from '../../randomFrom';
import { boxShape, placed } from './randomSolids';

/** Distance of a point to a triangle: to its plane where the foot lies within, else to the nearest of its sides. */
function apart(p: Vec3, [a, b, c]: Triangle): number {
  const normal = cross(sub(b, a), sub(c, a));
  const along = dot(sub(p, a), normal) / dot(normal, normal);
  const foot = sub(p, scale(normal, along));
  const within = [
    [a, b],
    [b, c],
    [c, a],
  ].every(([from, to]) => dot(cross(sub(to!, from!), sub(foot, from!)), normal) >= 0);
  if (within) return distance(p, foot);
  const toSide = (from: Vec3, to: Vec3) => {
    const way = sub(to, from);
    const share = Math.min(1, Math.max(0, dot(sub(p, from), way) / dot(way, way)));
    return distance(p, lerp(from, to, share));
  };
  return Math.min(toSide(a, b), toSide(b, c), toSide(c, a));
}

const somewhere = (random: () => number, size: number): Vec3 => [
  size * random(),
  size * random(),
  size * random(),
];

test('the nearest triangle is the one that trying all of them finds, for lists of any length', () => {
  const random = randomFrom(81);
  for (const count of [1, 2, 5, 8, 9, 33, 130]) {
    const triangles = Array.from({ length: count }, (): Triangle => {
      const at = somewhere(random, 400);
      return [at, add(at, somewhere(random, 60)), add(at, somewhere(random, 60))];
    });
    const tree = triangleTree(triangles);
    for (let trial = 0; trial < 12; trial += 1) {
      const at = somewhere(random, 400);
      const ball = placed({ kind: 'sphere', diameterMm: 30 }, at);
      const least = Math.max(0, Math.min(...triangles.map((triangle) => apart(at, triangle))) - 15);
      expect(tree.nearest(ball)?.distanceMm).toBeCloseTo(least, 6);
      // Nothing is said of what is not nearer than was asked.
      expect(tree.nearest(ball, least - 1e-6)).toBeNull();
      if (least > 0) expect(tree.nearest(ball, least + 1e-6)?.distanceMm).toBeCloseTo(least, 6);
    }
  }
});

test('a triangle that cuts a box is at no distance, from whichever side it is seen', () => {
  const box = placed(boxShape(100, 60, 40), [0, 0, 0]);
  const flat = (z: number): Triangle => [
    [-300, -300, z],
    [300, -300, z],
    [0, 300, z],
  ];
  const turned = ([a, b, c]: Triangle): Triangle => [a, c, b];
  for (const [z, apartMm] of [
    [0, 0],
    [19, 0],
    [27, 7],
    [-27, 7],
  ] as const) {
    expect(triangleTree([flat(z)]).nearest(box)?.distanceMm).toBeCloseTo(apartMm, 9);
    expect(triangleTree([turned(flat(z))]).nearest(box)?.distanceMm).toBeCloseTo(apartMm, 9);
  }
  expect(triangleTree([]).nearest(box)).toBeNull();
});
