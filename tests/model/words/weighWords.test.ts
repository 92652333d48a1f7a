import { describe, expect, test } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import type { Culprit } from '../../../src/engine/weigh/rankCulprits';
import type { Difference } from '../../../src/engine/weigh/reconcile';
import type { HeldAgainst } from '../../../src/model/weigh/heldAgainst';
import {
  agreementFact,
  agreementWords,
  buttlineFigure,
  correctionWords,
  culpritWords,
  dayWords,
  massFigure,
  unaccountedWords,
} from '../../../src/model/words/weighWords';
import { aircraftOf, boxPart } from '../aircraft';

const say = sayIn('metric', null);
const plain = (text: string) => text.replaceAll('\u202f', ' ');

test('a day is said by day and month, and its year where that is asked for', () => {
  expect(dayWords('2026-05-12')).toBe('12 May');
  expect(dayWords('2025-12-01', true)).toBe('1 December 2025');
});

test('± is two standard uncertainties, never rounded down; left is −y', () => {
  expect(plain(massFigure({ value: 6847, sigma: 1.1 }, say))).toBe('6847 g ± 3 g');
  expect(plain(buttlineFigure({ value: -4.1, sigma: 0.23 }, say))).toBe('4.1 mm left ± 0.5 mm');
  expect(plain(buttlineFigure({ value: 4.1, sigma: 0.23 }, say))).toBe('4.1 mm right ± 0.5 mm');
  expect(plain(buttlineFigure({ value: 0.01, sigma: 0.23 }, say))).toMatch(/^level/);
});

describe('what a slip is called', () => {
  const suspects = [
    {
      id: 'camera',
      mass: { massG: 10, cgMm: [100, 20, 5] },
      sigmaG: 0,
      sigmaMm: [0, 0, 0],
      massTyped: true,
      notWeighed: false,
    },
  ];
  // Of the list only names and suspects are read.
  const list = { names: new Map([['camera', 'Camera']]), suspects } as unknown as Parameters<
    typeof culpritWords
  >[1];
  const slip = (culprit: Partial<Culprit>) =>
    plain(
      culpritWords(
        {
          kind: 'sign',
          id: 'camera',
          axis: null,
          factor: null,
          massG: 10,
          positionMm: [100, 20, 5],
          probability: 1,
          chanceLeft: 1,
          ...culprit,
        },
        list,
        say,
      ),
    );

  test('10 written for 10 ounces is 283 g; 10 ounces written for 10 g are 0.35 of it', () => {
    // 1 oz = 28.349523125 g (international avoirdupois ounce).
    expect(slip({ kind: 'mass-unit', factor: 28.349523125, massG: 283.495 })).toBe(
      'Camera: ounces taken for grams, 283 g, not 10 g',
    );
    expect(slip({ kind: 'mass-unit', factor: 1 / 28.349523125, massG: 0.353 })).toMatch(
      /grams taken for ounces/,
    );
  });

  test('20 written for 20 inches is 508 mm, and the axis is named', () => {
    // 1 in = 25.4 mm, exactly.
    expect(slip({ kind: 'place-unit', factor: 25.4, axis: 1, positionMm: [100, 508, 5] })).toBe(
      'Camera: inches taken for mm, buttline 508.0 mm, not 20.0 mm',
    );
    expect(slip({ kind: 'place-unit', factor: 1 / 25.4, axis: 2, positionMm: [100, 20, 0.2] })).toMatch(
      /^Camera: mm taken for inches, waterline 0\.2 mm, not 5\.0 mm$/,
    );
  });

  test('on the other side, ten times too much, not weighed, not aboard: each for what it is', () => {
    expect(slip({ kind: 'mirrored', axis: 1, positionMm: [100, -20, 5] })).toBe(
      'Camera is on the other side: buttline −20.0 mm, not 20.0 mm',
    );
    expect(slip({ kind: 'mass-times-ten', massG: 100 })).toBe('Camera: a slip of ten, 100 g, not 10 g');
    expect(slip({ kind: 'place-times-ten', axis: 0, positionMm: [1000, 20, 5] })).toBe(
      'Camera: a slip of ten, station 1000.0 mm, not 100.0 mm',
    );
    expect(slip({ kind: 'not-weighed', massG: 14 })).toBe('Camera weighs 14 g, not 10 g');
    expect(slip({ kind: 'not-aboard' })).toBe('Camera was not aboard');
  });
});

