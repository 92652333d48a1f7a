import fc from 'fast-check';
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { poseRotation } from '../../../src/engine/geometry/rotation';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { cross, dot, length } from '../../../src/engine/geometry/vec3';
import { massPoint, noMass } from '../../../src/engine/mass/massProperties';
import {
  principalMoments,
  radiiOfGyration,
  triangleInequalityFault,
} from '../../../src/engine/mass/principal';
import { diagonalTensor, tensorRotate } from '../../../src/engine/mass/tensor';
import type { Tensor } from '../../../src/engine/mass/types';
import { solidOfMass } from '../../../src/engine/mass/volumeProperties';
import { between } from '../../between';

const entry = between(-1e6, 1e6);
const tensors = fc.record<Tensor>({ xx: entry, yy: entry, zz: entry, xy: entry, xz: entry, yz: entry });

/** In thousandths: the other routine's search for a zero falls off its array on denormal numbers. */
const milli = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((n) => n / 1000);
const milliTensors = fc.record<Tensor>({ xx: milli, yy: milli, zz: milli, xy: milli, xz: milli, yz: milli });

const product = (t: Tensor, [x, y, z]: Vec3): Vec3 => [
  t.xx * x + t.xy * y + t.xz * z,
  t.xy * x + t.yy * y + t.yz * z,
  t.xz * x + t.yz * y + t.zz * z,
];

function expectPrincipal(t: Tensor): void {
  const { momentsGmm2, axes } = principalMoments(t);
  const size = Math.max(...Object.values(t).map(Math.abs));
  expect(momentsGmm2[0]).toBeLessThanOrEqual(momentsGmm2[1]);
  expect(momentsGmm2[1]).toBeLessThanOrEqual(momentsGmm2[2]);
  axes.forEach((axis, i) => {
    expect(length(axis)).toBeCloseTo(1, 12);
    const image = product(t, axis);
    for (const n of [0, 1, 2] as const) {
      expect(Math.abs(image[n] - momentsGmm2[i]! * axis[n])).toBeLessThanOrEqual(1e-14 * 50 * size);
    }
  });
  expect(dot(cross(axes[0], axes[1]), axes[2])).toBeCloseTo(1, 12);
  // The first two point so that their largest component is positive.
  for (const axis of axes.slice(0, 2)) expect(Math.max(...axis)).toBe(Math.max(...axis.map(Math.abs)));
}

describe('principal moments and axes', () => {
  test('of any symmetric tensor: T v = λ v, unit, right-handed, in rising order', () => {
    fc.assert(fc.property(tensors, expectPrincipal), { numRuns: 500 });
  });

  test('agree with a general eigenvalue routine', () => {
    fc.assert(
      fc.property(milliTensors, (t) => {
        const size = Math.max(...Object.values(t).map(Math.abs));
        const matrix = new Matrix([
          [t.xx, t.xy, t.xz],
          [t.xy, t.yy, t.yz],
          [t.xz, t.yz, t.zz],
        ]);
        const theirs = new EigenvalueDecomposition(matrix, {
          assumeSymmetric: true,
        }).realEigenvalues.toSorted((a, b) => a - b);
        const ours = principalMoments(t).momentsGmm2;
        theirs.forEach((value, i) => {
          expect(Math.abs(value - ours[i]!)).toBeLessThanOrEqual(1e-12 * size);
        });
      }),
    );
  });

  test.each([
    ['round', 5, 5, 5],
    ['two alike', 3, 3, 8],
    ['nearly alike', 1, 1 + 1e-15, 1 + 2e-15],
    ['far apart', 1e-9, 1, 1e9],
    ['none', 0, 0, 0],
  ])('%s, at any angle', (_, a, b, c) => {
    for (const yawDeg of [0, 1e-7, 45, 90, 123.4]) {
      const r = poseRotation({ positionMm: [0, 0, 0], yawDeg, pitchDeg: 2 * yawDeg, rollDeg: -yawDeg });
      const turned = tensorRotate(diagonalTensor(a, b, c), r);
      expectPrincipal(turned);
      principalMoments(turned).momentsGmm2.forEach((moment, i) => {
        expect(Math.abs(moment - [a, b, c][i]!)).toBeLessThanOrEqual(1e-14 * c);
      });
    }
  });
});

test('radii of gyration: a thin rod of length l has l/√12 across and none along', () => {
  const rod = solidOfMass({ kind: 'cylinder', lengthMm: 600, diameterMm: 1e-4 }, 25);
  const [roll, pitch, yaw] = radiiOfGyration(rod)!;
  expect(roll).toBeLessThan(1e-4);
  expect(pitch).toBeCloseTo(600 / Math.sqrt(12), 9);
  expect(yaw).toBeCloseTo(600 / Math.sqrt(12), 9);
  expect(radiiOfGyration(noMass)).toBeNull();
  expect(radiiOfGyration(massPoint(3, [1, 1, 1]))).toEqual([0, 0, 0]);
});

describe('the triangle inequality', () => {
  test('a flat plate is the limit and passes, at any angle', () => {
    const r = poseRotation({ positionMm: [0, 0, 0], yawDeg: 33, pitchDeg: 71, rollDeg: -20 });
    expect(triangleInequalityFault(tensorRotate(diagonalTensor(1, 2, 3), r))).toBeNull();
  });

  test('beyond the limit fails, though no diagonal entry shows it', () => {
    const r = poseRotation({ positionMm: [0, 0, 0], yawDeg: 33, pitchDeg: 71, rollDeg: -20 });
    const turned = tensorRotate(diagonalTensor(1, 2, 3.3), r);
    expect(turned.xx + turned.yy).toBeGreaterThan(turned.zz);
    expect(triangleInequalityFault(turned)).toContain('more than the sum of the other two');
  });

  test('not a number', () => {
    expect(triangleInequalityFault(diagonalTensor(1, Number.NaN, 1))).toBe('An inertia is not a number.');
  });
});
