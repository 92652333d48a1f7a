import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { dot, sub } from '../../../src/engine/geometry/vec3';
import { liquidInShape } from '../../../src/engine/liquid/liquidInShape';
import { vesselOf } from '../../../src/engine/liquid/vesselOf';
import type { Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import type { Tensor } from '../../../src/engine/mass/types';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { between } from '../../between';
import { anyDown, anyFill, TANK_NAMES, TANKS } from './tankShapes';

const ENTRIES = ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const;
const SIZE_MM = 100;

function expectTensor(came: Tensor, expected: Tensor, within: number) {
  for (const entry of ENTRIES) expect(Math.abs(came[entry] - expected[entry])).toBeLessThan(within);
}

describe.each(TANK_NAMES)('%s', (name) => {
  const shape = TANKS[name]!;
  const full = volumeProperties(shape);
  const fill = (share: number, down: Vec3) => liquidInShape(shape, share * full.volumeMm3, down);

  test('holds the volume asked for, to 1e-9 of it, below the surface found', () => {
    fc.assert(
      fc.property(anyFill, anyDown, (share, down) => {
        const asked = share * full.volumeMm3;
        const { volumeProperties: wet, surfaceOffsetMm } = liquidInShape(shape, asked, down);
        const below = vesselOf(shape).tilt(down).wetted(surfaceOffsetMm!).volumeMm3;
        expect(Math.abs(below / asked - 1)).toBeLessThan(1e-9);
        expect(Math.abs(wet.volumeMm3 / asked - 1)).toBeLessThan(1e-9);
        expect(dot(wet.centroidMm!, down)).toBeGreaterThan(surfaceOffsetMm!);
      }),
      { numRuns: 80 },
    );
  });

  test('a last drop lies at the lowest point', () => {
    const corners = tessellate(shape).verticesMm;
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 11 }), anyDown, (digits, down) => {
        const asked = full.volumeMm3 * 10 ** -digits;
        const { volumeProperties: drop } = liquidInShape(shape, asked, down);
        expect(drop.volumeMm3).toBe(asked);
        const reach = corners.map((corner) => dot(corner, down));
        const deepest = Math.max(...reach);
        const depth = deepest - dot(drop.centroidMm!, down);
        expect(depth).toBeLessThan(0.03 * (deepest - Math.min(...reach)));
        for (const entry of ['xx', 'yy', 'zz'] as const) {
          expect(drop.inertiaAboutCentroidMm5[entry]).toBeGreaterThan(-1e-12 * asked * SIZE_MM ** 2);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('empty is nothing and full is the whole solid, which the cut also gives', () => {
    expect(fill(0, [0, 0, -1])).toEqual({
      volumeProperties: { volumeMm3: 0, centroidMm: null, inertiaAboutCentroidMm5: expect.anything() },
      surfaceOffsetMm: null,
    });
    expect(fill(1, [0, 0, -1])).toEqual({ volumeProperties: full, surfaceOffsetMm: null });
    fc.assert(
      fc.property(anyDown, (down) => {
        const tilted = vesselOf(shape).tilt(down);
        const all = tilted.wetted(tilted.topMm - 1);
        expect(Math.abs(all.volumeMm3 / full.volumeMm3 - 1)).toBeLessThan(1e-12);
        all.centroidMm!.forEach((v, i) => {
          expect(Math.abs(v - full.centroidMm![i]!)).toBeLessThan(1e-10);
        });
        expectTensor(
          all.inertiaAboutCentroidMm5,
          full.inertiaAboutCentroidMm5,
          1e-11 * full.volumeMm3 * SIZE_MM ** 2,
        );
        expect(tilted.wetted(tilted.bottomMm + 1).volumeMm3).toBe(0);
      }),
      { numRuns: 40 },
    );
  });

  test('liquid and the air above it make up the whole, moments and all', () => {
    fc.assert(
      fc.property(anyFill, anyDown, (share, down) => {
        const liquid = fill(share, down);
        const up: Vec3 = [-down[0], -down[1], -down[2]];
        const air = vesselOf(shape).tilt(up).wetted(-liquid.surfaceOffsetMm!);
        const wet = liquid.volumeProperties;
        expect(Math.abs((wet.volumeMm3 + air.volumeMm3) / full.volumeMm3 - 1)).toBeLessThan(1e-10);
        const first = wet.centroidMm!.map((v, i) => v * wet.volumeMm3 + air.centroidMm![i]! * air.volumeMm3);
        first.forEach((m, i) => {
          expect(Math.abs(m / full.volumeMm3 - full.centroidMm![i]!)).toBeLessThan(1e-8);
        });
        const apart = sub(wet.centroidMm!, air.centroidMm!);
        const shared = (wet.volumeMm3 * air.volumeMm3) / (wet.volumeMm3 + air.volumeMm3);
        const far = dot(apart, apart);
        for (const [entry, i, j] of [
          ['xx', 0, 0],
          ['yy', 1, 1],
          ['zz', 2, 2],
          ['xy', 0, 1],
          ['xz', 0, 2],
          ['yz', 1, 2],
        ] as const) {
          const joined =
            wet.inertiaAboutCentroidMm5[entry] +
            air.inertiaAboutCentroidMm5[entry] +
            shared * ((i === j ? far : 0) - apart[i] * apart[j]);
          expect(Math.abs(joined - full.inertiaAboutCentroidMm5[entry])).toBeLessThan(
            1e-9 * full.volumeMm3 * SIZE_MM ** 2,
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  test('the free-surface area is how fast the volume grows with the level', () => {
    fc.assert(
      fc.property(between(0.1, 0.9), anyDown, (share, down) => {
        const tilted = vesselOf(shape).tilt(down);
        const offset = fill(share, down).surfaceOffsetMm!;
        const step = 1e-3 * (tilted.bottomMm - tilted.topMm);
        const between = tilted.cut(offset - step).volumeMm3 - tilted.cut(offset + step).volumeMm3;
        // Simpson's rule over the same stretch; a kink in it leaves an error of the step's first order.
        const [a, b, c] = [-step, 0, step].map((s) => tilted.cut(offset + s).surfaceAreaMm2);
        const simpson = ((a! + 4 * b! + c!) * step) / 3;
        expect(Math.abs(between / simpson - 1)).toBeLessThan(0.02);
      }),
      { numRuns: 40 },
    );
  });

  test('more liquid stands higher, and its centroid too', () => {
    fc.assert(
      fc.property(anyFill, anyFill, anyDown, (one, other, down) => {
        fc.pre(Math.abs(one - other) > 1e-7);
        const less = fill(Math.min(one, other), down);
        const more = fill(Math.max(one, other), down);
        expect(more.surfaceOffsetMm!).toBeLessThan(less.surfaceOffsetMm!);
        expect(dot(more.volumeProperties.centroidMm!, down)).toBeLessThan(
          dot(less.volumeProperties.centroidMm!, down) + 1e-9,
        );
      }),
      { numRuns: 60 },
    );
  });

  test('at rest no other way of lying has a lower centroid', () => {
    fc.assert(
      fc.property(anyFill, anyDown, anyDown, (share, down, other) => {
        const here = dot(fill(share, down).volumeProperties.centroidMm!, down);
        const there = dot(fill(share, other).volumeProperties.centroidMm!, down);
        expect(there).toBeLessThan(here + 1e-8);
      }),
      { numRuns: 50 },
    );
  });

  test('as the tank tilts the centroid moves level: its path is square to down', () => {
    const lean = 1e-4;
    fc.assert(
      fc.property(between(0.05, 0.95), anyDown, (share, down) => {
        const side: Vec3 = Math.abs(down[1]) < 0.8 ? [0, 1, 0] : [1, 0, 0];
        const tilted = (by: number): Vec3 => [
          down[0] + by * side[0],
          down[1] + by * side[1],
          down[2] + by * side[2],
        ];
        const path = sub(
          fill(share, tilted(lean)).volumeProperties.centroidMm!,
          fill(share, tilted(-lean)).volumeProperties.centroidMm!,
        );
        expect(Math.abs(dot(path, down))).toBeLessThan(10 * lean * Math.hypot(...path) + 1e-8);
      }),
      { numRuns: 40 },
    );
  });

  test('twice as large in every direction: offsets 2, volumes 8, inertias 32', () => {
    fc.assert(
      fc.property(anyFill, anyDown, fc.constantFrom(1e-3, 0.5, 2, 1e3), (share, down, k) => {
        const small = fill(share, down);
        const large = liquidInShape(scaled(shape, k), share * full.volumeMm3 * k ** 3, down);
        expect(Math.abs(large.surfaceOffsetMm! / k - small.surfaceOffsetMm!)).toBeLessThan(1e-7);
        const inertia = large.volumeProperties.inertiaAboutCentroidMm5;
        for (const entry of ENTRIES) {
          expect(
            Math.abs(inertia[entry] / k ** 5 - small.volumeProperties.inertiaAboutCentroidMm5[entry]),
          ).toBeLessThan(1e-8 * full.volumeMm3 * SIZE_MM ** 2);
        }
      }),
      { numRuns: 30 },
    );
  });
});

const SYMMETRIC = ['box', 'cylinder', 'coin', 'sphere', 'ellipsoid', 'capsule', 'roundedBox'];

test.each(SYMMETRIC)('half full, the surface of a %s passes through its middle', (name) => {
  const half = volumeProperties(TANKS[name]!).volumeMm3 / 2;
  fc.assert(
    fc.property(anyDown, (down) => {
      expect(Math.abs(liquidInShape(TANKS[name]!, half, down).surfaceOffsetMm!)).toBeLessThan(1e-9);
    }),
  );
});

test.each(SYMMETRIC)('a %s held left wing down is the mirror image of right wing down', (name) => {
  const full = volumeProperties(TANKS[name]!).volumeMm3;
  fc.assert(
    fc.property(anyFill, anyDown, (share, down) => {
      const right = liquidInShape(TANKS[name]!, share * full, down).volumeProperties;
      const left = liquidInShape(TANKS[name]!, share * full, [down[0], -down[1], down[2]]).volumeProperties;
      const [x, y, z] = right.centroidMm!;
      [x, -y, z].forEach((v, i) => {
        expect(Math.abs(left.centroidMm![i]! - v)).toBeLessThan(1e-7);
      });
      const t = right.inertiaAboutCentroidMm5;
      expectTensor(left.inertiaAboutCentroidMm5, { ...t, xy: -t.xy, yz: -t.yz }, 1e-9 * full * SIZE_MM ** 2);
    }),
    { numRuns: 40 },
  );
});

describe('closed forms', () => {
  test('a standing cylinder is a shorter cylinder, lying level a segment drawn out', () => {
    const r = 31;
    const shape: Shape = { kind: 'cylinder', lengthMm: 130, diameterMm: 2 * r };
    const standing = liquidInShape(shape, Math.PI * r * r * 40, [1, 0, 0]);
    expect(standing.surfaceOffsetMm!).toBeCloseTo(65 - 40, 10);
    const m = Math.PI * r * r * 40;
    expect(standing.volumeProperties.inertiaAboutCentroidMm5.xx / ((m * r * r) / 2)).toBeCloseTo(1, 12);
    expect(
      standing.volumeProperties.inertiaAboutCentroidMm5.yy / (m * ((r * r) / 4 + 40 ** 2 / 12)),
    ).toBeCloseTo(1, 12);
    const nearly = liquidInShape(shape, m, [1, 1e-7, 0]);
    expect(Math.abs(nearly.surfaceOffsetMm! - 25)).toBeLessThan(1e-9);

    const half = liquidInShape(shape, volumeProperties(shape).volumeMm3 / 2, [0, 0.6, -0.8]);
    // Half disc: centroid 4r/3π from the middle.
    const reach = (4 * r) / (3 * Math.PI);
    [0, 0.6 * reach, -0.8 * reach].forEach((v, i) => {
      expect(half.volumeProperties.centroidMm![i]!).toBeCloseTo(v, 10);
    });
  });

  test('a cylinder cut through its rim is a hoof: V = ⅔ r² h, centroid 3πr/16 out and 3πh/32 up', () => {
    // Hoof with its straight edge along a diameter of the base (Bronshtein, Handbook of Mathematics, ungula).
    const [r, h] = [30, 40];
    const shape: Shape = { kind: 'cylinder', lengthMm: h, diameterMm: 2 * r };
    const hoof = liquidInShape(shape, (2 / 3) * r * r * h, [-r, h, 0]);
    const size = Math.hypot(r, h);
    expect(hoof.surfaceOffsetMm!).toBeCloseTo((r * h) / 2 / size, 9);
    const [x, y, z] = hoof.volumeProperties.centroidMm!;
    expect(y).toBeCloseTo((3 * Math.PI * r) / 16, 9);
    expect(x).toBeCloseTo(-h / 2 + (3 * Math.PI * h) / 32, 9);
    expect(z).toBeCloseTo(0, 9);
  });

  test.each([
    ['box', (70 ** 3 * 120) / 12],
    ['cylinder', (62 ** 3 * 130) / 12],
    ['ellipsoid', (Math.PI * 70 * 30 ** 3) / 4],
  ] as const)(
    'half full and level, a %s spills by the metacentric formula, second moment of the surface by volume',
    (name, surfaceMm4) => {
      // BM = I / V, Bouguer; any textbook on naval architecture.
      const shape = TANKS[name]!;
      const half = volumeProperties(shape).volumeMm3 / 2;
      const lean = 1e-4;
      const at = (by: number) =>
        liquidInShape(shape, half, [0, Math.sin(by), -Math.cos(by)]).volumeProperties.centroidMm!;
      const perRadian = (at(lean)[1] - at(-lean)[1]) / (2 * lean);
      expect(Math.abs(perRadian / (surfaceMm4 / half) - 1)).toBeLessThan(1e-6);
    },
  );

  test('the corner of a box fills as a tetrahedron', () => {
    // Down along the diagonal of a cube: V = s³/6 with s along each edge, centroid a quarter of s from each face.
    const shape: Shape = { kind: 'box', lengthMm: 60, widthMm: 60, heightMm: 60 };
    const corner = liquidInShape(shape, 20 ** 3 / 6, [1, 1, -1]);
    const m = 20 ** 3 / 6;
    [25, 25, -25].forEach((v, i) => {
      expect(corner.volumeProperties.centroidMm![i]!).toBeCloseTo(v, 10);
    });
    // ∫(y² + z²) about the centroid of a right-angled corner: 2 · 3/80 · m s².
    expect(corner.volumeProperties.inertiaAboutCentroidMm5.xx / ((m * 20 ** 2 * 3) / 40)).toBeCloseTo(1, 10);
  });
});

describe('refusals', () => {
  const box = TANKS.box!;
  test.each([
    [
      { kind: 'tube', lengthMm: 9, outerDiameterMm: 8, innerDiameterMm: 6 } as Shape,
      1,
      [0, 0, -1],
      /tube cannot be a tank/,
    ],
    [box, -1, [0, 0, -1], /0 mm³ or more, got -1/],
    [box, Number.NaN, [0, 0, -1], /got NaN/],
    [box, 378001, [0, 0, -1], /378001 mm³ is more than the 378000 mm³ that the box holds/],
    [box, 100, [0, 0, 0], /direction of down/],
    [box, 100, [Number.NaN, 0, 1], /direction of down/],
  ] as const)('case %#', (shape, volume, down, message) => {
    expect(() => liquidInShape(shape, volume, down)).toThrow(message);
  });

  test('rounding beyond full counts as full', () => {
    expect(liquidInShape(box, 378000 * (1 + 1e-12), [0, 0, -1]).surfaceOffsetMm).toBeNull();
  });
});

function scaled(shape: Shape, k: number): Shape {
  return JSON.parse(JSON.stringify(shape), (key, value: unknown) => {
    if (key.endsWith('Mm') && typeof value === 'number') return value * k;
    if (key === 'outlineMm') return (value as number[][]).map((p) => p.map((v) => v * k));
    return value;
  }) as Shape;
}
