import { expect, test } from 'vitest';
import { neutralPointDoubts } from '../../../src/engine/wing/neutralPointDoubt';
import { doubtWords, noteWords } from '../../../src/model/words/neutralPointWords';

const length = (mm: number) => `${mm.toFixed(1)} mm`;

test('every doubt says what it is, which way it moves the point, how much, and where the figure is from', () => {
  const all = [true, false].flatMap((fuselageCounted) =>
    (['propeller', 'turbine'] as const).flatMap((power) =>
      neutralPointDoubts({
        macMm: 250,
        refinedByMm: 0.2,
        seamsMm: 1,
        fuselageShiftMm: -6,
        fuselageCounted,
        otherHulls: 1,
        power,
        tailPartMm: 60,
      }),
    ),
  );
  for (const doubt of all) {
    const words = doubtWords(doubt, length);
    expect(words).toMatch(/forward|aft|[Ee]ither way|one way/);
    // 95 % of the cases: two standard deviations, as every other ± that is shown (GUM, k = 2).
    expect(words).toContain(`± ${length(2 * doubt.sigmaMm)}, ${doubt.basis}.`);
    if (doubt.moves === 'forward') expect(words).toContain('forward');
  }
});

test('gaps are said with their width and how they were taken', () => {
  const gap = { about: 'gap', name: 'Wing', withName: null, gapMm: 120 } as const;
  expect(noteWords({ ...gap, joined: 0 }, length)).toBe(
    'The halves of Wing are 120.0 mm apart: computed as an open gap.',
  );
  expect(noteWords({ ...gap, withName: 'Wing tip', joined: 0.4 }, length)).toBe(
    'Wing and Wing tip are 120.0 mm apart: counted as joined to 40 %.',
  );
});
