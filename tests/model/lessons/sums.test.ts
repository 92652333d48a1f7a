import { describe, expect, test } from 'vitest';
import { answerOf, lessonAnswer, quantityAt } from '../../../src/model/lessons/answer';
import { changed, checkBench, freshBench, startBench } from '../../../src/model/lessons/bench';
import { askedSheets, fromPoint, lessonSheets } from '../../../src/model/lessons/sums/sumSheets';
import type { WorkingSheet } from '../../../src/model/words/workingSheet';
import { aircraftOf, boxPart } from '../aircraft';
import { cgOf, movedTo, weights } from './byHand';
import { lessonJson, lessonNamed, lessonNames, soundLesson } from './lessonFiles';

/** A figure as it stands on paper: thin spaces between thousands, a true minus, "±" before what may be off. */
const read = (text: string) => Number(text.replace(/[\u202f±+]/g, '').replace('−', '-'));
const figuresIn = (text: string) => (text.replaceAll('\u202f', '').match(/−?\d+(?:\.\d+)?/g) ?? []).map(read);
/** Half of the last decimal that is written. */
const half = (text: string) => 0.5 * 10 ** -(text.split('.')[1]?.replace(/\D.*/, '').length ?? 0);
const column = ({ rows }: WorkingSheet, index: number) => rows.map((row) => row[index]!);
const sum = (figures: readonly string[]) => figures.reduce((all, each) => all + read(each), 0);
/** The result that a last step ends in. */
const resultOf = ({ steps }: WorkingSheet) => read(/= ([±+]?−?[\d\u202f.]+)[^=]*$/.exec(steps.at(-1)!)![1]!);

const sheetOf = (name: string, units: 'metric' | 'inch-ounce' = 'metric') =>
  lessonSheets(lessonNamed(name), units).at(-1)!.sheet;

describe.each(['metric', 'inch-ounce'] as const)('in %s', (units) => {
  test.each(['see-saw', 'tank-ahead', 'header-tank', 'fuel-in-the-climb', 'offset-camera'])(
    '%s: every line is mass × arm, the columns add up, and the CG is their quotient',
    (name) => {
      for (const { sheet } of lessonSheets(lessonNamed(name), units)) {
        for (const [, mass, arm, moment] of sheet.rows) {
          expect(Math.abs(read(mass!) * read(arm!) - read(moment!))).toBeLessThanOrEqual(
            half(moment!) + 1e-9,
          );
        }
        expect(sum(column(sheet, 1))).toBeCloseTo(read(sheet.total![1]!), 9);
        expect(sum(column(sheet, 3))).toBeCloseTo(read(sheet.total![3]!), 6);
        const quotient = sheet.steps[1]!;
        const cg = read(sheet.total![3]!) / read(sheet.total![1]!);
        const shown = /= (−?[\d\u202f.]+)/.exec(quotient)![1]!;
        expect(Math.abs(cg - read(shown))).toBeLessThanOrEqual(half(shown) + 1e-9);
      }
    },
  );

  test('the sum of a ± is the root of its squares', () => {
    const sheet = sheetOf('kitchen-scale', units);
    for (const [, mass, place, square] of sheet.rows) {
      const squared = read(mass!) ** 2 + read(place!) ** 2;
      expect(Math.abs(squared - read(square!))).toBeLessThanOrEqual(half(square!) + 1e-9);
    }
    expect(sum(column(sheet, 3))).toBeCloseTo(read(sheet.total![3]!), 9);
    const shown = /= ±([\d.]+)/.exec(sheet.steps.at(-1)!)![1]!;
    expect(Math.abs(Math.sqrt(read(sheet.total![3]!)) - read(shown))).toBeLessThanOrEqual(half(shown) + 1e-9);
  });

  test('inertia: m·r² line by line, and both columns together', () => {
    const inUnit = units === 'metric' ? 1e-9 : (453.59237 / 16) * 25.4 ** 2 * 1e-9;
    for (const { sheet } of lessonSheets(lessonNamed('inertia-and-gyro'), units)) {
      for (const [, mass, arm, byArm] of sheet.rows) {
        const product = read(mass!) * read(arm!) ** 2 * inUnit;
        expect(Math.abs(product - read(byArm!))).toBeLessThanOrEqual(half(byArm!) + 1e-9);
      }
      expect(sum(column(sheet, 3))).toBeCloseTo(read(sheet.total![3]!), 9);
      expect(sum(column(sheet, 4))).toBeCloseTo(read(sheet.total![4]!), 9);
      const [first, second, whole] = figuresIn(sheet.steps[1]!);
      expect(Math.abs(first! + second! - whole!)).toBeLessThanOrEqual(0.5e-4 + 1e-9);
    }
  });

  test('two sums end in the line that holds them together', () => {
    const times = figuresIn(sheetOf('inertia-and-gyro', units).steps.at(-1)!);
    expect(Math.abs(times[0]! / times[1]! - times[2]!)).toBeLessThanOrEqual(0.005 + 1e-9);
    const shift = figuresIn(sheetOf('fuel-in-the-climb', units).steps.at(-1)!);
    expect(Math.abs(shift[0]! - shift[1]! - shift[2]!)).toBeLessThanOrEqual(
      units === 'metric' ? 0.05001 : 0.005001,
    );
  });

  test('ballast: its last line can be done again with a pocket calculator', () => {
    const [w, x, wanted, again, at, shown] = figuresIn(sheetOf('nose-grams', units).steps.at(-1)!);
    expect(wanted).toBe(again);
    const grams = (w! * (x! - wanted!)) / (again! - at!);
    expect(Math.abs(grams - shown!)).toBeLessThanOrEqual(units === 'metric' ? 0.5001 : 0.005001);
  });
});

