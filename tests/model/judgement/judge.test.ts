import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft, Part } from '../../../src/model/document/types';
import { judge } from '../../../src/model/judgement/judge';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import {
  compareSeverity,
  type FindingKind,
  type Known,
  SEVERITIES,
  type Severity,
} from '../../../src/model/judgement/types';
import { changeStability } from '../../../src/model/stability/stability';
import { aircraftOf, boxPart, weightlessWing } from '../aircraft';
import { estimateAt } from './estimate';

/** A thing of 1000 g with its CG at a place, and the band from 500 to 540 mm. */
const at = (stationMm: number, buttlineMm = 0, more: readonly Part[] = []): Aircraft => ({
  ...aircraftOf([], [boxPart('pack', 1000, [stationMm, buttlineMm, 0]), ...more]),
  targetBand: { by: 'station', forwardMm: 500, aftMm: 540 },
  lateralToleranceMm: 2,
});
const unbanded = (aircraft: Aircraft): Aircraft => ({ ...aircraft, targetBand: null });

const CHECKED: Known = {
  down: LEVEL,
  estimate: null,
  loads: { status: 'found', envelope: null },
  fit: [],
  certainty: null,
};
const judged = (aircraft: Aircraft, known: Partial<Known> = {}) => judge(aircraft, { ...CHECKED, ...known });
const kinds = (aircraft: Aircraft, known: Partial<Known> = {}): FindingKind[] =>
  judged(aircraft, known).findings.map(({ kind }) => kind);

test('aft is the dangerous side: nothing is worse than tail-heavy', () => {
  expect(SEVERITIES).toEqual(['bad-aft', 'bad', 'caution', 'unknown', 'good']);
  for (const other of SEVERITIES.slice(1)) expect(compareSeverity('bad-aft', other)).toBeLessThan(0);
});

/** The band is 40 mm wide: a quarter of it is 10 mm. The numbers are distances from 500 and 540, by hand. */
describe('the CG against the band, aft +', () => {
  test.each<[number, Severity, number]>([
    [552, 'bad-aft', 12],
    [540.001, 'bad-aft', 0.001],
    [540, 'good', 0],
    [500, 'good', 0],
    [499.5, 'caution', -0.5],
    [490, 'caution', -10],
    [489.9, 'bad', -10.1],
    [300, 'bad', -200],
  ])('at %d mm it is %s, outside by %d mm', (stationMm, severity, outsideMm) => {
    const { shown, ...all } = judged(at(stationMm));
    expect(all.severity).toBe(severity);
    expect(shown?.full.outsideMm).toBeCloseTo(outsideMm, 9);
    expect(all.aftmost?.cgMm[0]).toBeCloseTo(stationMm, 9);
  });

  test('without a band it is not known', () => {
    expect(judged(unbanded(at(520)))).toMatchObject({ severity: 'unknown', band: null });
  });
});

