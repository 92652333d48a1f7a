import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { itemById, placeItem, updatePart } from '../../../src/model/document/edit';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { answerOf, lessonAnswer } from '../../../src/model/lessons/answer';
import { changed, checkBench, type LessonBench, startBench } from '../../../src/model/lessons/bench';
import {
  filled,
  lessonFillings,
  placeholdersIn,
  predictionFillings,
  readingFor,
} from '../../../src/model/lessons/fill';
import { compared, isRight, rightOptions } from '../../../src/model/lessons/outcome';
import {
  benchAtStep,
  firstProgress,
  nextStep,
  settled,
  stepState,
  stepsDone,
  wayOf,
} from '../../../src/model/lessons/steps';
import type { Lesson } from '../../../src/model/lessons/types';
import { lessonNamed, lessonNames } from './lessonFiles';

const units = 'metric' as const;

/** Halfway between two benches in every part's place and mass, in the fuel and in the attitude: a hand on its way. */
function halfway(from: LessonBench, to: LessonBench): LessonBench {
  const between = (a: number, b: number) => a + (b - a) / 2;
  let { aircraft } = from;
  for (const {
    id,
    positionMm: [x, y, z],
  } of [...from.aircraft.parts, ...from.aircraft.tanks]) {
    const at = itemById(to.aircraft, id)?.positionMm ?? [x, y, z];
    if (at.some((mm, axis) => mm !== [x, y, z][axis]))
      aircraft = placeItem(aircraft, id, [between(x, at[0]), between(y, at[1]), between(z, at[2])]);
  }
  for (const { id, massG, plusMinusG } of from.aircraft.parts) {
    const after = to.aircraft.parts.find((part) => part.id === id);
    if (after && after.massG !== massG)
      aircraft = updatePart(aircraft, id, { massG: between(massG, after.massG) });
    if (plusMinusG !== undefined && after?.plusMinusG !== undefined && after.plusMinusG !== plusMinusG)
      aircraft = updatePart(aircraft, id, { plusMinusG: between(plusMinusG, after.plusMinusG) });
  }
  return {
    ...from,
    aircraft,
    fuelFraction: between(from.fuelFraction, to.fuelFraction),
    attitude: { ...from.attitude, pitchDeg: between(from.attitude.pitchDeg, to.attitude.pitchDeg) },
  };
}

/** A part that the step has nothing to do with, moved by a hand that took the wrong one. */
function otherMoved(lesson: Lesson, bench: LessonBench, subjects: readonly string[]): [LessonBench, string] {
  const other = bench.aircraft.parts.find(({ id }) => !subjects.includes(id))!;
  const [x, y, z] = other.positionMm;
  expect(lesson.experiment.length).toBeGreaterThan(0);
  return [{ ...bench, aircraft: placeItem(bench.aircraft, other.id, [x + 25, y, z]) }, other.name];
}

