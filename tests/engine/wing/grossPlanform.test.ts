import { describe, expect, test } from 'vitest';
import { grossPlanform } from '../../../src/engine/wing/grossPlanform';
import { planform } from '../../../src/engine/wing/planform';
import type { LiftingSurface } from '../../../src/engine/wing/types';
import { flatPanel, surfaceOf } from './builders';

const carried = (share: number) => ({ wing: share });
const gross = (surfaces: readonly LiftingSurface[], carries = {}) => {
  const found = grossPlanform('wing', surfaces, carries);
  if (!found) throw new Error('expected a planform');
  return found;
};

describe('the wing as on plans', () => {
  // A delta: root chord 800 at buttline 80, pointed tip at 680. Through the body it has a square of 80 by 800 more a side.
  const delta = surfaceOf([flatPanel({ spanMm: 600, rootChordMm: 800, tipChordMm: 0, sweepMm: 800 })], {
    rootMm: [100, 80, 0],
  });

  test('through the body: the integrals of a square and a triangle', () => {
    const found = gross([delta], carried(1));
    const [square, triangle] = [80 * 800, (600 * 800) / 2];
    // triangle: MAC 2/3 of the root chord, LEMAC a third of the sweep aft of the root
    const macMm = (square * 800 + triangle * (2 / 3) * 800) / (square + triangle);
    const lemacMm = (square * 100 + triangle * (100 + 800 / 3)) / (square + triangle);
    expect(found.areaMm2).toBeCloseTo(2 * (square + triangle), 6);
    expect(found.macMm).toBeCloseTo(macMm, 9);
    expect(found.lemacMm).toBeCloseTo(lemacMm, 9);
    expect(found.spanMm).toBeCloseTo(1360, 9);
  });

  test('exposed where nothing is carried, and smooth between', () => {
    expect(gross([delta], carried(0)).macMm).toBeCloseTo(planform(delta).macMm, 9);
    const macs = Array.from({ length: 101 }, (_, k) => gross([delta], carried(k / 100)).macMm);
    macs.slice(1).forEach((mac, k) => {
      expect(mac).toBeGreaterThan(macs[k] ?? 0);
      expect(mac - (macs[k] ?? 0)).toBeLessThan(2);
    });
  });

  test('a wing in two pieces has the planform of the whole; a winglet does not count', () => {
    const whole = surfaceOf([
      flatPanel({ spanMm: 400, tipChordMm: 180, sweepMm: 20 }),
      flatPanel({ spanMm: 500, rootChordMm: 180, tipChordMm: 100, sweepMm: 90 }),
    ]);
    const inner = surfaceOf([whole.panels[0] ?? flatPanel({})]);
    const outer = surfaceOf([whole.panels[1] ?? flatPanel({})], { id: 'outer', rootMm: [20, 400, 0] });
    const winglet = surfaceOf([flatPanel({ spanMm: 150, rootChordMm: 100, tipChordMm: 60 })], {
      id: 'winglet',
      rootMm: [110, 900, 0],
      cantDeg: 80,
    });
    const expected = planform(whole);
    for (const surfaces of [[whole], [inner, outer], [outer, inner, winglet]]) {
      const found = gross(surfaces);
      for (const figure of [
        'areaMm2',
        'spanMm',
        'macMm',
        'lemacMm',
        'macButtlineMm',
        'meanChordMm',
      ] as const) {
        expect(found[figure] / expected[figure]).toBeCloseTo(1, 9);
      }
    }
  });
});
