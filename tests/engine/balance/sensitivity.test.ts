import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cgShiftForFuel,
  cgShiftForMass,
  cgShiftForMove,
  sensitivities,
} from '../../../src/engine/balance/sensitivity';
import type { LiquidMoment } from '../../../src/engine/balance/travel';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { massMove, massPoint, massSum, noMass } from '../../../src/engine/mass/massProperties';
import { between } from '../../between';

const place = fc.tuple(
  ...([0, 1, 2].map(() => between(-900, 900)) as [
    fc.Arbitrary<number>,
    fc.Arbitrary<number>,
    fc.Arbitrary<number>,
  ]),
);
const models = fc.array(
  fc.tuple(between(5, 4000), place).map(([massG, at]) => massPoint(massG, at)),
  { minLength: 1, maxLength: 12 },
);

function expectShift(shift: Vec3 | null, from: Vec3 | null, to: Vec3 | null) {
  for (const axis of [0, 1, 2] as const) {
    expect(Math.abs(shift![axis] - (to![axis] - from![axis]))).toBeLessThan(1e-9);
  }
}

describe('sensitivity', () => {
  test('is what summing everything anew gives', () => {
    fc.assert(
      fc.property(models, place, (bodies, move) => {
        const total = massSum(bodies);
        const listed = sensitivities(
          total,
          bodies.map((mass, k) => ({ id: `${k}`, mass })),
        );
        bodies.forEach((body, k) => {
          const others = bodies.toSpliced(k, 1);
          const heavier = massSum([...others, massPoint(body.massG + 10, body.cgMm!)]);
          expectShift(listed[k]!.per10GMm, total.cgMm, heavier.cgMm);
          const lighter = massSum([...others, massPoint(body.massG - 4, body.cgMm!)]);
          expectShift(cgShiftForMass(total, body.cgMm, -4), total.cgMm, lighter.cgMm);
          const moved = massSum([...others, massMove(body, move)]);
          expectShift(cgShiftForMove(total, body.massG, move), total.cgMm, moved.cgMm);
          const tenAft = massSum([...others, massMove(body, [10, 0, 0])]);
          expectShift([listed[k]!.per10MmMm, 0, 0], total.cgMm, tenAft.cgMm);
        });
      }),
    );
  });

  /** Shift rule w/W = ΔCG/d (FAA-H-8083-25, weight and balance): 100 g of 2000 moved by 10 mm is 0.5 mm. */
  test('the handbook’s shift rule', () => {
    const bodies = [massPoint(100, [0, 0, 0]), massPoint(1900, [500, 0, 0])];
    const [pack] = sensitivities(
      massSum(bodies),
      bodies.map((mass) => ({ id: 'x', mass })),
    );
    expect(pack!.per10MmMm).toBeCloseTo(0.5, 12);
  });

  test('without a CG there is none', () => {
    expect(sensitivities(noMass, [])).toEqual([]);
    expect(cgShiftForMove(noMass, 0, [1, 1, 1])).toBeNull();
    expect(cgShiftForMass(massPoint(10, [0, 0, 0]), [5, 0, 0], -10)).toBeNull();
    expect(cgShiftForMass(massPoint(10, [0, 0, 0]), null, 10)).toBeNull();
  });
});

describe('sensitivity to fuel', () => {
  const fixed = massPoint(3000, [400, 0, 0]);
  const liquidAt = (fuelFraction: number): LiquidMoment => {
    const massG = 1250 * 0.8 * fuelFraction;
    return { fuelFraction, massG, momentGmm: [massG * 600, 0, massG * 40] };
  };

  test('100 ml from the state shown, in a sum by hand', () => {
    const drawn = cgShiftForFuel({ fixed, liquidAt, usableMl: 1250, fuelFraction: 0.5 })!;
    // 500 g left, then 420 g.
    expect(drawn.drawnMl).toBe(100);
    expect(drawn.shiftMm[0]).toBeCloseTo((1_200_000 + 420 * 600) / 3420 - (1_200_000 + 500 * 600) / 3500, 9);
    expect(drawn.shiftMm[2]).toBeCloseTo((420 * 40) / 3420 - (500 * 40) / 3500, 9);
  });

  test('the last of it, and none', () => {
    const last = cgShiftForFuel({ fixed, liquidAt, usableMl: 1250, fuelFraction: 0.04 })!;
    expect(last.drawnMl).toBeCloseTo(50, 9);
    expect(last.shiftMm[0]).toBeCloseTo(400 - (1_200_000 + 40 * 600) / 3040, 9);
    expect(cgShiftForFuel({ fixed, liquidAt, usableMl: 1250, fuelFraction: 0 })).toBeNull();
    expect(cgShiftForFuel({ fixed, liquidAt, usableMl: 0, fuelFraction: 1 })).toBeNull();
  });
});
