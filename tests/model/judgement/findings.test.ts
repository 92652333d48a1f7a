import { describe, expect, test } from 'vitest';
import { blankAircraft } from '../../../src/model/document/blank';
import type { Aircraft, Part, StructurePiece } from '../../../src/model/document/types';
import type { FitProblem } from '../../../src/model/fit/fitProblem';
import {
  bandFindings,
  fitFindings,
  lateralFindings,
  marginFindings,
  massFindings,
} from '../../../src/model/judgement/findings';
import type { CgPoint, Finding, JudgedBand, MarginJudgement } from '../../../src/model/judgement/types';

/** Each rule by its edges: what is found, how bad it is, and by how much. */

const point = (stationMm: number, more: Partial<CgPoint> = {}): CgPoint => ({
  ...{ positions: {}, fuelFraction: 1, massG: 1000, cgMm: [stationMm, 0, 0], maybeAftMm: 0 },
  ...{ outsideMm: 0, marginPct: null },
  ...more,
});
/** 40 mm wide: a quarter of it is 10 mm. */
const stated: JudgedBand = { forwardMm: 500, aftMm: 540, from: 'stated' };
const estimated: JudgedBand = { ...stated, from: 'estimate' };
const inShort = (findings: readonly Finding[]) =>
  findings.map(({ kind, severity }) => `${kind}: ${severity}`);

describe('the CG against the band', () => {
  const outside = (foremostMm: number | null, aftmostMm: number | null) =>
    bandFindings(stated, point(0, { outsideMm: foremostMm }), point(0, { outsideMm: aftmostMm }));

  test.each([
    [0, 0, []],
    [0, 0.001, ['tail-heavy: bad-aft']],
    [-10, 0, ['nose-heavy: caution']],
    [-10.001, 0, ['nose-heavy: bad']],
    // Farther on both sides than the band is long: both.
    [-3, 2, ['tail-heavy: bad-aft', 'nose-heavy: caution']],
    // The foremost aft of the limit is no nose-heaviness, nor the aftmost ahead of it the other.
    [4, 4, ['tail-heavy: bad-aft']],
    [-4, -4, ['nose-heavy: caution']],
    [null, null, []],
  ])('foremost %d, aftmost %d outside', (foremostMm, aftmostMm, found) => {
    expect(inShort(outside(foremostMm, aftmostMm))).toEqual(found);
  });

  test('each names the point that it is about, and by how much', () => {
    const [tail, nose] = outside(-3, 2);
    expect(tail).toMatchObject({ outsideMm: 2, at: { outsideMm: 2 } });
    expect(nose).toMatchObject({ outsideMm: -3, at: { outsideMm: -3 } });
  });

  test('without a band that is what is found; without a CG there is nothing to blame', () => {
    expect(bandFindings(null, point(0), point(0))).toEqual([{ kind: 'no-band', severity: 'unknown' }]);
    expect(bandFindings(null, null, null)).toEqual([]);
    expect(bandFindings(stated, null, point(0, { outsideMm: 5 }))).toEqual([]);
    expect(bandFindings(stated, point(0, { outsideMm: -5 }), null)).toEqual([]);
  });
});

type Estimated = Extract<MarginJudgement, { status: 'estimated' }>;
const margin = (leastPct: number, mostPct: number, more: Partial<Estimated> = {}): Estimated => ({
  status: 'estimated',
  least: { ...point(520), marginPct: leastPct },
  most: { ...point(510), marginPct: mostPct },
  ...{ leastWantedPct: 5, mostWantedPct: 15, wanted: true, neutralPointMm: 540, macMm: 200, plusMinusPct: 0 },
  ...more,
});

