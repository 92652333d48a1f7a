import { expect, test } from 'vitest';
import { bandBehindWords } from '../../../src/model/words/marginWords';
import { estimateAt } from '../judgement/estimate';

const length = (mm: number) => `${mm.toFixed(1)} mm`;
const estimate = estimateAt(500);
const stated = (aftMm: number) =>
  ({
    estimate,
    estimateFresh: true,
    bandFrom: 'stated',
    band: { forwardMm: 400, aftMm },
  }) as const;

test('a stated band that ends behind the neutral point at 500 mm is not to be trusted, and by how much', () => {
  expect(bandBehindWords(stated(512), length)).toMatch(/^The aft limit is 12\.0 mm behind .* do not trust/);
  expect(bandBehindWords(stated(488), length)).toBe('');
});

test('nothing is said of it by an estimate out of date, nor of a band that the estimate itself made', () => {
  expect(bandBehindWords({ ...stated(512), estimateFresh: false }, length)).toBe('');
  expect(bandBehindWords({ ...stated(512), estimate: null }, length)).toBe('');
  expect(bandBehindWords({ ...stated(512), bandFrom: 'estimate' }, length)).toBe('');
});
