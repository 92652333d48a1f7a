import { describe, expect, test } from 'vitest';
import { bodyCarry, rootCarry } from '../../../src/engine/wing/bodyCarry';
import { flatPanel, surfaceOf } from './builders';

/** A tube 100 mm wide and 80 mm high from station 0 to 1000. */
const tube = [0, 1000].map((stationMm) => ({ stationMm, widthMm: 100, heightMm: 80, waterlineMm: 0 }));
const rootAt = (x: number, y: number, z: number, cantDeg = 0) =>
  surfaceOf([flatPanel({})], { rootMm: [x, y, z], cantDeg });

describe('how far a root is carried through the body', () => {
  test('wholly at its side, with the fillet; not at all well clear of it, above it, ahead of it, or as a fin', () => {
    expect(bodyCarry(rootAt(300, 50, 0), tube)).toBe(1);
    expect(bodyCarry(rootAt(300, 60, 40), tube)).toBe(1);
    expect(bodyCarry(rootAt(300, 130, 0), tube)).toBe(0);
    expect(bodyCarry(rootAt(300, 50, 105), tube)).toBe(0);
    expect(bodyCarry(rootAt(-300, 50, 0), tube)).toBe(0);
    expect(bodyCarry(rootAt(300, 50, 0, 90), tube)).toBe(0);
    expect(bodyCarry(rootAt(300, 50, 0), [])).toBe(0);
  });

  test('in part between, never by a jump, whichever way the root is slid', () => {
    const slides = [
      (t: number) => rootAt(300, 40 + 90 * t, 0),
      (t: number) => rootAt(300, 50, 105 * t),
      (t: number) => rootAt(600 + 500 * t, 50, 0),
      (t: number) => rootAt(300, 50, 0, 90 * t),
    ];
    for (const slide of slides) {
      const values = Array.from({ length: 1001 }, (_, k) => bodyCarry(slide(k / 1000), tube));
      expect(values[0]).toBe(1);
      expect(values[1000]).toBe(0);
      // At its steepest the cubic has 1.5 times its mean slope, over at least a sixth of each slide.
      values.slice(1).forEach((value, k) => {
        expect(Math.abs(value - (values[k] ?? 0))).toBeLessThan(0.01);
      });
    }
  });

  test('what is said goes before the geometry; two roots that touch need no body', () => {
    expect(rootCarry(rootAt(300, 50, 0), tube, 'no')).toBe(0);
    expect(rootCarry(rootAt(300, 400, 0), tube, 'yes')).toBe(1);
    expect(rootCarry(rootAt(300, 50, 0), tube, 'byGeometry')).toBe(1);
    expect(rootCarry(rootAt(300, 1, 0), [], 'byGeometry')).toBe(1);
    expect(rootCarry(rootAt(300, 60, 0), [], 'byGeometry')).toBe(0);
  });
});