describe.each(lessonNames)('%s', (name) => {
  const lesson = lessonNamed(name);
  const reading = readingFor(lesson, units);
  const { question, experiment, outcome, check } = lesson;

  test('the steps, done right: each is open, halfway says so, and is done by its own way', () => {
    let progress = firstProgress(lesson);
    for (const [index, step] of experiment.entries()) {
      expect(stepState(lesson, progress, progress.from, reading)).toEqual({ done: false, hint: null });
      const there = changed(progress.from, wayOf(lesson, step));
      const onTheWay = stepState(lesson, progress, halfway(progress.from, there), reading);
      if (step.goal.by === 'change') expect(onTheWay.hint?.kind).toBe('short');
      expect(onTheWay.hint?.says ?? '').not.toMatch(/[{}]/);
      expect(stepState(lesson, progress, there, reading)).toEqual({ done: true, hint: null });
      progress = nextStep(progress, settled(lesson, progress, there));
      expect(progress.from).toEqual(benchAtStep(lesson, index + 1));
    }
    expect(stepsDone(lesson, progress)).toBe(true);
    expect(stepState(lesson, progress, progress.from, reading)).toEqual({ done: false, hint: null });
  });

  test('the steps, done wrong: another part moved is named, and the step is open until it is back', () => {
    let progress = firstProgress(lesson);
    for (const step of experiment) {
      const way = wayOf(lesson, step);
      const there = changed(progress.from, way);
      const subjects = way.flatMap((change) => ('itemId' in change ? [change.itemId] : []));
      const [wrong, moved] = otherMoved(lesson, there, subjects);
      const state = stepState(lesson, progress, wrong, reading);
      expect(state.done).toBe(false);
      expect(state.hint?.kind).toBe('other');
      expect(state.hint?.says).toContain(moved);
      progress = nextStep(progress, settled(lesson, progress, there));
    }
  });

  test('a prediction is judged by where it lies, and its words have no gap', () => {
    const found = lessonAnswer(lesson)!;
    const { within, least, most, start } = question.axis;
    const ends = [found.answer, found.answer + within, found.answer - within];
    for (const right of ends) expect(compared(right, found, question.axis)).toBe('right');
    expect(compared(start, found, question.axis)).not.toBe('right');
    for (const said of [least, most, start, found.answer, found.before]) {
      const words = outcome[compared(said, found, question.axis)];
      const fillings = {
        ...lessonFillings(lesson, units),
        ...predictionFillings(question, said, found, reading),
      };
      for (const text of [words, outcome.why, lesson.closing, lesson.sum.intro, lesson.sum.closing]) {
        expect(filled(text, fillings, reading)).not.toMatch(/[{}]/);
      }
    }
    const moves = Math.abs(found.answer - found.before) > within;
    if (moves) {
      const way = Math.sign(found.answer - found.before);
      const at = (share: number) => found.before + share * (found.answer - found.before);
      if (Math.abs(found.answer - at(0.5)) > within)
        expect(compared(at(0.5), found, question.axis)).toBe('tooLittle');
      expect(compared(found.answer + way * 2 * within, found, question.axis)).toBe('tooMuch');
      expect(compared(found.before - way * 2 * within, found, question.axis)).toBe('wrongWay');
      expect(compared(found.before, found, question.axis)).toBe('tooLittle');
    } else {
      expect(compared(found.answer + 2 * within, found, question.axis)).toBe('tooMuch');
    }
  });

  test('the check, right and wrong', () => {
    const found = answerOf(checkBench(lesson), check.question)!;
    if (check.question.by === 'choice') {
      const [right, ...others] = rightOptions(check.question, found);
      expect(others).toEqual([]);
      for (const index of check.question.options.keys()) {
        expect(isRight(check.question, found, { by: 'choice', index })).toBe(index === right);
      }
      expect(isRight(check.question, found, { by: 'marker', at: found.answer })).toBe(false);
    } else {
      const { start, within } = check.question.axis;
      expect(isRight(check.question, found, { by: 'marker', at: found.answer + 0.9 * within })).toBe(true);
      expect(isRight(check.question, found, { by: 'marker', at: found.answer + 1.1 * within })).toBe(false);
      expect(isRight(check.question, found, { by: 'marker', at: start })).toBe(false);
      expect(isRight(check.question, found, { by: 'choice', index: 0 })).toBe(false);
    }
  });

  test('nothing is in the way: every bench of the lesson fits, and weighs something', () => {
    const benches = [...experiment, null].map((_, index) => benchAtStep(lesson, index));
    for (const { aircraft } of [...benches, changed(checkBench(lesson), check.question.change)]) {
      expect(wholeFit(aircraft).problems.map(({ key }) => key)).toEqual([]);
    }
    const { findings } = judgeFully(lesson.aircraft, { down: LEVEL, estimate: null });
    expect(findings.map(({ kind }) => kind)).not.toContain('not-finite');
  });

  test('the question does not carry its answer', () => {
    for (const inside of placeholdersIn(question.ask)) expect(inside).not.toBe('answer');
    expect(JSON.stringify(question)).not.toContain('"answer"');
  });
});

