import { expect, test } from 'vitest';
import { convexCover } from '../../../src/engine/fit/convexCover';
import { pointSolid } from '../../../src/engine/fit/outline';
import { shapeDistance } from '../../../src/engine/fit/shapeDistance';
import { solidOf } from '../../../src/engine/fit/solid';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { meshProperties } from '../../../src/engine/mass/mesh';
import { meshHolds } from '../../../src/engine/mesh/meshHolds';
import { meshSections } from '../../../src/engine/mesh/meshSections';
import { shrunkMesh } from '../../../src/engine/mesh/shrunkMesh';
import { randomFrom } from '../../randomFrom';
import { seed } from '../../seed';
import { ball, brick, drum, torus } from './solids';

const random = randomFrom(seed);
const upright = { positionMm: [0, 0, 0] as Vec3, yawDeg: 0, pitchDeg: 0, rollDeg: 0 };

test('a point lies in a ring by the ring’s own equation', () => {
  const ring = torus(60, 20, 120, 60);
  for (let i = 0; i < 1500; i += 1) {
    const p: Vec3 = [random() * 60 - 30, random() * 180 - 90, random() * 180 - 90];
    // The mesh lies within the ring by less than 0.1 mm: 20 (1 − cos 3°) and 60 (1 − cos 1.5°).
    const off = Math.hypot(p[0], Math.hypot(p[1], p[2]) - 60) - 20;
    if (Math.abs(off) > 0.1) expect(meshHolds(ring, p)).toBe(off < 0);
  }
});

test('a line through corners and along edges slips through nowhere', () => {
  const block = brick([0, 0, 0], [4, 4, 4]);
  for (const y of [0.5, 1, 2, 3.999])
    for (const z of [0.5, 1, 2, y]) {
      expect(meshHolds(block, [2, y, z])).toBe(true);
      expect(meshHolds(block, [5, y, z])).toBe(false);
      expect(meshHolds(block, [-1, y, z])).toBe(false);
    }
  // Down the middle of a fan, where all its triangles meet.
  expect(meshHolds(drum(90, 25, 24), [0, 0, 0])).toBe(true);
  expect(meshHolds(drum(90, 25, 24), [46, 0, 0])).toBe(false);
});

test('the pieces that cover a mesh hold all of it, and little more', () => {
  const ring = torus(60, 20, 40, 16);
  const cover = solidOf({ shape: { kind: 'mesh', ...ring }, pose: upright });
  expect(cover.convexes.length).toBeGreaterThan(4);
  let [beyond, tried] = [0, 0];
  for (let i = 0; i < 1200; i += 1) {
    const p: Vec3 = [random() * 40 - 20, random() * 160 - 80, random() * 160 - 80];
    const covered = shapeDistance(pointSolid(p), cover).distanceMm === 0;
    if (meshHolds(ring, p)) expect(covered).toBe(true);
    const off = Math.hypot(p[0], Math.hypot(p[1], p[2]) - 60) - 20;
    if (off > 3) {
      tried += 1;
      if (covered) beyond += 1;
    }
  }
  expect(tried).toBeGreaterThan(400);
  expect(beyond).toBe(0);
});

test('a convex mesh of many triangles is one piece', () => {
  expect(convexCover(ball(100, 24, 48))).toHaveLength(1);
});

test('sections of a drum and of a brick say their width, height and roundness', () => {
  const round = meshSections(drum(90, 25, 96)).at(8)!;
  expect(round.widthMm).toBeCloseTo(50, 1);
  expect(round.heightMm).toBeCloseTo(50, 1);
  expect(round.roundness).toBeGreaterThan(0.99);
  const square = meshSections(brick([0, -10, 5], [90, 20, 45]));
  expect(square[0]!.xMm).toBe(0);
  expect(square.at(-1)!.xMm).toBe(90);
  expect(square[8]).toMatchObject({ widthMm: 30, heightMm: 40, centreYMm: 5, centreZMm: 25 });
  expect(square[8]!.roundness).toBeLessThan(1e-6);
});

test('the inner face of a ball’s wall is a smaller ball', () => {
  const inner = shrunkMesh({ kind: 'mesh', ...ball(50, 48, 96) }, 5);
  const exact = (4 / 3) * Math.PI * 45 ** 3;
  expect(Math.abs(meshProperties(inner).volumeMm3 / exact - 1)).toBeLessThan(0.01);
});
