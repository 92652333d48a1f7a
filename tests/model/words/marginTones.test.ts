import { describe, expect, test } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { judge } from '../../../src/model/judgement/judge';
import { changeStability } from '../../../src/model/stability/stability';
import { type Tone, verdict } from '../../../src/model/words/verdict';
import { aircraftOf, boxPart } from '../aircraft';
import { estimateAt } from '../judgement/estimate';

/** All the mass at 520 mm; the neutral point is set behind it by 2 mm for each per cent of a MAC of 200 mm. */
const plain: Aircraft = aircraftOf([], [boxPart('pack', 1000, [520, 0, 0])]);
const banded: Aircraft = { ...plain, targetBand: { by: 'station', forwardMm: 500, aftMm: 521 } };
const wanting = (aircraft: Aircraft, minPct: number, maxPct: number) =>
  changeStability(aircraft, { marginRange: { minPct, maxPct } });

function said(aircraft: Aircraft, marginPct: number) {
  const known = { loads: { status: 'found', envelope: null }, fit: [], certainty: null } as const;
  const judgement = judge(aircraft, { down: LEVEL, estimate: estimateAt(520 + 2 * marginPct), ...known });
  const { tone, headline, cause, facts } = verdict(aircraft, judgement, sayIn('metric', null));
  const fact = facts.find(({ key }) => key === 'margin')!;
  return {
    tone,
    fact: fact.tone,
    head: headline.replace(/\u202f/g, ' '),
    cause: cause.replace(/\u202f/g, ' '),
  };
}

type Row = readonly [marginPct: number, tone: Tone, fact: Tone, headline: RegExp];

/** The least that is usual for this kind is 8 %. A figure is never rounded up. */
const ROWS: readonly Row[] = [
  [-10, 'danger', 'danger', /^Do not fly: CG 20 mm behind the estimated neutral point$/],
  [-0.01, 'danger', 'danger', /^Do not fly: CG 0\.1 mm behind the estimated neutral point$/],
  [0, 'bad', 'bad', /^Hardly stable: margin 0 % MAC \(estimate\)$/],
  [1.9, 'bad', 'bad', /^Hardly stable: margin 1 % MAC/],
  [2.1, 'caution', 'caution', /margin 2 % MAC/],
  [7.9, 'caution', 'caution', /margin 7 % MAC/],
];

describe.each([
  ['with a band', banded, /^In the band, but margin/, 'good'],
  ['without a band', plain, /^No band yet, and margin/, 'unknown'],
] as const)('%s', (_, aircraft, start, atLast) => {
  test.each(ROWS)('a margin of %d %', (marginPct, tone, fact, headline) => {
    const { head, ...tones } = said(aircraft, marginPct);
    expect(tones).toMatchObject({ tone, fact });
    expect(head).toMatch(headline);
    if (tone === 'caution') expect(head).toMatch(start);
  });

  test('the least that is usual and more is not blamed', () => {
    for (const marginPct of [8, 8.1, 20])
      expect(said(aircraft, marginPct)).toMatchObject({ tone: atLast, fact: 'good' });
  });
});

describe('with a margin of 5 to 15 % wanted', () => {
  test.each<Row>([
    [-1, 'danger', 'danger', /^Do not fly: tail-heavy by 12 mm of the estimated band$/],
    [1.9, 'danger', 'bad', /^Do not fly: tail-heavy by 6\.2 mm/],
    [4.9, 'danger', 'caution', /^Do not fly: tail-heavy by 0\.2 mm/],
    [5, 'good', 'good', /^In the estimated band$/],
    [15.1, 'caution', 'caution', /^Nose-heavy by 0\.2 mm/],
  ])('and no limits, %d %', (marginPct, tone, fact, headline) => {
    const { head, ...tones } = said(wanting(plain, 5, 15), marginPct);
    expect(tones).toMatchObject({ tone, fact });
    expect(head).toMatch(headline);
  });

  test.each<Row>([
    [4.9, 'caution', 'caution', /^In the band, but margin 4 %/],
    [15.1, 'caution', 'caution', /^In the band, but margin 16 %/],
    [14.9, 'good', 'good', /^In the band$/],
  ])('and limits beside it, %d %', (marginPct, tone, fact, headline) => {
    const { head, ...tones } = said(wanting(banded, 5, 15), marginPct);
    expect(tones).toMatchObject({ tone, fact });
    expect(head).toMatch(headline);
  });
});

test('what nobody asked for is not called wanted', () => {
  expect(said(wanting(banded, 1, 10), 1.5)).toMatchObject({
    tone: 'bad',
    cause: 'At least 2 % is usual for this kind.',
  });
  expect(said(wanting(banded, 5, 10), 1.5).cause).toBe('At least 5 % is wanted.');
});

test('tail-heavy is never flown, however good the margin, and nose-heavy is', () => {
  for (const stationMm of [521.01, 530, 900]) {
    const aircraft = { ...banded, parts: [boxPart('pack', 1000, [stationMm, 0, 0])] };
    for (const marginPct of [-300, 5, 20, 300]) {
      expect(said(aircraft, marginPct)).toMatchObject({
        tone: 'danger',
        head: expect.stringMatching(/^Do not fly: tail-heavy by /),
      });
    }
  }
  const ahead = { ...banded, parts: [boxPart('pack', 1000, [499, 0, 0])] };
  expect(said(ahead, 20)).toMatchObject({ tone: 'caution', head: 'Nose-heavy by 1.0 mm' });
});
