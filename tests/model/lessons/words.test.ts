import { describe, expect, test } from 'vitest';
import { placeItem, updatePart } from '../../../src/model/document/edit';
import { freshBench } from '../../../src/model/lessons/bench';
import { differenceText, figureText, measureOf } from '../../../src/model/lessons/figureText';
import {
  answerFillings,
  filled,
  placeholdersIn,
  predictionFillings,
  readingFor,
} from '../../../src/model/lessons/fill';
import { MOST_WORDS, sentencesOf, wordsOf } from '../../../src/model/lessons/lint/reading';
import { estimateHere, figureAt } from '../../../src/model/lessons/quantity';
import { solvedFigure } from '../../../src/model/lessons/solved';
import { fromPoint, quantitySheet } from '../../../src/model/lessons/sums/sumSheets';
import type { PartFor, Quantity } from '../../../src/model/lessons/types';
import { lessonNamed } from './lessonFiles';

const metric = { units: 'metric', fromMm: 0 } as const;
const inch = { units: 'inch-ounce', fromMm: 0 } as const;
/** Thin spaces and true minus signs as plain ones, to be read here. */
const plain = (text: string) => text.replaceAll('\u202f', ' ').replaceAll('−', '-');
const partFor = (solve: PartFor['solve']): PartFor => ({
  of: 'partFor',
  itemId: 'pack',
  solve,
  wanted: { quantity: { of: 'cgStation' }, value: 300 },
});

/** A figure, as a value and as a shift, in both systems; 25.4 mm are an inch, 453.59237/16 g an ounce. */
const written: readonly [Quantity, number, string, string, string][] = [
  [{ of: 'cgStation' }, 254, '254.0 mm', '10.00 in', '+254.0 mm'],
  [{ of: 'neutralPoint' }, -50.8, '-50.8 mm', '-2.00 in', '-50.8 mm'],
  [{ of: 'cgButtline' }, 12.7, '+12.7 mm', '+0.50 in', '+12.7 mm'],
  [{ of: 'margin' }, 12.34, '12.3 % MAC', '12.3 % MAC', '+12.3 % MAC'],
  [{ of: 'mass' }, 283.4952, '283 g', '10.00 oz', '+283 g'],
  [{ of: 'inertia', about: 'yaw' }, 0.14184, '0.1418 kg·m²', '0.1418 kg·m²', '+0.1418 kg·m²'],
  [{ of: 'cgPlusMinus' }, 5.08, '±5.1 mm', '±0.20 in', '+5.1 mm'],
  [{ of: 'liquid', tankId: 'main' }, 295.735, '296 ml', '10.00 fl oz', '+296 ml'],
  [partFor('mass'), 28.34952, '28 g', '1.00 oz', '+28 g'],
  [partFor('station'), 127, '127.0 mm', '5.00 in', '+127.0 mm'],
];

test.each(written)('%j', (quantity, figure, asMetric, asInch, shift) => {
  expect(plain(figureText(figure, { quantity, as: 'value' }, metric))).toBe(asMetric);
  expect(plain(figureText(figure, { quantity, as: 'value' }, inch))).toBe(asInch);
  expect(plain(figureText(figure, { quantity, as: 'shift' }, metric))).toBe(shift);
});

test('how many times, and how far two of them lie apart', () => {
  const asked = { quantity: { of: 'inertia', about: 'roll' }, as: 'times' } as const;
  expect(figureText(1.5213, asked, metric)).toBe('1.52 times');
  expect(figureText(12.34, asked, metric)).toBe('12.3 times');
  expect(differenceText(-0.25, asked, 'metric')).toBe('0.25');
  expect(measureOf(asked)).toBeNull();
  expect(measureOf({ quantity: { of: 'mass' }, as: 'shift' })).toBe('mass');
});

test('a station is read from its point, a shift and a buttline are not', () => {
  const from = { units: 'metric', fromMm: 200 } as const;
  const station = { of: 'cgStation' } as const;
  expect(plain(figureText(312, { quantity: station, as: 'value' }, from))).toBe('112.0 mm');
  expect(plain(figureText(12, { quantity: station, as: 'shift' }, from))).toBe('+12.0 mm');
  expect(plain(figureText(12, { quantity: { of: 'cgButtline' }, as: 'value' }, from))).toBe('+12.0 mm');
  expect(plain(filled('{station 312 mm}, {312 mm}', {}, from))).toBe('112 mm, 312 mm');
});

test('measures in braces are written in the person’s units; what nobody fills stays', () => {
  const text = '{300 mm}, {40 g}, {250 ml}, {-5 mm}, {name}, {__proto__}, {nobody}';
  expect(placeholdersIn(text).length).toBe(7);
  expect(plain(filled(text, { name: 'pack' }, metric))).toBe(
    '300 mm, 40 g, 250 ml, -5 mm, pack, {__proto__}, {nobody}',
  );
  expect(plain(filled('{254 mm}, {28.34952 g}', {}, inch))).toBe('10.00 in, 1.00 oz');
});

