import { describe, expect, test } from 'vitest';
import { gaussRule } from '../../../src/engine/mass/gauss';
import type { Shape } from '../../../src/engine/mass/shapes';
import { shellMass, shellOfMass, surfaceProperties } from '../../../src/engine/mass/surfaceProperties';
import { solidMass, solidOfMass, volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectMass } from './closeTo';
import { nameOf, sampleShapes } from './sampleShapes';

const area = (shape: Shape): number => surfaceProperties(shape).areaMm2;

describe('areas by formula', () => {
  test.each<[string, Shape, number]>([
    ['box', { kind: 'box', lengthMm: 3, widthMm: 4, heightMm: 5 }, 94],
    ['cylinder 2πr(r + h)', { kind: 'cylinder', lengthMm: 7, diameterMm: 6 }, 60 * Math.PI],
    [
      'tube, outside, bore and rings',
      { kind: 'tube', lengthMm: 10, outerDiameterMm: 6, innerDiameterMm: 4 },
      Math.PI * (60 + 40 + 2 * 5),
    ],
    [
      'cone πr(r + s), 3-4-5',
      { kind: 'frustum', lengthMm: 4, frontDiameterMm: 0, rearDiameterMm: 6 },
      24 * Math.PI,
    ],
    ['sphere', { kind: 'sphere', diameterMm: 6 }, 36 * Math.PI],
    ['capsule', { kind: 'capsule', lengthMm: 16, diameterMm: 6 }, Math.PI * (36 + 60)],
    [
      'prism, 3-4-5 triangle',
      {
        kind: 'prism',
        lengthMm: 10,
        outlineMm: [
          [0, 0],
          [4, 0],
          [0, 3],
        ],
      },
      2 * 6 + 12 * 10,
    ],
  ])('%s', (_, shape, expected) => {
    expect(area(shape) / expected).toBeCloseTo(1, 13);
  });

  test('spheroids: 2πa²(1 + (1 − e²)/e · artanh e) oblate, 2πa²(1 + c/(ae) · arcsin e) prolate', () => {
    const spheroid = (c: number): Shape => ({ kind: 'ellipsoid', lengthMm: 2 * c, widthMm: 6, heightMm: 6 });
    const oblate = (c: number) => {
      const e = Math.sqrt(1 - (c * c) / 9);
      return 2 * Math.PI * 9 * (1 + ((1 - e * e) / e) * Math.atanh(e));
    };
    const prolate = (c: number) => {
      const e = Math.sqrt(1 - 9 / (c * c));
      return 2 * Math.PI * 9 * (1 + (c / (3 * e)) * Math.asin(e));
    };
    for (const c of [2.9, 1, 0.1]) expect(area(spheroid(c)) / oblate(c)).toBeCloseTo(1, 10);
    for (const c of [3.1, 9, 90]) expect(area(spheroid(c)) / prolate(c)).toBeCloseTo(1, 10);
  });

  test('the axes of an ellipsoid can be named in any order', () => {
    const skin = (lengthMm: number, widthMm: number, heightMm: number) =>
      surfaceProperties({ kind: 'ellipsoid', lengthMm, widthMm, heightMm }).inertiaAboutCentroidMm4;
    const [x, y, z] = [skin(20, 9, 5), skin(9, 5, 20), skin(5, 20, 9)] as const;
    expect(x.xx / y.zz).toBeCloseTo(1, 10);
    expect(x.xx / z.yy).toBeCloseTo(1, 10);
    expect(x.yy / y.xx).toBeCloseTo(1, 10);
    expect(x.zz / z.xx).toBeCloseTo(1, 10);
  });
});

/** The same shape with every wall moved out by d. */
function thicker(shape: Shape, d: number): Shape | null {
  switch (shape.kind) {
    case 'box':
      return {
        kind: 'box',
        lengthMm: shape.lengthMm + 2 * d,
        widthMm: shape.widthMm + 2 * d,
        heightMm: shape.heightMm + 2 * d,
      };
    case 'cylinder':
    case 'capsule':
      return { ...shape, lengthMm: shape.lengthMm + 2 * d, diameterMm: shape.diameterMm + 2 * d };
    case 'sphere':
      return { ...shape, diameterMm: shape.diameterMm + 2 * d };
    default:
      return null;
  }
}

