import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { meshProperties } from '../../../src/engine/mass/mesh';
import { meshFault } from '../../../src/engine/mass/meshFault';
import { featureLines } from '../../../src/engine/mass/outline';
import { around, shapeBounds } from '../../../src/engine/mass/shapeBounds';
import type { LoftSection, Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectPoint, expectTensor } from './closeTo';
import { nameOf, saddle, sampleShapes } from './sampleShapes';

const ring = (xMm: number, widthMm: number, heightMm: number, roundness: number): LoftSection => ({
  xMm,
  widthMm,
  heightMm,
  centreYMm: 2,
  centreZMm: 3,
  roundness,
});
const loft = (...sections: LoftSection[]): Shape => ({ kind: 'loft', sections });

/** Shapes whose rings shrink to lines and points. */
const awkward: [string, Shape][] = [
  ['loft to a knife edge across', loft(ring(0, 40, 30, 0.5), ring(50, 40, 0, 0.5))],
  ['loft to a knife edge upright', loft(ring(0, 0, 30, 1), ring(50, 40, 30, 1))],
  ['loft pointed at both ends', loft(ring(0, 0, 0, 1), ring(50, 40, 30, 0), ring(90, 0, 0, 0.4))],
  ['loft from square to round', loft(ring(0, 40, 30, 0), ring(50, 30, 30, 1))],
  [
    'tapered box to an edge',
    {
      kind: 'taperedBox',
      lengthMm: 40,
      frontWidthMm: 20,
      frontHeightMm: 10,
      rearWidthMm: 20,
      rearHeightMm: 0,
    },
  ],
  [
    'tapered box to a point',
    { kind: 'taperedBox', lengthMm: 40, frontWidthMm: 0, frontHeightMm: 0, rearWidthMm: 20, rearHeightMm: 8 },
  ],
  ['cone pointing aft', { kind: 'frustum', lengthMm: 40, frontDiameterMm: 20, rearDiameterMm: 0 }],
  ['capsule that is a sphere', { kind: 'capsule', lengthMm: 20, diameterMm: 20 }],
  ['tube without a bore', { kind: 'tube', lengthMm: 20, outerDiameterMm: 20, innerDiameterMm: 0 }],
  ['panel to a point', { ...panelShape(), tipChordMm: 0 }],
  ['panel thinned to a line', { ...panelShape(), tipThickness: 0 }],
  ['prism, clockwise', { ...saddle, outlineMm: saddle.outlineMm.toReversed() }],
];

function panelShape() {
  const panel = sampleShapes.find((shape) => shape.kind === 'panel');
  if (!panel) throw new Error('The samples lost their panel.');
  return panel;
}

const all = [...sampleShapes.map((shape): [string, Shape] => [nameOf(shape), shape]), ...awkward];

describe.each(all)('%s', (_, shape) => {
  test('the mesh is closed and faces outwards, fine or coarse', () => {
    for (const segments of [3, 4, 17, 48]) expect(meshFault(tessellate(shape, { segments }))).toBeNull();
  });

  test('its volume comes near the shape’s and its corners keep within the bounds', () => {
    const mesh = tessellate(shape, { segments: 96 });
    expect(meshProperties(mesh).volumeMm3 / volumeProperties(shape).volumeMm3).toBeCloseTo(1, 2);
    const bounds = shapeBounds(shape);
    const meshBounds = around(mesh.verticesMm);
    expectPoint(meshBounds.minMm, bounds.minMm, 1e-9);
    expectPoint(meshBounds.maxMm, bounds.maxMm, 1e-9);
  });

  test('its lines lie on the surface: no point of them outside the bounds, none single', () => {
    const lines = featureLines(shape);
    const bounds = shapeBounds(shape);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(line.length).toBeGreaterThan(1);
    const drawn = around(lines.flat());
    expectPoint(drawn.minMm, bounds.minMm, 1e-9);
    expectPoint(drawn.maxMm, bounds.maxMm, 1e-9);
  });
});

describe('feature lines', () => {
  const edges = (shape: Shape): number => featureLines(shape).reduce((sum, line) => sum + line.length - 1, 0);

  test('a box has its twelve edges, as a solid and as a mesh', () => {
    const box: Shape = { kind: 'box', lengthMm: 3, widthMm: 4, heightMm: 5 };
    expect(edges(box)).toBe(12);
    expect(edges({ kind: 'mesh', ...tessellate(box) })).toBe(12);
  });

  test('a prism of n sharp corners has 3n', () => {
    expect(edges(saddle)).toBe(24);
  });

  test('a cylinder’s circles are its rim', () => {
    const lines = featureLines({ kind: 'cylinder', lengthMm: 10, diameterMm: 8 });
    const circles = lines.filter((line) => line.length > 2);
    expect(circles).toHaveLength(2);
    for (const [, y, z] of circles.flat()) expect(Math.hypot(y, z)).toBeCloseTo(4, 12);
    expect(lines.filter((line) => line.length === 2)).toHaveLength(4);
  });

  test('a panel’s leading edge runs from the root nose to the tip nose', () => {
    const panel = { ...panelShape(), rootTwistDeg: 0, tipTwistDeg: 0 };
    const spanwise = featureLines(panel).filter((line) => line.length === 2);
    const ends = spanwise.map((line) => line.map((point) => point.map((c) => Math.round(c * 1e6) / 1e6 + 0)));
    expect(ends).toContainEqual([
      [0, 0, 0],
      [60, 600, 40],
    ]);
    expect(ends).toContainEqual([
      [250, 0, 0],
      [210, 600, 40],
    ]);
  });
});

describe('mesh integration', () => {
  test('does not care how far away the mesh is', () => {
    const { verticesMm, triangles } = tessellate(saddle);
    const away = (d: number): Vec3[] => verticesMm.map(([x, y, z]) => [x + d, y - d, z + d]);
    // 2²⁴ mm off and whole numbers: the coordinates themselves stay exact.
    const [near, far] = [0, 2 ** 24].map((d) => meshProperties({ verticesMm: away(d), triangles }));
    expect(far!.volumeMm3).toBe(near!.volumeMm3);
    expectTensor(far!.inertiaAboutCentroidMm5, near!.inertiaAboutCentroidMm5, 1e-15);
  });

  test('nothing encloses nothing', () => {
    const empty = meshProperties({ verticesMm: [], triangles: [] });
    expect(empty.volumeMm3).toBe(0);
    expect(empty.centroidMm).toBeNull();
  });
});