/** MAC 200 mm: 1 % is 2 mm. A conventional layout without a tail counts as a flying wing, whose least is 3 %. */
describe('the estimated static margin, with a band or without', () => {
  const cases: [string, number, FindingKind | null, Severity][] = [
    ['behind the neutral point', 519, 'behind-neutral-point', 'bad-aft'],
    ['a margin of 1 %', 522, 'margin-tiny', 'bad'],
    ['a margin of 1.99 %', 523.98, 'margin-tiny', 'bad'],
    ['a margin of 2.5 %', 525, 'margin-under', 'caution'],
    ['a margin of 10 %', 540, null, 'good'],
  ];
  const wanted = (aircraft: Aircraft) =>
    changeStability(aircraft, { marginRange: { minPct: 3, maxPct: 25 } });

  test.each(cases)('%s', (_, neutralPointMm, kind, severity) => {
    const known = { estimate: estimateAt(neutralPointMm) };
    const { margin, ...all } = judged(wanted(at(520)), known);
    if (kind) expect(all.findings.map((one) => one.kind)).toContain(kind);
    const banded = all.findings.filter((one) => one.kind !== 'band-behind-neutral-point');
    expect(banded[0]?.severity ?? 'good').toBe(severity);
    expect(margin).toMatchObject({ status: 'estimated', least: { marginPct: (neutralPointMm - 520) / 2 } });
  });

  test.each(cases.slice(0, 2))('%s counts without any band too', (_, neutralPointMm, kind) => {
    expect(kinds(unbanded(at(520)), { estimate: estimateAt(neutralPointMm) })[0]).toBe(kind);
  });

  test('a wish for 11 % is not met by 9 %, stated limits or not; nor one for at most 8 %', () => {
    const estimate = estimateAt(538);
    const wish = (minPct: number, maxPct: number) =>
      kinds(changeStability(at(520), { marginRange: { minPct, maxPct } }), { estimate });
    expect(wish(11, 15)).toContain('margin-under');
    expect(wish(5, 8)).toContain('margin-over');
    expect(wish(5, 15)).not.toContain('margin-under');
    expect(wish(5, 15)).not.toContain('margin-over');
  });

  test('without an estimate, or with one of another structure, it is not known and blames nobody', () => {
    expect(judged(at(520)).margin).toEqual({ status: 'unknown', why: 'no estimate' });
    const stale = { estimate: estimateAt(510), estimateFresh: false };
    expect(judged(at(520), stale)).toMatchObject({
      margin: { status: 'unknown', why: 'out of date' },
      severity: 'good',
    });
  });

  test.each([
    ['unfinished', 'not checked yet'],
    ['failed', 'not checked'],
  ] as const)(
    'an estimate that is %s leaves a winged aircraft unjudged, and one without wings alone',
    (estimating, why) => {
      const winged = { ...at(520), structure: [weightlessWing] };
      const found = judged(winged, { estimate: estimateAt(510), estimating });
      expect(found).toMatchObject({
        severity: 'unknown',
        severitySoFar: 'good',
        margin: { status: 'unknown', why },
      });
      expect(judged(winged, { estimating: 'done' }).severity).toBe('good');
      expect(judged(at(520), { estimating }).severity).toBe('good');
    },
  );

  test('a stated band that reaches 12 mm behind the neutral point is not to be trusted', () => {
    const found = judged(at(505), { estimate: estimateAt(528) }).findings;
    expect(found).toContainEqual({ kind: 'band-behind-neutral-point', severity: 'caution', byMm: 12 });
  });
});

test.each<[number, Severity]>([
  [1.9, 'good'],
  [-2.1, 'caution'],
  [9.9, 'caution'],
  [-10.1, 'bad'],
])('%d mm off centre with 2 mm allowed is %s', (offsetMm, severity) => {
  expect(judged(at(520, offsetMm)).severity).toBe(severity);
});

test('an allowance of 0 mm sideways means that it does not matter', () => {
  const aircraft = { ...at(520, 400), lateralToleranceMm: 0 };
  expect(judged(aircraft)).toMatchObject({ severity: 'good', lateralLimitMm: null });
});

describe('load states', () => {
  /** 200 g at 900 mm that may be off: 520 without, (520·1000 + 900·200)/1200 = 583.3 mm with. */
  const pod = boxPart('pod', 200, [900, 0, 0]);
  const switched = (first: 'on' | 'off', onStand = false): Aircraft => {
    const on = { id: 'on', name: 'on', ...(onStand && { onStand: true }) };
    const off = { id: 'off', name: 'off', without: ['pod'] };
    return {
      ...at(520, 0, [pod]),
      switches: [{ id: 'pod-switch', name: 'Pod', positions: first === 'on' ? [on, off] : [off, on] }],
    };
  };

  test('one that is not shown counts, and is named', () => {
    const { severity, shown, aftmost, states } = judged(switched('off'));
    expect([severity, shown?.full.outsideMm, states.length]).toEqual(['bad-aft', 0, 2]);
    expect(aftmost?.positions).toEqual({ 'pod-switch': 'on' });
    expect(aftmost?.outsideMm).toBeCloseTo((520 * 1000 + 900 * 200) / 1200 - 540, 9);
  });

  test('one of the stand does not, even while it is shown', () => {
    expect(judged(switched('off', true)).severity).toBe('good');
    const shown = judged(switched('off', true), { positions: { 'pod-switch': 'on' } });
    expect(shown.severity).toBe('good');
    expect(shown.shown).toMatchObject({ flies: false });
    expect(shown.shown?.full.outsideMm).toBeGreaterThan(0);
  });

  test('too many to look at, and not searched yet: never good', () => {
    const switches = Array.from({ length: 5 }, (_, k) => ({
      id: `s${k}`,
      name: `S${k}`,
      positions: [
        { id: 'on', name: 'on' },
        { id: 'off', name: 'off', without: [`p${k}`] },
      ],
    }));
    const parts = switches.map((_, k) => boxPart(`p${k}`, 1, [520, 0, 100 * k + 100]));
    const aircraft: Aircraft = { ...at(520, 0, parts), switches };
    for (const loads of [{ status: 'unfinished' }, { status: 'failed', sentence: 'No.' }] as const) {
      expect(judged(aircraft, { loads })).toMatchObject({ severity: 'unknown', severitySoFar: 'good' });
    }
    expect(judgeFully(aircraft, { down: LEVEL, estimate: null })).toMatchObject({ loads: 'certified' });
  });
});

