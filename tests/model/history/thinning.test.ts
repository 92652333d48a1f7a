import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MOST_UNNAMED, thinned } from '../../../src/model/history/thinning';

const HOUR = 3_600_000;
const NOW = Date.UTC(2026, 10, 28, 12);

const revisions = fc.array(
  fc.record({
    atMs: fc.integer({ min: NOW - 3000 * HOUR, max: NOW }),
    name: fc.option(fc.constant('flown'), { nil: null, freq: 10 }),
  }),
  { maxLength: 300 },
);
const latestFirst = <T extends { readonly atMs: number }>(list: readonly T[]) =>
  [...list].sort((a, b) => b.atMs - a.atMs);

test('what has a name stays, the last two hours stay, and nothing unnamed goes beyond the most', () => {
  fc.assert(
    fc.property(revisions, (some) => {
      const all = latestFirst(some);
      const stay = thinned(all, NOW);
      const staying = new Set(stay);
      for (const revision of all) if (revision.name !== null) expect(staying.has(revision)).toBe(true);
      const unnamed = stay.filter(({ name }) => name === null);
      expect(unnamed.length).toBeLessThanOrEqual(MOST_UNNAMED);
      const fresh = all.filter(({ atMs, name }) => name === null && NOW - atMs <= 2 * HOUR);
      for (const revision of fresh.slice(0, MOST_UNNAMED)) expect(staying.has(revision)).toBe(true);
      // Thinned again it is the same: nobody loses more by coming back.
      expect(thinned(stay, NOW)).toEqual(stay);
    }),
    { numRuns: 60 },
  );
});

test('of one a minute over two days there stay those of two hours, then one an hour, then one a day', () => {
  const minutes = Array.from({ length: 2 * 24 * 60 }, (_, n) => ({ atMs: NOW - n * 60_000, name: null }));
  const ages = thinned(minutes, NOW).map(({ atMs }) => (NOW - atMs) / HOUR);
  // The cap comes first: sixty within the first hour.
  expect(ages).toHaveLength(MOST_UNNAMED);
  const hourly = minutes.filter((_, n) => n % 60 === 0);
  // Noon: 0, 1 and 2 h old as they are; 3 to 24 h one an hour; then the latest of a day (UTC) that is over a day old.
  expect(thinned(hourly, NOW).map(({ atMs }) => (NOW - atMs) / HOUR)).toEqual([
    ...Array.from({ length: 25 }, (_, n) => n),
    25,
    37,
  ]);
});
