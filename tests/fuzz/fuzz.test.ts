import { expect, test } from 'vitest';
import { seed } from '../seed';
import { fuzzEdits } from './fuzzEdits';
import { fuzzFiles } from './fuzzFiles';

// `npm run fuzz` looks longer, and elsewhere.

/** How long a step takes on a busy machine is for `npm run fuzz` to judge. */
const notSlow = ({ what }: { readonly what: string }) => what !== 'hang';

test('no spoilt file throws, makes a figure NaN or is repaired', () => {
  const { findings, read } = fuzzFiles(seed, 200);
  expect(findings.filter(notSlow)).toEqual([]);
  expect(read).toBeGreaterThan(10);
});

test('no row of edits throws, makes a figure NaN, cannot be read again or undone to the byte', () => {
  const { findings, taken, refused } = fuzzEdits(seed, 120);
  expect(findings.filter(notSlow)).toEqual([]);
  expect(taken).toBeGreaterThan(20);
  expect(refused).toBeGreaterThan(3);
});
