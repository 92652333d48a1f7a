import { describe, expect, test } from 'vitest';
import { carryThrough } from '../../../src/engine/wing/carryThrough';
import { panelEdges } from '../../../src/engine/wing/panelEdges';
import { planform } from '../../../src/engine/wing/planform';
import { flatPanel, surfaceOf } from './builders';

const halves = surfaceOf([flatPanel({ spanMm: 450, rootTwistDeg: 2, dihedralDeg: 4 })], {
  rootMm: [100, 50, 30],
  cantDeg: 3,
});

describe('carrying a wing through the fuselage', () => {
  test('fills the gap level with the root chord and leaves the wing where it was', () => {
    const whole = carryThrough(halves, 60);
    const [centre, outer] = panelEdges(whole);
    expect(centre?.rootMm).toEqual([100, 0, 30]);
    [100, 50, 30].forEach((value, axis) => {
      expect(outer?.rootMm[axis]).toBeCloseTo(value, 9);
    });
    panelEdges(halves)[0]?.tipMm.forEach((value, axis) => {
      expect(outer?.tipMm[axis]).toBeCloseTo(value, 9);
    });
    expect(planform(whole).areaMm2).toBeCloseTo(planform(halves).areaMm2 + 2 * 50 * 200, 6);
    expect(planform(whole).spanMm).toBeCloseTo(planform(halves).spanMm, 9);
  });

  test('leaves alone what is far out, joined already, or a fin', () => {
    expect(carryThrough(halves, 40)).toBe(halves);
    const joined = surfaceOf([flatPanel({})]);
    expect(carryThrough(joined, 60)).toBe(joined);
    const fins = surfaceOf([flatPanel({})], { rootMm: [0, 50, 0], cantDeg: 80 });
    expect(carryThrough(fins, 60)).toBe(fins);
  });
});
