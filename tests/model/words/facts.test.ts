import { describe, expect, test } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Certainty } from '../../../src/model/balance/certainty';
import type { Aircraft } from '../../../src/model/document/types';
import type { FitProblem } from '../../../src/model/fit/fitProblem';
import { judge } from '../../../src/model/judgement/judge';
import type { Known } from '../../../src/model/judgement/types';
import { changeStability } from '../../../src/model/stability/stability';
import { type FactKey, type ShownMass, verdictFacts } from '../../../src/model/words/verdictFacts';
import { aircraftOf, boxPart } from '../aircraft';
import { estimateAt } from '../judgement/estimate';

/** Each figure of the answer: its value, what it is held against, and how it looks. */

const CHECKED: Known = {
  ...{ down: LEVEL, estimate: null, loads: { status: 'found', envelope: null }, fit: [], certainty: null },
};

/** 1 kg at one station between limits of 500 and 540, and 2 mm to either side. */
const at = (stationMm: number, buttlineMm = 0): Aircraft => ({
  ...aircraftOf([], [boxPart('pack', 1000, [stationMm, buttlineMm, 0])]),
  referencePoints: [],
  lateralToleranceMm: 2,
  targetBand: { by: 'station', forwardMm: 500, aftMm: 540 },
});

function fact(
  key: FactKey,
  aircraft: Aircraft,
  known: Partial<Known> = {},
  mass: ShownMass | null = null,
  say = sayIn('metric', null),
) {
  const found = verdictFacts(aircraft, judge(aircraft, { ...CHECKED, ...known }), say, mass);
  const match = found.find((each) => each.key === key);
  return match && `${match.value}; ${match.note}; ${match.tone}`.replace(/\u202f/g, ' ');
}

test('they are read in one order', () => {
  const certainty = { probability: 0.97 } as Certainty;
  const keys = verdictFacts(at(520), judge(at(520), { ...CHECKED, certainty }), sayIn('metric', null), {
    massG: 1000,
    plusMinusG: 3.2,
  }).map(({ key }) => key);
  expect(keys).toEqual(['cg-full', 'band', 'margin', 'sideways', 'fit', 'mass', 'sure']);
});

describe('CG', () => {
  test.each([
    [505.96, '506.0 mm; 5.9 mm behind the forward limit; good'],
    [532.04, '532.0 mm; 7.9 mm short of the aft limit; good'],
    // In the middle of them the forward one is named.
    [520, '520.0 mm; 20 mm behind the forward limit; good'],
    [542.04, '542.0 mm; 2.1 mm aft of the band; danger'],
    // Forward by up to a quarter of its width is a caution.
    [495, '495.0 mm; 5.0 mm ahead of the band; caution'],
    [480, '480.0 mm; 20 mm ahead of the band; bad'],
  ])('at %d', (stationMm, words) => {
    expect(fact('cg-full', at(stationMm))).toBe(words);
  });

  test('without a band it is held against nothing, and is not called good', () => {
    const { targetBand: _, ...unbanded } = at(520);
    expect(fact('cg-full', { ...unbanded, targetBand: null })).toBe('520.0 mm; ; unknown');
  });

  test('a state of the stand is shown and not judged', () => {
    const aircraft: Aircraft = {
      ...at(560),
      switches: [
        {
          id: 'lid',
          name: 'Lid',
          positions: [
            { id: 'on', name: 'on' },
            { id: 'off', name: 'off', without: ['pack'], onStand: true },
          ],
        },
      ],
      parts: [boxPart('pack', 1000, [560, 0, 0]), boxPart('rest', 1000, [600, 0, 0])],
    };
    expect(fact('cg-full', aircraft, { positions: { lid: 'off' } })).toBe(
      '600.0 mm; on the stand, not judged; unknown',
    );
    expect(fact('cg-full', aircraft)).toBe('580.0 mm; 40 mm aft of the band; danger');
  });
});

describe('band', () => {
  test('none, as stated, in % MAC, from a named point, in inches', () => {
    expect(fact('band', { ...at(520), targetBand: null })).toBe('none; ; unknown');
    expect(fact('band', at(520))).toBe('500.0–540.0 mm; from the datum, stated; good');
    const named: Aircraft = {
      ...at(520),
      referencePoints: [{ id: 'root', name: 'Wing root', positionMm: [450, 0, 0] }],
    };
    const fromRoot = sayIn('metric', named.referencePoints[0]!);
    expect(fact('band', named, {}, null, fromRoot)).toBe('50.0–90.0 mm; from Wing root, stated; good');
    // 500/25.4 and 540/25.4.
    expect(fact('band', at(520), {}, null, sayIn('inch-ounce', null))).toBe(
      '19.69–21.26 in; from the datum, stated; good',
    );
  });

  test('one of the margin is an estimate: 10 to 30 mm ahead of 550', () => {
    const wanted = changeStability(
      { ...at(530), targetBand: null },
      { marginRange: { minPct: 5, maxPct: 15 } },
    );
    expect(fact('band', wanted, { estimate: estimateAt(550) })).toBe(
      '520.0–540.0 mm; from the datum, an estimate; good',
    );
  });

  test('one that reaches behind the neutral point is not to be trusted', () => {
    expect(fact('band', at(505), { estimate: estimateAt(539.4) })).toMatch(/; caution$/);
    expect(fact('band', at(505), { estimate: estimateAt(539.6) })).toMatch(/; good$/);
  });
});