test('a skin is what a thickness going to nothing leaves: (V(d) − V(−d)) / 2d', () => {
  const checked = sampleShapes.filter((shape) => thicker(shape, 0));
  expect(checked.length).toBe(4);
  for (const shape of checked) {
    const d = 1e-3;
    const [out, inn] = [volumeProperties(thicker(shape, d)!), volumeProperties(thicker(shape, -d)!)];
    const skin = surfaceProperties(shape);
    // Error of the difference d² · V‴ and rounding 1e-16 · V/d, both under 1e-8 of the area.
    expect((out.volumeMm3 - inn.volumeMm3) / (2 * d) / skin.areaMm2).toBeCloseTo(1, 8);
    for (const key of ['xx', 'yy', 'zz'] as const) {
      const slope = (out.inertiaAboutCentroidMm5[key] - inn.inertiaAboutCentroidMm5[key]) / (2 * d);
      expect(slope / skin.inertiaAboutCentroidMm4[key]).toBeCloseTo(1, 7);
    }
  }
});

describe('density and weight', () => {
  test('1 g/ml fills a litre with a kilogram; 1 g/m² covers a square metre with a gram', () => {
    expect(solidMass({ kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 }, 1).massG).toBeCloseTo(
      1000,
      9,
    );
    const sheet: Shape = { kind: 'box', lengthMm: 1000, widthMm: 500, heightMm: 1e-9 };
    expect(shellMass(sheet, 1).massG).toBeCloseTo(1, 9);
  });

  test.each(sampleShapes.map((shape) => [nameOf(shape), shape] as const))(
    '%s: of a density and of the mass that gives',
    (_, shape) => {
      const solid = solidMass(shape, 0.7);
      expectMass(solidOfMass(shape, solid.massG), solid, 1e-14);
      const shell = shellMass(shape, 80);
      expectMass(shellOfMass(shape, shell.massG), shell, 1e-14);
    },
  );

  test('no density, no mass; no volume, no place for a mass', () => {
    const flat: Shape = { kind: 'box', lengthMm: 10, widthMm: 10, heightMm: 0 };
    expect(solidMass(flat, 1).cgMm).toBeNull();
    expect(volumeProperties(flat).centroidMm).toBeNull();
    expect(solidMass({ kind: 'sphere', diameterMm: 10 }, 0).cgMm).toBeNull();
    expect(() => solidOfMass(flat, 5)).toThrow('a box of no volume cannot hold 5 g');
    expect(() => shellOfMass({ kind: 'sphere', diameterMm: 0 }, 5)).toThrow(
      'a sphere of no area cannot hold 5 g',
    );
    expect(shellOfMass(flat, 5).massG).toBe(5);
  });
});

test('Gauss–Legendre of n points integrates xᵏ on 0…1 exactly up to k = 2n − 1, and no further', () => {
  for (const n of [1, 2, 3, 5, 6, 12]) {
    const rule = gaussRule(n);
    const integral = (k: number) => rule.reduce((sum, { at, weight }) => sum + weight * at ** k, 0);
    for (let k = 0; k < 2 * n; k += 1) expect(integral(k) * (k + 1)).toBeCloseTo(1, 13);
    if (n < 8) expect(Math.abs(integral(2 * n) * (2 * n + 1) - 1)).toBeGreaterThan(1e-8);
  }
  // Abramowitz & Stegun, table 25.4, n = 3: ±√0.6 with weights 5/9, 8/9, 5/9.
  expect(gaussRule(3).map(({ at }) => 2 * at - 1)[2]).toBeCloseTo(Math.sqrt(0.6), 15);
  expect(gaussRule(3).map(({ weight }) => 2 * weight)[1]).toBeCloseTo(8 / 9, 15);
});
