import { describe, expect, test } from 'vitest';
import { raisedLeg, swingOf } from '../../../src/model/airframe/retract';
import type { Leg } from '../../../src/model/document/types';

const leg = (axis: [number, number, number], angleDeg: number): Leg => ({
  id: 'leg',
  kind: 'leg',
  name: 'Leg',
  sides: 'both',
  topMm: [800, 200, -50],
  axleMm: [800, 200, -250],
  strutDiameterMm: 8,
  strutMassG: 100,
  wheelDiameterMm: 80,
  wheelWidthMm: 25,
  wheelMassG: 60,
  retract: { axis, angleDeg },
});

describe('a leg of 200 mm that hangs straight down', () => {
  test.each([
    ['forward', [0, 1, 0], [600, 200, -50]],
    ['aft', [0, -2, 0], [1000, 200, -50]],
    ['inward', [-1, 0, 0], [800, 0, -50]],
    ['outward', [3, 0, 0], [800, 400, -50]],
  ] as const)('swings %s through a right angle', (way, axis, axle) => {
    const down = leg([...axis], 90);
    raisedLeg(down).axleMm.forEach((mm, i) => {
      expect(mm).toBeCloseTo(axle[i]!, 9);
    });
    expect(swingOf(down)).toBe(way);
  });

  test('the hinge line does not move, nor does the length of the leg', () => {
    const up = raisedLeg(leg([1, 2, -0.5], 73));
    expect(up.topMm).toEqual([800, 200, -50]);
    expect(Math.hypot(...up.axleMm.map((mm, i) => mm - up.topMm[i]!))).toBeCloseTo(200, 9);
  });

  test('the wheel turns with it: swung inward, its spindle stands upright', () => {
    expect(Math.abs(raisedLeg(leg([-1, 0, 0], 90)).spindle![2])).toBeCloseTo(1, 12);
  });

  test('the same leg is raised once, and one that does not retract is left alone', () => {
    const own = leg([0, 1, 0], 90);
    expect(raisedLeg(own)).toBe(raisedLeg(own));
    const { retract: _none, ...fixed } = own;
    expect(raisedLeg(fixed)).toBe(fixed);
    expect(swingOf(fixed)).toBe('fixed');
  });
});