describe('an aft end that is certain to so much only, the aft limit at 540', () => {
  /** The only load state that flies, as a search that is certain to so much of it would find it. */
  const searched = (stationMm: number, withinMm: number | null): Partial<Known> => {
    const state = { cgMm: [stationMm, 0, 0], massG: 1000, fuelFraction: 1, positions: {} } as const;
    const end = { ...state, withinMm };
    return {
      loads: {
        status: 'found',
        envelope: {
          foremost: end,
          aftmost: end,
          leftmost: end,
          rightmost: end,
          heaviest: state,
          lightest: state,
        },
      },
    };
  };

  test('is held to it as if the CG lay as far aft as it may', () => {
    const { severity, aftmost, foremost } = judged(at(539.95), searched(539.95, 0.1));
    expect([severity, aftmost?.cgMm[0], foremost?.outsideMm]).toEqual(['bad-aft', 539.95, 0]);
    expect(aftmost?.outsideMm).toBeCloseTo(0.05, 9);
    expect(judged(at(539.85), searched(539.85, 0.1)).severity).toBe('good');
  });

  test('so does the margin: 2 % of 200 mm at the CG, 1.95 % where it may lie', () => {
    const { margin, findings } = judged(at(520), { ...searched(520, 0.1), estimate: estimateAt(524) });
    expect(margin.status === 'estimated' && margin.least.marginPct).toBeCloseTo(1.95, 9);
    expect(findings.map(({ kind }) => kind)).toContain('margin-tiny');
  });

  test('forward nothing is added, and what nothing bounds was not checked', () => {
    expect(judged(at(500), searched(500, 0.1)).severity).toBe('good');
    expect(kinds(at(520), searched(520, null))).toEqual(['loads-unchecked']);
  });
});

describe('what is not known is never good', () => {
  test('fit that nobody has looked at', () => {
    expect(judged(at(520), { fit: null })).toMatchObject({ severity: 'unknown', severitySoFar: 'good' });
  });

  test.each([
    ['a mass', { parts: [{ ...boxPart('pack', Number.NaN, [520, 0, 0]) }] }],
    ['a place', { parts: [boxPart('pack', 10, [Number.POSITIVE_INFINITY, 0, 0])] }],
    ['a limit', { targetBand: { by: 'station', forwardMm: 500, aftMm: Number.NaN } }],
  ] as const)('%s that is no number', (_, change) => {
    const aircraft = { ...at(520), ...change } as Aircraft;
    expect(judged(aircraft).severity).not.toBe('good');
    expect(kinds(aircraft)).toContain('not-finite');
  });

  test('an estimate that is no number', () => {
    expect(kinds(at(520), { estimate: estimateAt(Number.NaN) })).toContain('not-finite');
  });

  test('an aircraft without any mass', () => {
    const empty = { ...at(520), parts: [] };
    expect(judged(empty)).toMatchObject({ severity: 'unknown', shown: null, aftmost: null });
    expect(kinds(empty)).toContain('no-mass');
  });
});