describe('margin, of a MAC of 200 mm', () => {
  test('not known, and why', () => {
    expect(fact('margin', at(520))).toBe('not known; no estimate; unknown');
  });

  test('what is asked for is told from what is usual, and too much of it is a caution as too little is', () => {
    const asking = (minPct: number, maxPct: number) =>
      changeStability(at(520), { marginRange: { minPct, maxPct } });
    // 544 − 520 is 12 % of 200.
    const known = { estimate: estimateAt(544) };
    expect(fact('margin', asking(5, 15), known)).toBe('12 % MAC; at least 5 % is wanted; good');
    expect(fact('margin', asking(5, 11), known)).toBe('12 % MAC; at least 5 % is wanted; caution');
    expect(fact('margin', asking(13, 20), known)).toBe('12 % MAC; at least 13 % is wanted; caution');
    // On the wish itself it is kept.
    expect(fact('margin', asking(12, 20), known)).toMatch(/; good$/);
    expect(fact('margin', asking(5, 12), known)).toMatch(/; good$/);
  });
});

describe('sideways', () => {
  test.each([
    [0, 'level; at most 2.0 mm; good'],
    [1.5, '1.5 mm right; at most 2.0 mm; good'],
    [-1.51, '1.6 mm left; at most 2.0 mm; good'],
    [2.01, '2.1 mm right; at most 2.0 mm; caution'],
    // More than five times what is wanted.
    [10.01, '11 mm right; at most 2.0 mm; bad'],
    [-10, '10 mm left; at most 2.0 mm; caution'],
  ])('%d mm', (offMm, words) => {
    expect(fact('sideways', at(520, offMm))).toBe(words);
  });

  test('without a CG it is not known', () => {
    expect(fact('sideways', aircraftOf([]))).toBe('not known; ; unknown');
  });
});

describe('the worst load state', () => {
  const two: Aircraft = {
    ...at(520),
    parts: [boxPart('pack', 1000, [520, 0, 0]), boxPart('camera', 1000, [500, 0, 0])],
    switches: [
      {
        id: 'camera-aboard',
        name: 'Camera',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['camera'] },
        ],
      },
    ],
  };
  test('is not named where there is one only, nor where not all were looked at', () => {
    expect(fact('worst', at(520))).toBeUndefined();
    const envelope = {
      ...Object.fromEntries(
        ['foremost', 'aftmost', 'leftmost', 'rightmost'].map((end) => [
          end,
          { cgMm: [520, 0, 0], massG: 1000, fuelFraction: 1, positions: {}, withinMm: null },
        ]),
      ),
    } as unknown as Extract<Known['loads'], { status: 'found' }>['envelope'];
    expect(fact('worst', two, { loads: { status: 'found', envelope } })).toBe('not checked yet; ; unknown');
  });

  test('is the one nearest to a limit: with the camera (520 + 500)/2 = 510, without it 520', () => {
    expect(fact('worst', two)).toBe('; 10 mm behind the forward limit; good');
    const shifted: Aircraft = { ...two, targetBand: { by: 'station', forwardMm: 460, aftMm: 525 } };
    expect(fact('worst', shifted)).toBe('camera off; 5.0 mm short of the aft limit; good');
  });
});

describe('fit, mass and certainty', () => {
  const problem = (severity: 'bad' | 'caution') =>
    ({
      kind: 'overlap',
      severity,
      parties: [{ id: 'pack', name: 'Pack' }],
      byMm: 3,
      states: [],
    }) as unknown as FitProblem;
  test.each([
    [null, 'not checked yet; ; unknown'],
    [[], 'all fits; ; good'],
    [[problem('caution')], '1 clash; ; caution'],
    [[problem('caution'), problem('bad')], '2 clashes; ; bad'],
  ])('fit of %o', (fit, words) => {
    expect(fact('fit', at(520), { fit })).toBe(words);
  });

  test('a mass has its ±, rounded up to the gram, and is not known where it is no figure', () => {
    const massG = 6847.2;
    expect(fact('mass', at(520), {}, { massG, plusMinusG: 3.2 })).toBe('6847 g; ± 4 g; good');
    expect(fact('mass', at(520), {}, { massG, plusMinusG: null })).toBe('6847 g; ; good');
    expect(fact('mass', at(520), {}, { massG: Number.NaN, plusMinusG: null })).toBe('not known; ; unknown');
    expect(fact('mass', at(520))).toBeUndefined();
  });

  test.each([
    [0.97, '97 % sure that the CG is in the band.; ; good'],
    [0.9, '90 % sure that the CG is in the band.; ; good'],
    [0.89, '89 % sure that the CG is in the band.; ; caution'],
    [0.996, 'More than 99 % sure that the CG is in the band.; ; good'],
    [0.004, 'Less than 1 % sure that the CG is in the band.; ; caution'],
  ])('sure to %d', (probability, words) => {
    expect(fact('sure', at(520), { certainty: { probability } as Certainty })).toBe(words);
  });

  test('how sure is not said where nobody knows', () => {
    expect(fact('sure', at(520), { certainty: { probability: null } as Certainty })).toBeUndefined();
  });
});
