import { describe, expect, test } from 'vitest';
import { graduation, type RuleRun, ruleNumerals } from '../../../src/scene/mat/graduation';

const run: RuleRun = {
  fromMm: 150,
  toMm: 960,
  zeroMm: 150,
  atMm: -240,
  mirrored: false,
  every: 1,
  figureMm: 40,
};

describe('the printed rule', () => {
  test('a figure stands as far from its zero as it says, in mm', () => {
    const figures = ruleNumerals(run, 'metric');
    expect(figures.map(({ text }) => text)).toEqual([
      '0',
      '100',
      '200',
      '300',
      '400',
      '500',
      '600',
      '700',
      '800',
    ]);
    for (const { text, at } of figures) expect(at[0] - 150).toBeCloseTo(Number(text), 9);
  });

  test('and in inches, 25.4 mm each', () => {
    const figures = ruleNumerals(run, 'inch-ounce');
    expect(figures.length).toBeGreaterThan(5);
    for (const { text, at } of figures) expect((at[0] - 150) / 25.4).toBeCloseTo(Number(text), 9);
  });

  test('from ahead it reads the same to either side', () => {
    const figures = ruleNumerals({ ...run, fromMm: -300, toMm: 300, zeroMm: 0, mirrored: true }, 'metric');
    expect(figures.map(({ text }) => text)).toEqual(['300', '200', '100', '0', '100', '200', '300']);
  });

  test('fine lines divide the coarse ones evenly', () => {
    for (const units of ['metric', 'inch-ounce'] as const) {
      const [fine, middle, coarse] = graduation(units);
      expect(middle / fine).toBeCloseTo(Math.round(middle / fine), 9);
      expect(coarse / middle).toBeCloseTo(2, 9);
    }
  });
});