test('two things in one place are bad; the balance is judged beside', () => {
  const aircraft = at(520, 0, [boxPart('other', 1, [530, 0, 0])]);
  const all = judgeFully(aircraft, { down: LEVEL, estimate: null });
  expect(all.severity).toBe('bad');
  expect(all.findings[0]?.kind).toBe('fit');
  expect(all.aftmost?.outsideMm).toBe(0);
});

test('a margin beyond the most that is wanted is blamed beside stated limits, never beside a band that it makes', () => {
  const wished = changeStability(aircraftOf([weightlessWing], [boxPart('pack', 1000, [480, 0, 0])]), {
    marginRange: { minPct: 5, maxPct: 15 },
  });
  // MAC 200 mm, neutral point at 520 mm: a CG at 480 mm has a margin of 20 %, 5 % too much.
  const known = { estimate: estimateAt(520) };
  const stated: Aircraft = { ...wished, targetBand: { by: 'station', forwardMm: 470, aftMm: 510 } };
  expect(kinds(stated, known)).toContain('margin-over');
  expect(kinds(wished, known)).not.toContain('margin-over');
  expect(kinds(wished, known)).toContain('nose-heavy');
});

test('what only the balancing stand sees is not held against the fit', () => {
  const party = { id: 'pack', name: 'pack', what: 'part', pieceId: 'pack' } as const;
  const problem = (flies: boolean): NonNullable<Known['fit']>[number] => ({
    key: 'k',
    kind: 'outside',
    severity: 'bad',
    parties: [party],
    byMm: 3,
    states: [{ switchId: 's', switchName: 'Cover', positions: [{ id: 'off', name: 'off', flies }] }],
    atMm: null,
    clearByMm: null,
    rule: null,
  });
  expect(judged(at(520), { fit: [problem(true)] }).fit).toHaveLength(1);
  expect(judged(at(520), { fit: [problem(false)] }).fit).toHaveLength(0);
});

test('without tanks the travel is a point, so that every load state is certain', () => {
  expect(judged(at(520), { loads: { status: 'unfinished' } }).loads).toBe('certified');
});

test('a margin that is no number is bad, never good', () => {
  const { margin, severity } = judged(at(520), { estimate: estimateAt(Number.NaN) });
  expect(margin.status).toBe('unknown');
  expect(severity).toBe('bad');
  expect(kinds(at(520), { estimate: estimateAt(Number.NaN) })).toContain('not-finite');
});

test('more combinations than can be gone through leave the load states unchecked, and nothing is called good', () => {
  // Thirteen switches about one part bear on each other: 2¹³ = 8192 combinations.
  const switches = Array.from({ length: 13 }, (_, k) => ({
    id: `s${k}`,
    name: `Switch ${k}`,
    positions: [
      { id: 'on', name: 'on' },
      { id: 'off', name: 'off', without: ['camera'] },
    ],
  }));
  const aircraft = { ...at(520, 0, [boxPart('camera', 10, [520, 0, 100])]), switches };
  const { loads, severity } = judgeFully(aircraft, { down: LEVEL, estimate: null });
  expect(loads).toBe('unchecked');
  expect(severity).toBe('unknown');
});

test('an estimate for another structure gives no point a margin', () => {
  const fresh = judged(at(520), { estimate: estimateAt(540) });
  // MAC 200 mm: 20 mm ahead of the neutral point is 10 %.
  expect(fresh.aftmost?.marginPct).toBeCloseTo(10, 9);
  const stale = judged(at(520), { estimate: estimateAt(540), estimateFresh: false });
  expect(stale.aftmost?.marginPct).toBeNull();
});

test('the ± of a margin is that of the neutral point, at 95 %, on the MAC', () => {
  // σ = 5 mm on a MAC of 200 mm is 2.5 %; 95 % of a normal distribution lie within 1.96 σ, by common practice 2 σ.
  const { margin } = judged(at(520), { estimate: { ...estimateAt(540), neutralPointSigmaMm: 5 } });
  const plusMinus = margin.status === 'estimated' ? margin.plusMinusPct : 0;
  expect(plusMinus).toBeGreaterThanOrEqual(1.96 * 2.5 - 0.01);
  expect(plusMinus).toBeLessThanOrEqual(2 * 2.5);
});
