import { describe, expect, test } from 'vitest';
import { clashesOf } from '../../../src/model/fit/clash';
import { hullFit } from '../../../src/model/fit/clearances';
import { benchAfter } from '../../../src/model/lessons/answer';
import { changed, checkBench, startBench } from '../../../src/model/lessons/bench';
import { placeholdersIn } from '../../../src/model/lessons/fill';
import { textsOf } from '../../../src/model/lessons/lint/texts';
import { estimateHere, figureAt } from '../../../src/model/lessons/quantity';
import { benchAtStep } from '../../../src/model/lessons/steps';
import { lessonJson, lessonNamed, lessonNames } from './lessonFiles';

/** A static margin of 5 % MAC at the aft limit is the least that textbooks give a pilot (common practice: 5 to 15 %). */
const LEAST_MARGIN = 0.05;
/** Whoever aims at the aft limit itself will be behind it as often as not, mm. */
const CLEAR_OF_LIMIT_MM = 5;

interface Limits {
  readonly forwardMm: number;
  readonly aftMm: number;
}

const limitsOf = (name: string): Limits | null => lessonJson(name).aircraft.targetBand;

describe.each(lessonNames)('%s', (name) => {
  const lesson = lessonNamed(name);

  test('its band ends ahead of the neutral point', () => {
    const limits = limitsOf(name);
    if (!limits) return expect(lesson.look?.layers).toContain('stability');
    const { neutralPointMm } = estimateHere(lesson.aircraft)!;
    const wing = lessonJson(name).aircraft.structure.find((piece: { id: string }) => piece.id === 'wing');
    // A root chord is never shorter than the MAC of a wing that tapers, so the margin is the smaller by it.
    expect((neutralPointMm - limits.aftMm) / wing.rootChordMm).toBeGreaterThan(LEAST_MARGIN);
  });

  test('nobody is sent to the aft limit, or past it', () => {
    const limits = limitsOf(name);
    if (!limits) return;
    const wanted = [lesson.question, lesson.check.question].flatMap(({ quantity }) =>
      quantity.of === 'partFor' && quantity.wanted.quantity.of === 'cgStation' ? [quantity.wanted.value] : [],
    );
    const reached = lesson.experiment.flatMap(({ goal }) =>
      goal.by === 'reach' && goal.quantity.of === 'cgStation' ? [goal.most ?? Infinity] : [],
    );
    for (const station of [...wanted, ...reached])
      expect(station).toBeLessThan(limits.aftMm - CLEAR_OF_LIMIT_MM);
  });

  test('nothing stands in anything else or through the skin, whatever it asks for', () => {
    const benches = [
      startBench(lesson),
      benchAfter(startBench(lesson), lesson.question),
      ...lesson.experiment.map((_, index) => benchAtStep(lesson, index + 1)),
      checkBench(lesson),
      benchAfter(checkBench(lesson), lesson.check.question),
    ];
    for (const { aircraft } of benches)
      for (const { id, inTheOpen } of [...aircraft.parts, ...aircraft.tanks]) {
        expect(clashesOf(aircraft, id), id).toEqual([]);
        const fit = hullFit(aircraft, id);
        if (!inTheOpen) expect(fit.place === 'inside' && fit.clearance.distanceMm, id).toBeGreaterThan(0);
      }
  });

  test('who is asked where the CG will be is told where it is', () => {
    const { ask, as, quantity } = lesson.question;
    const mayGuess = as !== 'value' || quantity.of !== 'cgStation';
    expect(mayGuess || placeholdersIn(ask).includes('before')).toBe(true);
  });

  test('its words name nothing that the page of a lesson has not', () => {
    const named = textsOf(lesson).filter(({ text }) => /\b(beam|manifest|verdict|card)\b/i.test(text));
    expect(named).toEqual([]);
  });
});

test('as the header tank gives its last, the CG goes aft, as the words say', () => {
  const lesson = lessonNamed('header-tank');
  const cg = (steps: number) => figureAt(benchAtStep(lesson, steps), { of: 'cgStation' })!;
  expect(lesson.experiment[2]?.after).toMatch(/took the CG aft/);
  expect(cg(3)).toBeGreaterThan(cg(2) + 1);
});

test('at half full the shift in the climb is at its largest, as the words say', () => {
  const lesson = lessonNamed('fuel-in-the-climb');
  const shift = (leftPct: number) => {
    const level = changed(startBench(lesson), [{ do: 'fuel', leftPct }]);
    const climb = benchAfter(level, lesson.question);
    return figureAt(climb, { of: 'cgStation' })! - figureAt(level, { of: 'cgStation' })!;
  };
  const half = shift(50);
  for (const leftPct of [10, 25, 75, 90]) expect(shift(leftPct)).toBeLessThan(half);
});