describe('whether a weigh-in agrees', () => {
  const off = (quantity: Difference['quantity'], value: number, sigma: number) =>
    ({ quantity, difference: { value, sigma } }) as Difference;
  const held = (agrees: boolean, differences: readonly Difference[], stationOffMm = 0) =>
    ({
      by: 'scales',
      stationOffMm,
      reconciled: { agrees, confidence: 0.95, differences, chance: 1 / 400.5 },
    }) as unknown as HeldAgainst;

  test('what is off is said from the surest down, each the way it is off; less than its own error is not', () => {
    const differences = [
      off('mass', 12, 10),
      off('station', -4.2, 0.5),
      off('buttline', 1, 0.5),
      off('waterline', 2, 5),
    ];
    expect(plain(agreementWords(held(false, differences), say))).toBe(
      'Scales and list do not agree at 95 % confidence: measured, it is 4.2 mm farther forward, ' +
        '1.0 mm farther right, 12 g heavier. Chance alone would do that 1 time in 401.',
    );
    expect(plain(agreementFact(held(false, differences), say))).toBe('4.2 mm farther forward than listed');
  });

  test('what agrees says within how much along and across', () => {
    const differences = [off('mass', 2, 10), off('station', -0.52, 0.5), off('buttline', 0.3, 0.5)];
    expect(plain(agreementWords(held(true, differences), say))).toBe(
      'Scales and list agree within 0.6 mm along and 0.3 mm across, at 95 % confidence.',
    );
    expect(plain(agreementFact(held(true, differences, -0.52), say))).toBe('agrees within 0.6 mm');
  });
});

test('a correction that moves a thing names the axes it moves along, and no others', () => {
  const aircraft = aircraftOf([], [{ ...boxPart('camera', 10, [100, 20, 5]), name: 'Camera' }]);
  const put = correctionWords(
    aircraft,
    { kind: 'place', id: 'camera', positionMm: [100, -20, 5], mirrored: false },
    say,
  );
  expect(plain(put)).toBe('Put Camera at buttline −20.0 mm');
  expect(correctionWords(aircraft, { kind: 'remove', id: 'camera' }, say)).toBe('Take Camera off the list');
});

describe('what is unaccounted for', () => {
  const at = (value: number, sigma = 0.5) => ({ value, sigma });
  test('with a place it is something more, or something too much, there and on its side', () => {
    const placeMm = [at(302), at(-40), null] as const;
    const words = (massG: number) =>
      plain(unaccountedWords({ massG: at(massG), placeMm, momentGmm: [0, 0, 0] }, say));
    expect(words(45)).toBe(
      'Something unaccounted for: 45 g ± 1 g at station 302.0 mm ± 1.0 mm, 40.0 mm left ± 1.0 mm.',
    );
    expect(words(-45)).toMatch(/^Something too much in the list: 45 g/);
  });

  test('without a place its moment says which way: aft and right are +', () => {
    const words = (x: number, y: number) =>
      plain(unaccountedWords({ massG: at(1), placeMm: [null, null, null], momentGmm: [x, y, 0] }, say));
    expect(words(900, 300)).toMatch(/900 g·mm more aft and 300 g·mm more to the right/);
    expect(words(-900, -300)).toMatch(/900 g·mm more forward and 300 g·mm more to the left/);
    expect(words(-900, 0)).toMatch(/900 g·mm more forward\.$/);
  });
});