test.each(lessonNames)('%s: the sum ends in the answer that the engine gave', (name) => {
  const lesson = lessonNamed(name);
  const { answer } = lessonAnswer(lesson)!;
  const result = resultOf(sheetOf(name));
  // The header tank's sum is of the CG, not of what is in the tank.
  if (lesson.sum.quantity) return expect(name).toBe('header-tank');
  const shown = lesson.question.quantity.of === 'partFor' ? 0.5 : 0.05;
  expect(Math.abs(result - answer)).toBeLessThanOrEqual(shown + 1e-9);
});

test.each(lessonNames)('%s: the check has a sum of its own', (name) => {
  const lesson = lessonNamed(name);
  const bench = checkBench(lesson);
  const { question } = lesson.check;
  const sheets = askedSheets(bench, question, { units: 'metric', from: fromPoint(bench, undefined) });
  expect(sheets.length).toBe(question.as === 'value' ? 1 : 2);
  const { answer } = answerOf(bench, question)!;
  if (question.quantity.of === 'liquid') expect(read(sheets[0]!.sheet.rows[1]![1]!)).toBeCloseTo(answer, 0);
  else expect(Math.abs(resultOf(sheets.at(-1)!.sheet) - answer)).toBeLessThanOrEqual(0.5);
});

describe('published examples as benches', () => {
  const station = { of: 'cgStation' } as const;
  test('weight shift: 8000 with a moment of 616 000; 100 moved from 30 to 150 brings the CG from 77.0 to 78.5 (PHAK)', () => {
    const rest = boxPart('rest', 7900, [(616_000 - 100 * 30) / 7900, 0, 0]);
    const bench = freshBench(aircraftOf([], [rest, boxPart('case', 100, [30, 0, 0])]));
    const change = [{ do: 'place', itemId: 'case', stationMm: 150 }] as const;
    const found = answerOf(bench, { change, quantity: station, as: 'value' })!;
    expect(found.before).toBeCloseTo(77, 9);
    expect(found.answer).toBeCloseTo(78.5, 9);
    expect(answerOf(bench, { change, quantity: station, as: 'shift' })!.answer).toBeCloseTo(1.5, 9);
  });

  test('the see-saw: 200 at 50 on one side balances 100 at 100 on the other (TM 55-1500-342-23, fig. 2-1)', () => {
    const bench = freshBench(aircraftOf([], [boxPart('a', 200, [-50, 0, 0]), boxPart('b', 1, [10, 0, 0])]));
    const wanted = { quantity: station, value: 0 } as const;
    const heavier = { of: 'partFor', itemId: 'b', solve: 'mass', wanted } as const;
    const there = changed(bench, [{ do: 'place', itemId: 'b', stationMm: 100 }]);
    expect(quantityAt(there, heavier)).toBeCloseTo(100, 9);
    const weighed = changed(bench, [{ do: 'mass', itemId: 'b', massG: 100 }]);
    expect(quantityAt(weighed, { of: 'partFor', itemId: 'b', solve: 'station', wanted })).toBeCloseTo(100, 9);
  });

  test('sideways: 320 in the middle, 816 at +70 and 810 at −70 put the CG 0.216 to the right (SFTE 7.2)', () => {
    const parts = [
      boxPart('nose', 320, [0, 0, 0]),
      boxPart('r', 816, [0, 70, 0]),
      boxPart('l', 810, [0, -70, 0]),
    ];
    const found = quantityAt(freshBench(aircraftOf([], parts)), { of: 'cgButtline' })!;
    expect(found).toBeCloseTo(420 / 1946, 9);
    expect(found).toBeCloseTo(0.216, 3);
  });
});

test('a lesson begins where its file says', () => {
  expect(startBench(lessonNamed('fuel-in-the-climb')).fuelFraction).toBe(0.5);
  expect(checkBench(lessonNamed('fuel-in-the-climb')).fuelFraction).toBe(1);
  expect(startBench(lessonNamed('see-saw')).fuelFraction).toBe(1);
});

test('a check may have an aircraft of its own, fresh on the bench, and is judged on that', () => {
  const json = lessonJson('tank-ahead');
  json.begin = [{ do: 'fuel', leftPct: 50 }];
  json.check.aircraft = structuredClone(json.aircraft);
  json.check.aircraft.parts = json.check.aircraft.parts.filter(({ id }: { id: string }) => id !== 'servos');
  const lesson = soundLesson(json);
  const bench = checkBench(lesson);
  expect(bench.fuelFraction).toBe(1);
  const dry = movedTo(weights(json.check.aircraft), 'pack', json.check.question.change[0].stationMm);
  expect(answerOf(bench, lesson.check.question)!.answer).toBeCloseTo(cgOf(dry), 6);
  expect(lessonAnswer(lesson)!.answer).toBeCloseTo(cgOf(weights(json.aircraft)), 6);
});