describe('a hand that goes astray', () => {
  const lesson = lessonNamed('see-saw');
  const reading = readingFor(lesson, units);
  const progress = firstProgress(lesson);
  const packAt = (stationMm: number) => changed(progress.from, [{ do: 'place', itemId: 'pack', stationMm }]);
  const said = (bench: LessonBench) => stepState(lesson, progress, bench, reading);

  test.each([
    [250, 'short', '60.0'],
    [340, 'far', '30.0'],
    [150, 'wrongWay', ''],
    [306, 'short', '4.0'],
  ] as const)('the pack at %i: %s', (at, kind, figure) => {
    const { done, hint } = said(packAt(at));
    expect([done, hint?.kind]).toEqual([false, kind]);
    expect(hint?.says).toContain(figure);
  });

  test('within the tolerance it is done, either side, and then set exactly', () => {
    for (const at of [307, 310, 313]) expect(said(packAt(at))).toEqual({ done: true, hint: null });
    const exact = settled(lesson, progress, packAt(307));
    expect(itemById(exact.aircraft, 'pack')?.positionMm[0]).toBe(310);
  });

  test('what was taken out, weighed otherwise, burnt or tilted besides is named', () => {
    const there = packAt(310);
    const cases: readonly (readonly [LessonBench, string])[] = [
      [changed(there, [{ do: 'takeOut', itemId: 'servos' }]), 'Servos'],
      [changed(there, [{ do: 'mass', itemId: 'motor', massG: 10 }]), 'Motor'],
      [changed(there, [{ do: 'shiftStructure', pieceId: 'wing', aftMm: 5 }]), 'Wing'],
      [changed(there, [{ do: 'hold', pitchDeg: 4 }]), 'the way it is held'],
      [{ ...there, fuelFraction: 0.5 }, 'the fuel'],
      [changed(there, [{ do: 'takeOut', itemId: 'pack' }]), 'Flight pack'],
    ];
    for (const [bench, thing] of cases) {
      const { done, hint } = said(bench);
      expect([done, hint?.kind]).toEqual([false, 'other']);
      expect(hint?.says).toContain(thing);
    }
  });

  test('the part in hand changed in another way is named too', () => {
    const lighter = updatePart(packAt(310).aircraft, 'pack', { massG: 200 });
    const { done, hint } = said({ ...packAt(310), aircraft: lighter });
    expect([done, hint?.kind]).toEqual([false, 'other']);
    expect(hint?.says).toContain('Flight pack');
  });

  test('what goes along with a tank that is taken out is not astray', () => {
    const header = lessonNamed('header-tank');
    const change = { do: 'takeOut', itemId: 'header' } as const;
    const without: Lesson = {
      ...header,
      experiment: [{ do: 'Take it out.', goal: { by: 'change', change } }],
    };
    const first = firstProgress(without);
    const there = changed(first.from, [change]);
    expect(there.aircraft.tanks.map(({ feeds }) => feeds)).toEqual(['outlet']);
    expect(stepState(without, first, there, reading)).toEqual({ done: true, hint: null });
  });

  test('what has no weight in it is let be: names, notes, a lock', () => {
    const there = packAt(310);
    const renamed = updatePart(there.aircraft, 'motor', { name: 'Old motor', locked: true });
    expect(said({ ...there, aircraft: renamed })).toEqual({ done: true, hint: null });
  });

  test('a mirrored twin that goes along is not astray', () => {
    const twins = {
      ...lesson.aircraft,
      parts: lesson.aircraft.parts.flatMap((part) =>
        part.id === 'pack'
          ? [
              { ...part, twinId: 'pack-left', positionMm: [190, 20, 5] as const },
              { ...part, id: 'pack-left', twinId: 'pack', positionMm: [190, -20, 5] as const },
            ]
          : [part],
      ),
    };
    const paired: Lesson = { ...lesson, aircraft: twins };
    const from = startBench(paired);
    const moved = { ...from, aircraft: placeItem(from.aircraft, 'pack', [310, 20, 5]) };
    expect(itemById(moved.aircraft, 'pack-left')?.positionMm[0]).toBe(310);
    expect(stepState(paired, { index: 0, from }, moved, reading)).toEqual({ done: true, hint: null });
  });
});
