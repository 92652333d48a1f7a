import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calculatorFigures, calculatorSum } from '../../../src/model/words/calculatorSum';
import type { Working } from '../../../src/model/words/working';
import { between } from '../../between';

const metric = { gPerMass: 1, mmPerArm: 1, massPlaces: 0, armPlaces: 1 };
const inches = { gPerMass: 28.349523125, mmPerArm: 25.4, massPlaces: 2, armPlaces: 2 };

function workingOf(parts: readonly (readonly [number, number])[]): Working {
  const lines = parts.map(([massG, armMm], i) => ({ name: `${i}`, massG, armMm, momentGmm: massG * armMm }));
  const massG = parts.reduce((sum, [g]) => sum + g, 0);
  const momentGmm = lines.reduce((sum, line) => sum + line.momentGmm, 0);
  return { lines, massG, momentGmm, cgMm: massG > 0 ? momentGmm / massG : null };
}

test('by hand: 640 g at 152 mm and 478 g at 283 mm', () => {
  const sum = calculatorSum(
    workingOf([
      [640, 152],
      [478, 283],
    ]),
    metric,
  );
  expect(sum.lines.map(({ moment }) => moment)).toEqual([97280, 135274]);
  expect([sum.mass, sum.moment]).toEqual([1118, 232554]);
  expect(sum.cg).toBeCloseTo(208.0089, 4);
  expect(sum.places).toEqual({ mass: 0, arm: 1 });
});

test('halves that all round up take more decimals, so that the total still comes out', () => {
  const sum = calculatorSum(workingOf(Array.from({ length: 10 }, () => [1.5, 100] as const)), metric);
  expect(sum.places.mass).toBe(1);
  expect(sum.mass).toBe(15);
});

test('no mass gives no CG', () => {
  expect(calculatorSum(workingOf([]), metric)).toMatchObject({ mass: 0, moment: 0, cg: null });
});

describe('whoever adds up the printed figures gets the printed answer', () => {
  const part = fc.tuple(between(0.1, 4000), between(-900, 2500));
  test.each([
    ['mm and g', metric],
    ['inches and ounces', inches],
  ])('in %s', (_, units) => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 60 }), (parts) => {
        const working = workingOf(parts);
        const sum = calculatorSum(working, units);
        // With decimal text only, as it is printed.
        const printed = sum.lines.map(({ mass, arm }) => [
          Number(mass.toFixed(sum.places.mass)),
          Number(arm.toFixed(sum.places.arm)),
        ]);
        const mass = printed.reduce((total, [own = 0]) => total + own, 0);
        const moment = printed.reduce((total, [own = 0, arm = 0]) => total + own * arm, 0);
        expect(mass).toBeCloseTo(sum.mass, 6);
        expect(moment).toBeCloseTo(sum.moment, 3);
        const shown = (working.cgMm ?? 0) / units.mmPerArm;
        // A figure that lies on the edge between two roundings may read either way.
        const lasts = shown * 10 ** units.armPlaces;
        fc.pre(Math.abs(lasts - Math.floor(lasts) - 0.5) > 1e-4);
        // Half of the last decimal shown, and a rounding of its own.
        expect(Math.abs(moment / mass - shown)).toBeLessThan(10 ** -units.armPlaces * 1.001);
        // Adding 0 takes the sign off a −0.
        expect(Number((sum.cg ?? 0).toFixed(units.armPlaces)) + 0).toBe(
          Number(shown.toFixed(units.armPlaces)) + 0,
        );
      }),
    );
  });
});

test('a margin by hand: (805.2 − 770.4) ÷ 316.1 of the chord is 11.0 %', () => {
  const { figures, result } = calculatorFigures(
    [805.2, 770.4, 316.1],
    ([np = 0, cg = 0, mac = 1]) => ((np - cg) / mac) * 100,
    { figures: 1, result: 1 },
  );
  expect(figures).toEqual([805.2, 770.4, 316.1]);
  expect(result.toFixed(1)).toBe('11.0');
});
