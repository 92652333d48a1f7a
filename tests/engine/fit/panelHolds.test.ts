import { expect, test } from 'vitest';
import {
  outOfPanel,
  type PosedPanel,
  panelNormals,
  panelStretches,
} from '../../../src/engine/fit/panelHolds';
import { pointToAircraft, poseAtDatum } from '../../../src/engine/geometry/rotation';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import { mirrorY } from '../../../src/engine/geometry/vec3';
import type { PanelShape } from '../../../src/engine/mass/shapes';
import { panelSectionAt, panelSections } from '../../../src/engine/mass/solids/panel';
import { randomFrom } from '../../randomFrom';

const tapered: PanelShape = {
  kind: 'panel',
  spanMm: 400,
  rootChordMm: 220,
  tipChordMm: 120,
  sweepMm: 60,
  riseMm: 25,
  rootTwistDeg: 1,
  tipTwistDeg: -3,
  rootThickness: 0.14,
  tipThickness: 0.1,
};
const standing = (shape: PanelShape, pose: Pose = poseAtDatum): PosedPanel => ({
  shape,
  pose,
  mirrored: false,
});

/** Out of a section by trying all of its outline; 0 within, by counting how often a line to the front crosses it. */
function outOfOutline(outline: readonly (readonly [number, number])[], x: number, z: number): number {
  const edges = outline.map((from, k) => [from, outline[(k + 1) % outline.length]!] as const);
  const crossings = edges.filter(
    ([[ax, az], [bx, bz]]) => az > z !== bz > z && x > ax + ((z - az) / (bz - az)) * (bx - ax),
  );
  if (crossings.length % 2 === 1) return 0;
  const tries = edges.flatMap(([[ax, az], [bx, bz]]) =>
    Array.from({ length: 201 }, (_, k) =>
      Math.hypot(x - ax - ((bx - ax) * k) / 200, z - az - ((bz - az) * k) / 200),
    ),
  );
  return Math.min(...tries);
}

test('a point is out of a panel by what trying all of its section finds, and within it by nothing', () => {
  const random = randomFrom(91);
  const { root, tip } = panelSections(tapered);
  const counts = { within: 0, outside: 0 };
  for (let trial = 0; trial < 150; trial += 1) {
    const share = random();
    const at: Vec3 = [-30 + 300 * random(), 400 * share, -30 + 70 * random()];
    const expected = outOfOutline(panelSectionAt(root, tip, share), at[0], at[2]);
    const found = outOfPanel(standing(tapered), at);
    if (expected === 0) counts.within += 1;
    else counts.outside += 1;
    expect(Math.abs(found - expected)).toBeLessThan(0.05);
    // It matters not where it stands, nor on which side.
    const pose: Pose = { positionMm: [700, 30, -40], yawDeg: 3, pitchDeg: 2, rollDeg: -6 };
    expect(outOfPanel(standing(tapered, pose), pointToAircraft(pose, at))).toBeCloseTo(found, 6);
    const left = { ...standing(tapered, pose), mirrored: true };
    expect(outOfPanel(left, mirrorY(pointToAircraft(pose, at)))).toBeCloseTo(found, 6);
  }
  expect(Math.min(counts.within, counts.outside)).toBeGreaterThan(15);
});

test('beyond root and tip the way along the span counts too, by Pythagoras', () => {
  const plank: PanelShape = { ...tapered, tipChordMm: 220, sweepMm: 0, riseMm: 0, tipThickness: 0.14 };
  const straight = standing({ ...plank, rootTwistDeg: 0, tipTwistDeg: 0 });
  // In the middle of the section: out by the way along the span alone.
  expect(outOfPanel(straight, [80, -30, 0])).toBe(30);
  expect(outOfPanel(straight, [80, 440, 0])).toBe(40);
  expect(outOfPanel(straight, [80, 0, 0])).toBe(0);
  expect(outOfPanel(straight, [80, 400, 0])).toBe(0);
  const beside = outOfPanel(straight, [-40, 200, 0]);
  expect(beside).toBeCloseTo(40, 6);
  expect(outOfPanel(straight, [-40, 430, 0])).toBeCloseTo(50, 6);
});

test('the convex stretches of a panel reach from root to tip, each from where the one before it ends', () => {
  const spans = (shape: PanelShape) =>
    panelStretches(shape).map((corners) => {
      const ys = corners.map(([, y]) => y);
      return [Math.min(...ys), Math.max(...ys)];
    });
  const flat = { ...tapered, tipTwistDeg: 1, tipThickness: 0.14 };
  expect(spans(flat)).toEqual([[0, 400]]);
  const quarters = [
    [0, 100],
    [100, 200],
    [200, 300],
    [300, 400],
  ];
  // Twisted, or of changing thickness, it does not run straight.
  expect(spans({ ...flat, tipTwistDeg: 0 })).toEqual(quarters);
  expect(spans({ ...flat, tipThickness: 0.1 })).toEqual(quarters);
  const { root, tip } = panelSections(tapered);
  const ends = panelStretches(tapered).flat();
  expect(ends).toContainEqual([root[0]![0], 0, root[0]![1]]);
  expect(ends).toContainEqual([tip[5]![0], 400, tip[5]![1]]);
});

test('the ways to look are square to the skin and point out of it, all round', () => {
  const { root } = panelSections(tapered);
  const normals = panelNormals(tapered);
  for (const [x, y, z] of normals) {
    expect(y).toBe(0);
    expect(Math.hypot(x, z)).toBeCloseTo(1, 12);
    // Of a convex section the farthest corners along the way are the two of the edge that it is square to.
    const far = root.map(([u, w]) => u * x + w * z).sort((a, b) => b - a);
    expect(far[0]! - far[1]!).toBeLessThan(1e-9);
  }
  const turns = normals.map(([x, , z]) => Math.atan2(z, x)).sort((a, b) => a - b);
  expect(normals.some(([, , z]) => z > 0.9)).toBe(true);
  expect(normals.some(([, , z]) => z < -0.9)).toBe(true);
  expect(turns[0]).toBeLessThan(-Math.PI / 2);
  expect(turns.at(-1)).toBeGreaterThan(Math.PI / 2);
});
