import { expect } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import type { MassProperties, Tensor } from '../../../src/engine/mass/types';

export const tensorKeys = ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const;

/** All six entries, to a share of the trace. */
export function expectTensor(actual: Tensor, expected: Tensor, share: number): void {
  const size = Math.abs(expected.xx) + Math.abs(expected.yy) + Math.abs(expected.zz);
  for (const key of tensorKeys) {
    const message = `${key}: ${actual[key]} against ${expected[key]}`;
    expect(Math.abs(actual[key] - expected[key]), message).toBeLessThanOrEqual(share * size);
  }
}

export function expectPoint(actual: Vec3 | null, expected: Vec3 | null, tolerance: number): void {
  if (actual === null || expected === null) {
    expect(actual).toBe(expected);
    return;
  }
  for (let axis = 0; axis < 3; axis += 1) {
    expect(Math.abs(actual[axis]! - expected[axis]!), `${actual} against ${expected}`).toBeLessThanOrEqual(
      tolerance,
    );
  }
}

/** Mass and tensor to a share of themselves, CG to that share of `reachMm`. */
export function expectMass(
  actual: MassProperties,
  expected: MassProperties,
  share: number,
  reachMm = 1,
): void {
  expect(Math.abs(actual.massG - expected.massG)).toBeLessThanOrEqual(share * Math.abs(expected.massG));
  expectPoint(actual.cgMm, expected.cgMm, share * reachMm);
  expectTensor(actual.inertiaAboutCgGmm2, expected.inertiaAboutCgGmm2, share);
}
