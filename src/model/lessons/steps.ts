import { itemById } from '../document/edit';
import { shownText } from '../document/names';
import { formatNumber } from '../units';
import { withSolved } from './answer';
import { astray } from './astray';
import { changed, type LessonBench, startBench } from './bench';
import { differenceText, type Reading } from './figureText';
import { filled } from './fill';
import { DEFAULT_WITHIN, type Measured, measuredBy, subjectOf } from './goals';
import { estimateHere, figureAt } from './quantity';
import type { Change, Estimator, Goal, Lesson, Step } from './types';

/** In what way somebody went astray. */
export type Astray = 'other' | 'short' | 'far' | 'wrongWay';

/** How a step stands. */
export interface StepState {
  readonly done: boolean;
  /** How the hand went astray, and what is said of it; null where nothing was touched yet, or all is well. */
  readonly hint: { readonly kind: Astray; readonly says: string } | null;
}

/** What a figure may differ by for the way that it was worked out, in its unit. */
const ROUNDING = 1e-9;

/** How far a person has come: the step in hand, and the bench as it was when that step began. */
export interface Progress {
  readonly index: number;
  readonly from: LessonBench;
}

export const firstProgress = (lesson: Lesson): Progress => ({ index: 0, from: startBench(lesson) });

/** One way to do a step, with what the engine found in the place of "solved". */
export function wayOf(lesson: Lesson, step: Step, estimator: Estimator = estimateHere): readonly Change[] {
  const { goal } = step;
  const way = goal.by === 'change' ? [goal.change] : goal.way;
  return withSolved(startBench(lesson), lesson.question, way, estimator);
}

/** The bench as it is when a step begins, with all steps before it done as the file would: to come back to after free play. */
export const benchAtStep = (
  lesson: Lesson,
  index: number,
  estimator: Estimator = estimateHere,
): LessonBench =>
  lesson.experiment
    .slice(0, index)
    .reduce((bench, step) => changed(bench, wayOf(lesson, step, estimator)), startBench(lesson));

/**
 * The bench once a step is done, set exactly where the step wanted it, so that what is read is what the engine says. A step that
 * lets a figure lie between two leaves it where the hand did.
 */
export function settled(
  lesson: Lesson,
  { index, from }: Progress,
  now: LessonBench,
  estimator: Estimator = estimateHere,
): LessonBench {
  const step = lesson.experiment[index];
  return step?.goal.by === 'change' ? changed(from, wayOf(lesson, step, estimator)) : now;
}

/**
 * How the step in hand stands on the bench. Done is what it asks for, within its tolerance, with all else as it was; the way there
 * is free. After the last step there is none, and nothing is done.
 */
export function stepState(
  lesson: Lesson,
  { index, from }: Progress,
  now: LessonBench,
  reading: Reading,
  estimator: Estimator = estimateHere,
): StepState {
  const step = lesson.experiment[index];
  if (!step) return { done: false, hint: null };
  const way = wayOf(lesson, step, estimator);
  const { goal } = step;
  const measured = goalMeasured(goal, way, from, now, estimator);
  const within = goal.by === 'change' ? (goal.within ?? DEFAULT_WITHIN[goal.change.do]) : 0;
  const off = measured.filter(
    ({ is, shall, within: fixed = within }) => !(Math.abs(is - shall) <= fixed + ROUNDING),
  );
  const other = astray(from, now, way) ?? (off.some(({ is }) => Number.isNaN(is)) ? nameOf(way, from) : null);
  if (other !== null) return { done: false, hint: hintOf('other', step, { item: other }, reading) };
  const [first] = off;
  if (measured.length > 0 && !first) return { done: true, hint: null };
  const kind = first ? strayKind(first) : null;
  if (!first || !kind) return { done: false, hint: null };
  return {
    done: false,
    hint: hintOf(kind, step, { item: nameOf(way, now), away: awayText(first, goal, reading) }, reading),
  };
}

/** The figures that a goal is about; of one that a figure has to reach, the nearest that would do. */
function goalMeasured(
  goal: Goal,
  way: readonly Change[],
  from: LessonBench,
  now: LessonBench,
  estimator: Estimator,
): readonly Measured[] {
  if (goal.by === 'change') return way.flatMap((change) => measuredBy(change, from, now));
  const was = figureAt(from, goal.quantity, estimator);
  const is = figureAt(now, goal.quantity, estimator);
  if (was === null || is === null) return [];
  const { least = -Infinity, most = Infinity } = goal;
  const shall = Math.min(most, Math.max(least, is));
  return [{ was, is, shall, unit: '×' }];
}

/** Null where it was not touched. */
function strayKind({ was, is, shall }: Measured): Exclude<Astray, 'other'> | null {
  if (is === was) return null;
  if ((is - shall) * (was - shall) < 0) return 'far';
  return Math.abs(is - shall) < Math.abs(was - shall) ? 'short' : 'wrongWay';
}

function awayText({ is, shall, unit }: Measured, goal: Goal, reading: Reading): string {
  const away = Math.abs(is - shall);
  if (goal.by === 'reach')
    return differenceText(away, { quantity: goal.quantity, as: 'value' }, reading.units);
  switch (unit) {
    case 'mm':
      return differenceText(away, { quantity: { of: 'cgStation' }, as: 'shift' }, reading.units);
    case 'g':
      return differenceText(away, { quantity: { of: 'mass' }, as: 'shift' }, reading.units);
    case 'ml':
      return differenceText(away, { quantity: { of: 'liquid', tankId: '' }, as: 'shift' }, reading.units);
    case '%':
      return `${formatNumber(away, 0)} %`;
    case '°':
      return `${formatNumber(away, 0)}°`;
    case '×':
      return formatNumber(away, 1);
  }
}

function nameOf(way: readonly Change[], { aircraft }: LessonBench): string {
  const [change] = way;
  if (!change) return 'it';
  const item = itemById(aircraft, subjectOf(change));
  return item ? `“${shownText(item.name)}”` : 'it';
}

const usualHints: Readonly<Record<Astray, string>> = {
  other: 'That changed {item}. Undo it, then go on.',
  short: 'The right way. It wants {away} more.',
  far: 'That is {away} too far.',
  wrongWay: 'That is the wrong way.',
};

function hintOf(
  kind: Astray,
  { hints }: Step,
  fillings: Readonly<Record<string, string>>,
  reading: Reading,
): StepState['hint'] {
  return { kind, says: filled(hints?.[kind] ?? usualHints[kind], fillings, reading) };
}

/** On to the next step, which begins with the bench as it is. */
export const nextStep = ({ index }: Progress, from: LessonBench): Progress => ({ index: index + 1, from });

/** Whether every step is done. */
export const stepsDone = ({ experiment }: Lesson, { index }: Progress): boolean => index >= experiment.length;
