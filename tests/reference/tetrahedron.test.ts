import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/engine/geometry/types';
import { inertiaAbout, massTurn } from '../../src/engine/mass/massProperties';
import { meshFault } from '../../src/engine/mass/meshFault';
import { principalMoments } from '../../src/engine/mass/principal';
import type { Mesh } from '../../src/engine/mass/types';
import { solidMass } from '../../src/engine/mass/volumeProperties';

/**
 * F. Tonon, Explicit exact formulas for the 3-D tetrahedron inertia tensor in terms of its vertex
 * coordinates, J. Math. Stat. 1(1):8–11, 2004. Unit density. The paper's matrix prints b′ and c′ in
 * each other's place; they are put here by what they mean: a′ = ∫yz, b′ = ∫xz, c′ = ∫xy.
 */
const tonon: Mesh = {
  verticesMm: [
    [8.3322, -11.86875, 0.93355],
    [0.75523, 5, 16.37072],
    [52.61236, 5, -5.3858],
    [2, 5, 3],
  ],
  triangles: [
    [0, 1, 2],
    [0, 3, 1],
    [0, 2, 3],
    [1, 3, 2],
  ],
};

/** The print carries about ten digits of a computation in single steps: 1e-7. */
const near = (actual: number, printed: number) => expect(Math.abs(actual / printed - 1)).toBeLessThan(1e-7);

describe('Tonon’s tetrahedron', () => {
  const outward = meshFault(tonon) === null;
  const mesh: Mesh = outward
    ? tonon
    : { ...tonon, triangles: tonon.triangles.map(([a, b, c]) => [a, c, b] as const) };
  const body = solidMass({ kind: 'mesh', ...mesh }, 1000);
  const t = body.inertiaAboutCgGmm2;

  test('the centroid', () => {
    expect(body.cgMm![0]).toBeCloseTo(15.92492, 4);
    expect(body.cgMm![1]).toBeCloseTo(0.78281, 5);
    expect(body.cgMm![2]).toBeCloseTo(3.72962, 5);
  });

  test('the tensor as printed', () => {
    near(t.xx, 43520.33257);
    near(t.yy, 194711.28938);
    near(t.zz, 191168.76173);
    near(-t.yz, 4417.6615);
    near(-t.xz, -46343.16662);
    near(-t.xy, 11996.20119);
  });

  test('its volume, principal moments and tensor about the origin, recomputed from the vertices', () => {
    near(body.massG, 1873.2333642);
    const [a, b, c] = principalMoments(t).momentsGmm2;
    near(a, 29535.43105);
    near(b, 191103.65379);
    near(c, 208761.30592);
    const o = inertiaAbout(body, [0, 0, 0]);
    near(o.xx, 70725.00566);
    near(o.yy, 695827.44199);
    near(o.zz, 667376.05952);
    near(o.xy, -35348.39301);
    near(o.xz, -64915.58552);
    near(o.yz, -9886.73721);
  });
});

describe('Mirtich, Journal of Graphics Tools 1(2):31–50, 1996', () => {
  test('a regular tetrahedron of edge L has mL²/20 about every axis', () => {
    const corners: Vec3[] = [
      [1, 1, 1],
      [1, -1, -1],
      [-1, 1, -1],
      [-1, -1, 1],
    ];
    const faces = [
      [0, 1, 2],
      [0, 3, 1],
      [0, 2, 3],
      [1, 3, 2],
    ] as const;
    const body = solidMass({ kind: 'mesh', verticesMm: corners, triangles: faces }, 1000);
    // Edge √8, volume L³/(6√2).
    expect(body.massG).toBeCloseTo(8 / 3, 14);
    const expected = (body.massG * 8) / 20;
    const turned = massTurn(body, [0.36, 0.48, -0.8, -0.8, 0.6, 0, 0.48, 0.64, 0.6]).inertiaAboutCgGmm2;
    for (const { xx, yy, zz, xy, xz, yz } of [body.inertiaAboutCgGmm2, turned]) {
      for (const moment of [xx, yy, zz]) expect(moment).toBeCloseTo(expected, 13);
      for (const product of [xy, xz, yz]) expect(product).toBeCloseTo(0, 13);
    }
  });

  test('a unit cube has m/6', () => {
    const { massG, inertiaAboutCgGmm2: t } = solidMass(
      { kind: 'box', lengthMm: 1, widthMm: 1, heightMm: 1 },
      1000,
    );
    expect(t.xx).toBeCloseTo(massG / 6, 15);
  });
});
