import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/engine/geometry/types';
import { massPoint, massSum } from '../../src/engine/mass/massProperties';

/**
 * Society of Flight Test Engineers Reference Handbook, 2013, §7.2: one weighing, nose 320, right 816,
 * left 810 lb, read three ways. Each scale is a weight at its wheel. Inches stand for millimetres.
 */
const weighed = (nose: Vec3, right: Vec3, left: Vec3) =>
  massSum([massPoint(320, nose), massPoint(816, right), massPoint(810, left)]);

describe('SFTE weighing', () => {
  test('W5, datum at the mains: 1946 lb, −24 000 in·lb, 12.33 in ahead', () => {
    const { massG, cgMm } = weighed([-75, 0, 0], [0, 0, 0], [0, 0, 0]);
    expect(massG).toBe(1946);
    expect(massG * cgMm![0]).toBeCloseTo(-24000, 8);
    expect(cgMm![0]).toBeCloseTo(-12.33, 2);
  });

  test('W6, datum at the spinner: 199 790 in·lb, 102.67 in', () => {
    const { massG, cgMm } = weighed([40, 0, 0], [115, 0, 0], [115, 0, 0]);
    expect(massG * cgMm![0]).toBeCloseTo(199790, 7);
    expect(cgMm![0]).toBeCloseTo(102.67, 2);
  });

  test('W7, lateral: +420 in·lb, 0.216 in to the right', () => {
    const { massG, cgMm } = weighed([0, 0, 0], [0, 70, 0], [0, -70, 0]);
    expect(massG * cgMm![1]).toBeCloseTo(420, 9);
    expect(cgMm![1]).toBeCloseTo(0.216, 3);
  });
});
