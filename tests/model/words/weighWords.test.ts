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
  quantityFigure,
  quantityName,
  stationFigure,
  sumWords,
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

describe('the figures of a weigh-in', () => {
  const off = (quantity: Difference['quantity']) => ({ quantity }) as Difference;
  test.each([
    ['mass', 'Mass', '742 g ± 1 g'],
    ['station', 'CG along', '742.3 mm ± 0.8 mm'],
    ['buttline', 'CG across', '742.3 mm right ± 0.8 mm'],
    ['waterline', 'CG height', '742.3 mm ± 0.8 mm'],
  ] as const)('%s', (quantity, name, words) => {
    expect(quantityName(off(quantity))).toBe(name);
    expect(plain(quantityFigure(off(quantity), { value: 742.3, sigma: 0.375 }, say))).toBe(words);
  });

  test('a station is read from the reference point; the ± is in ounces to a hundredth, rounded up', () => {
    const fromRoot = sayIn('metric', { id: 'root', name: 'Wing root', positionMm: [700, 0, 0] });
    expect(plain(stationFigure({ value: 742.3, sigma: 0.4 }, fromRoot))).toBe('42.3 mm ± 0.8 mm');
    // 2 × 1.1 g = 2.2 g = 0.0776 oz of 28.3495 g.
    expect(plain(massFigure({ value: 283.495, sigma: 1.1 }, sayIn('inch-ounce', null)))).toBe(
      '10.00 oz ± 0.08 oz',
    );
    // Exactly a step is that step, not the next.
    expect(plain(massFigure({ value: 100, sigma: 1 }, say))).toBe('100 g ± 2 g');
  });

  test('the list against the whole as weighed: more or less, by how much', () => {
    const words = (weighedG: number) =>
      plain(sumWords({ value: 6845, sigma: 17.5 }, { value: weighedG, sigma: 1 }, '12 May', say));
    expect(words(6847)).toBe(
      'With structure and fuel as on 12 May the list sums to 6845 g ± 35 g; the whole weighed 6847 g ± 2 g then, 2 g more.',
    );
    expect(words(6840)).toMatch(/, 5 g less\.$/);
  });
});

describe('what does not agree', () => {
  const difference = (quantity: Difference['quantity'], value: number, sigma = 0.5) =>
    ({ quantity, difference: { value, sigma } }) as Difference;
  const held = (differences: readonly Difference[], chance: number, by: HeldAgainst['by'] = 'stand') =>
    ({
      ...{ by, stationOffMm: 0 },
      reconciled: { agrees: false, confidence: 0.95, differences, chance },
    }) as unknown as HeldAgainst;
  const words = (...given: Parameters<typeof held>) => plain(agreementWords(held(...given), say));

  test.each([
    ['mass', 12, '12 g heavier'],
    ['mass', -12, '12 g lighter'],
    ['station', 4.2, '4.2 mm farther aft'],
    ['station', -4.2, '4.2 mm farther forward'],
    ['buttline', 4.2, '4.2 mm farther right'],
    ['buttline', -4.2, '4.2 mm farther left'],
    ['waterline', 4.2, '4.2 mm higher'],
    ['waterline', -4.2, '4.2 mm lower'],
  ] as const)('%s off by %d', (quantity, value, off) => {
    expect(words([difference(quantity, value)], 0.01)).toBe(
      `Stand and list do not agree at 95 % confidence: measured, it is ${off}. Chance alone would do that 1 time in 100.`,
    );
    expect(plain(agreementFact(held([difference(quantity, value)], 0.01), say))).toBe(`${off} than listed`);
  });

  test('of errors that only together are too much the worst is named all the same', () => {
    expect(words([difference('station', 0.3), difference('buttline', 0.4)], 0.04)).toMatch(
      /measured, it is 0\.4 mm farther right\. /,
    );
  });

  test('chance is never said to be likelier than it is', () => {
    expect(words([difference('mass', 9)], 1 / 400)).toMatch(/1 time in 400\.$/);
    expect(words([difference('mass', 9)], 1 / 400.5)).toMatch(/1 time in 401\.$/);
    expect(words([difference('mass', 9)], 0.9e-4)).toMatch(/less than 1 time in 10 000\.$/);
    expect(words([difference('mass', 9)], 1.1e-4)).toMatch(/1 time in 9.?091\.$/);
  });

  test.each([
    ['scales', /^Scales and list/],
    ['stand', /^Stand and list/],
    ['lines', /^Lines and list/],
    ['tilt', /^Tilt and list/],
    ['swing', /^Swing and list/],
  ] as const)('by %s', (by, start) => {
    expect(words([difference('mass', 9)], 0.01, by)).toMatch(start);
  });
});

test('what each button does is named with what it does it to', () => {
  const aircraft = aircraftOf([], [{ ...boxPart('camera', 10, [100, 20, 5]), name: 'Camera' }]);
  const part = { ...boxPart('servo', 22, [300, 0, 0]), name: 'Servo' };
  const words = (correction: Parameters<typeof correctionWords>[1]) =>
    plain(correctionWords(aircraft, correction, say));
  expect(words({ kind: 'mass', id: 'camera', massG: 12.34 } as Parameters<typeof correctionWords>[1])).toBe(
    'Set Camera to 12.3 g',
  );
  expect(
    words({ kind: 'place', id: 'camera', positionMm: [110, 20, 6], mirrored: false } as Parameters<
      typeof correctionWords
    >[1]),
  ).toBe('Put Camera at station 110.0 mm, waterline 6.0 mm');
  expect(words({ kind: 'add', part } as Parameters<typeof correctionWords>[1])).toBe(
    'Add “Servo”, 22 g at station 300 mm',
  );
});

test('something unaccounted for that has a height says it', () => {
  const at = (value: number) => ({ value, sigma: 0.5 });
  const words = unaccountedWords(
    { massG: at(45), placeMm: [at(302), null, at(20)], momentGmm: [0, 0, 0] },
    say,
  );
  expect(plain(words)).toBe(
    'Something unaccounted for: 45 g ± 1 g at station 302.0 mm ± 1.0 mm, waterline 20.0 mm ± 1.0 mm.',
  );
});