describe('the estimated margin, 5 to 15 % wanted, of a MAC of 200 mm', () => {
  test.each([
    [-0.001, 10, ['behind-neutral-point: bad-aft']],
    [0, 10, ['margin-tiny: bad']],
    [1.999, 10, ['margin-tiny: bad']],
    [2, 10, ['margin-under: caution']],
    [4.999, 10, ['margin-under: caution']],
    [5, 15, []],
    [5, 15.001, ['margin-over: caution']],
    [4, 16, ['margin-under: caution', 'margin-over: caution']],
  ])('from %d to %d %', (leastPct, mostPct, found) => {
    expect(inShort(marginFindings(margin(leastPct, mostPct), stated))).toEqual(found);
    expect(inShort(marginFindings(margin(leastPct, mostPct), null))).toEqual(found);
  });

  test('a band that the margin itself makes says by itself what is under or over, but never what is unstable', () => {
    expect(marginFindings(margin(3, 20), estimated)).toEqual([]);
    expect(inShort(marginFindings(margin(1, 20), estimated))).toEqual(['margin-tiny: bad']);
    expect(inShort(marginFindings(margin(-1, 20), estimated))).toEqual(['behind-neutral-point: bad-aft']);
  });

  test('nobody who asked for no most is told that it is too much', () => {
    expect(marginFindings(margin(6, 40, { mostWantedPct: null }), stated)).toEqual([]);
  });

  test('how far the CG must go: (5 − 3) % of 200 mm is 4 mm aft of where it should be, (15 − 18) % 6 mm ahead', () => {
    expect(marginFindings(margin(3, 18), stated)).toMatchObject([
      { wantedPct: 5, marginPct: 3, wanted: true, at: { marginPct: 3 } },
      { wantedPct: 15, marginPct: 18, wanted: true, at: { marginPct: 18 } },
    ]);
    const [under, over] = marginFindings(margin(3, 18), stated) as readonly { byMm: number }[];
    expect(under?.byMm).toBeCloseTo(4, 9);
    expect(over?.byMm).toBeCloseTo(-6, 9);
  });

  test('where less than 2 % was asked for, 2 % is held against it, and nobody asked for that', () => {
    const [tiny] = marginFindings(margin(1, 10, { leastWantedPct: 1 }), stated);
    expect(tiny).toMatchObject({ kind: 'margin-tiny', wantedPct: 2, wanted: false });
    const [usual] = marginFindings(margin(3, 10, { wanted: false, mostWantedPct: null }), stated);
    expect(usual).toMatchObject({ kind: 'margin-under', wantedPct: 5, wanted: false });
  });

  test('a stated band may reach half a millimetre behind the neutral point, and is not to be trusted beyond', () => {
    const behind = (aftMm: number, from: JudgedBand['from'] = 'stated') =>
      marginFindings(margin(8, 10), { forwardMm: 500, aftMm, from });
    expect(behind(540.5)).toEqual([]);
    expect(behind(541)).toEqual([{ kind: 'band-behind-neutral-point', severity: 'caution', byMm: 1 }]);
    expect(behind(541, 'estimate')).toEqual([]);
  });

  test.each([
    ['not finite', ['not-finite: bad']],
    ['not checked yet', ['margin-unchecked: unknown']],
    ['not checked', ['margin-unchecked: unknown']],
    ['no estimate', []],
    ['out of date', []],
    ['no CG', []],
  ] as const)('that is unknown, %s', (why, found) => {
    expect(inShort(marginFindings({ status: 'unknown', why }, stated))).toEqual(found);
  });
});

describe('sideways, 2 mm allowed', () => {
  const off = (mm: number) => lateralFindings(2, point(0, { cgMm: [0, mm, 0] }));
  test.each([
    [2, []],
    [-2, []],
    [2.001, ['lateral: caution']],
    [-10, ['lateral: caution']],
    [10.001, ['lateral: bad']],
    [-10.001, ['lateral: bad']],
  ])('%d mm', (mm, found) => {
    expect(inShort(off(mm))).toEqual(found);
  });

  test('the side keeps its sign; where it does not matter, or there is no CG, nothing is found', () => {
    expect(off(-3)).toMatchObject([{ offsetMm: -3, limitMm: 2, at: { cgMm: [0, -3, 0] } }]);
    expect(lateralFindings(null, point(0, { cgMm: [0, 50, 0] }))).toEqual([]);
    expect(lateralFindings(2, null)).toEqual([]);
  });
});

describe('fit', () => {
  const problem = (severity: 'bad' | 'caution') => ({ severity }) as FitProblem;
  test('not looked at, all fits, a caution, and one bad thing among cautions', () => {
    expect(inShort(fitFindings(null))).toEqual(['fit-unchecked: unknown']);
    expect(fitFindings([])).toEqual([]);
    expect(inShort(fitFindings([problem('caution'), problem('caution')]))).toEqual(['fit: caution']);
    const mixed = [problem('caution'), problem('bad')];
    expect(inShort(fitFindings(mixed))).toEqual(['fit: bad']);
    expect(fitFindings(mixed)[0]).toMatchObject({ problems: mixed });
  });
});

describe('masses that nobody knows', () => {
  const blank = blankAircraft();
  const part = { id: 'a', name: 'Receiver', massFrom: 'unknown' } as unknown as Part;
  const weighed = { id: 'b', name: 'Pack', massFrom: 'weighed' } as unknown as Part;

  test('none is found where all are known', () => {
    expect(massFindings({ ...blank, parts: [weighed] })).toEqual([]);
  });

  test('each is named, and it is unknown, not bad', () => {
    expect(massFindings({ ...blank, parts: [part, weighed] })).toEqual([
      { kind: 'mass-unknown', severity: 'unknown', names: ['Receiver'] },
    ]);
  });

  test('an airframe that counts as a whole stands for its pieces', () => {
    const piece = { id: 'c', name: 'Wing', massFrom: 'unknown' } as unknown as StructurePiece;
    const whole = { use: 'replace', massFrom: 'unknown' } as unknown as Aircraft['bareAirframe'];
    const named = (aircraft: Aircraft) =>
      massFindings(aircraft).flatMap((found) => ('names' in found ? found.names : []));
    expect(named({ ...blank, structure: [piece] })).toEqual(['Wing']);
    expect(named({ ...blank, structure: [piece], bareAirframe: whole })).toEqual(['Bare airframe']);
  });
});
