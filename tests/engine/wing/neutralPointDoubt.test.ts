import { expect, test } from 'vitest';
import {
  type DoubtInput,
  doubtSigmaMm,
  neutralPointDoubts,
} from '../../../src/engine/wing/neutralPointDoubt';

const input: DoubtInput = {
  macMm: 250,
  refinedByMm: 0.2,
  seamsMm: 0,
  fuselageShiftMm: -6,
  fuselageCounted: true,
  otherHulls: 0,
  power: 'propeller',
  tailPartMm: 60,
};
const causes = (given: Partial<DoubtInput>) =>
  neutralPointDoubts({ ...input, ...given }).map(({ cause }) => cause);

test('the whole ± is the root of the sum of squares, and no cause is above it', () => {
  const doubts = neutralPointDoubts(input);
  const whole = doubtSigmaMm(doubts);
  expect(whole ** 2).toBeCloseTo(
    doubts.reduce((sum, { sigmaMm }) => sum + sigmaMm ** 2, 0),
    9,
  );
  for (const { sigmaMm } of doubts) {
    expect(sigmaMm).toBeGreaterThan(0);
    expect(sigmaMm).toBeLessThanOrEqual(whole);
  }
});

test('each thing that is there or not has its line or not', () => {
  expect(causes({})).toContain('propeller');
  expect(causes({ power: 'turbine' })).toContain('intake');
  expect(causes({ power: 'none' })).not.toContain('propeller');
  expect(causes({ otherHulls: 2 })).toContain('otherHulls');
  expect(causes({ tailPartMm: 0 })).not.toContain('tailEfficiency');
  expect(causes({ seamsMm: 1 })).toContain('seams');
  expect(causes({ refinedByMm: null })).not.toContain('refinement');
});

test('a fuselage that is not counted weighs more than the doubt in one that is, and says which way', () => {
  const counted = neutralPointDoubts(input).find(({ cause }) => cause === 'fuselage');
  const missing = neutralPointDoubts({ ...input, fuselageCounted: false }).find(
    ({ cause }) => cause === 'fuselageNotCounted',
  );
  expect(counted?.moves).toBe('either');
  expect(missing?.moves).toBe('forward');
  expect(missing?.sigmaMm).toBeGreaterThan(6);
  expect(counted?.sigmaMm).toBeLessThan(6);
});
