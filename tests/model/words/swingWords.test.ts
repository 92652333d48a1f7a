import { expect, test } from 'vitest';
import type { Swung } from '../../../src/model/weigh/swung';
import { inertiaFigure, swungFact, swungSentence } from '../../../src/model/words/swingWords';

/** Swung against listed, kg·m² as g·mm² × 10⁹. */
const swung = (is: number, listed: number, agrees: boolean): Swung =>
  ({
    axis: 'pitch',
    swung: { value: is * 1e9, sigma: 1e6 },
    listed: { value: listed * 1e9, sigma: 1e6 },
    agrees,
    confidence: 0.95,
  }) as unknown as Swung;

test('0.44 against 0.40 is 10 % more, 0.36 is 10 % less: of what is listed, and never rounded down', () => {
  expect(swungSentence(swung(0.44, 0.4, false))).toMatch(
    /in pitch at 95 % confidence: swung, it is 10 % more\.$/,
  );
  expect(swungSentence(swung(0.36, 0.4, false))).toMatch(/10 % less\.$/);
  expect(swungSentence(swung(0.4404, 0.4, true))).toMatch(/agree in pitch within 11 %/);
  expect(swungFact(swung(0.36, 0.4, false))).toBe('pitch 10 % less than listed');
  expect(swungFact(swung(0.44, 0.4, false))).toBe('pitch 10 % more than listed');
});

test('an inertia is shown in kg·m² with two standard uncertainties, rounded up', () => {
  const plain = inertiaFigure({ value: 0.412e9, sigma: 6.46e6 }).replaceAll('\u202f', ' ');
  expect(plain).toBe('0.4120 ± 0.0130 kg·m²');
});