describe('what is said of a prediction', () => {
  const sides: readonly [Quantity, string, string, string, string][] = [
    [{ of: 'cgStation' }, 'too far aft', 'too far forward', 'aft', 'forward'],
    [{ of: 'cgButtline' }, 'too far right', 'too far left', 'to the right', 'to the left'],
    [{ of: 'margin' }, 'too high', 'too low', 'more', 'less'],
    [partFor('mass'), 'too much', 'too little', 'more', 'less'],
    [partFor('buttline'), 'too far right', 'too far left', 'to the right', 'to the left'],
    [{ of: 'liquid', tankId: 'main' }, 'too much', 'too little', 'more', 'less'],
  ];
  test.each(sides)('%j', (quantity, above, below, up, down) => {
    const asked = { quantity, as: 'value', change: [] } as const;
    const found = { before: 10, answer: 30 };
    expect(predictionFillings(asked, 35, found, metric).side).toBe(above);
    expect(predictionFillings(asked, 21, found, metric).side).toBe(below);
    expect(plain(predictionFillings(asked, 21, found, metric).off!)).toMatch(/^9(\.0)? /);
    expect(plain(answerFillings(asked, found, metric).moved!)).toMatch(new RegExp(`^20(\\.0)? .*${up}$`));
    const back = { before: 30, answer: 10 };
    expect(plain(answerFillings(asked, back, metric).moved!)).toMatch(new RegExp(`^20(\\.0)? .*${down}$`));
  });

  test('stations are read from the point that the question names', () => {
    const lesson = lessonNamed('see-saw');
    const points = [{ id: 'former', name: 'Former', positionMm: [200, 5, 5] as const }];
    const named = {
      aircraft: { ...lesson.aircraft, referencePoints: points },
      question: { ...lesson.question, from: 'former' },
    };
    expect(readingFor(named, 'metric')).toEqual({ units: 'metric', fromMm: 200 });
    expect(readingFor(lesson, 'inch-ounce')).toEqual({ units: 'inch-ounce', fromMm: 0 });
    expect(fromPoint(named, 'former')).toEqual({ name: 'Former', mm: 200 });
  });
});

describe('what a part must be', () => {
  const bench = freshBench(lessonNamed('neutral-point').aircraft);
  const wanted = { quantity: { of: 'margin' }, value: 15 } as const;

  test('a station, or a mass, for a margin: put in, the margin is there', () => {
    for (const solve of ['station', 'mass'] as const) {
      const found = solvedFigure(bench, { of: 'partFor', itemId: 'pack', solve, wanted }, estimateHere)!;
      const { positionMm } = bench.aircraft.parts.find(({ id }) => id === 'pack')!;
      const aircraft =
        solve === 'mass'
          ? updatePart(bench.aircraft, 'pack', { massG: found })
          : placeItem(bench.aircraft, 'pack', [found, positionMm[1], positionMm[2]]);
      expect(figureAt({ ...bench, aircraft }, { of: 'margin' })).toBeCloseTo(15, 6);
    }
  });

  test('its sum ends in the same figure', () => {
    const asked: PartFor = { of: 'partFor', itemId: 'pack', solve: 'station', wanted };
    const found = solvedFigure(bench, asked, estimateHere)!;
    const sheet = quantitySheet(bench, asked, { units: 'metric', from: fromPoint(bench, undefined) })!;
    const shown = /= (-?[\d.]+) mm$/.exec(plain(sheet.steps.at(-1)!))![1]!;
    expect(Number(shown)).toBeCloseTo(found, 1);
  });

  test('no mass does it on the wrong side, and nothing without a wing', () => {
    const behind: PartFor = { ...partFor('mass'), wanted: { quantity: { of: 'cgStation' }, value: 40 } };
    expect(solvedFigure(bench, behind, estimateHere)).toBeNull();
    const noWing = freshBench({ ...bench.aircraft, structure: [] });
    expect(solvedFigure(noWing, { ...partFor('station'), wanted }, estimateHere)).toBeNull();
    expect(figureAt(noWing, { of: 'margin' })).toBeNull();
    expect(solvedFigure(bench, { ...partFor('mass'), itemId: 'nobody' }, estimateHere)).toBeNull();
  });

  test('the sum of a neutral point: surfaces and body make the point', () => {
    const sheet = quantitySheet(
      bench,
      { of: 'neutralPoint' },
      { units: 'metric', from: fromPoint(bench, undefined) },
    )!;
    const [surfaces, body] = sheet.rows.map((row) => Number(plain(row[1]!)));
    expect(surfaces! + body!).toBeCloseTo(figureAt(bench, { of: 'neutralPoint' })!, 1);
    expect(sheet.says).toMatch(/^An estimate/);
  });
});

test('sentences and words are counted as a reader counts them', () => {
  const text =
    'The CG is at {answer}. It went 2.5 times as far! “Why?” Look: the pack — not the motor — moved.';
  expect(sentencesOf(text).length).toBe(4);
  expect(wordsOf('It went {x} – and back — again').length).toBe(6);
  expect(MOST_WORDS).toBe(20);
});
