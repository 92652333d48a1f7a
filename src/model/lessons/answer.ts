import { changed, type LessonBench, startBench } from './bench';
import { estimateHere, figureAt } from './quantity';
import { asItIs, solvedChange, solvedFigure } from './solved';
import type { Asked, AskedAs, Change, Estimator, Lesson, Quantity } from './types';

/** What the engine says to a question, in the unit of what is asked. */
export interface Answer {
  /** The same as it was before the change: 0 where a shift is asked for, 1 where it is how many times. */
  readonly before: number;
  readonly answer: number;
}

/** Any figure of a bench: as shown, or solved for. Null where there is none. */
export const quantityAt = (
  bench: LessonBench,
  quantity: Quantity,
  estimator: Estimator = estimateHere,
): number | null =>
  quantity.of === 'partFor' ? solvedFigure(bench, quantity, estimator) : figureAt(bench, quantity, estimator);

/** Works out what a question asks for; null where the bench has no such figure. */
export function answerOf(
  bench: LessonBench,
  { change, quantity, as }: Asked,
  estimator: Estimator = estimateHere,
): Answer | null {
  const first = quantity.of === 'partFor' ? asItIs(bench, quantity) : quantityAt(bench, quantity, estimator);
  const last = quantityAt(changed(bench, change), quantity, estimator);
  if (first === null || last === null) return null;
  const answer = { before: asAsked(as, first, first), answer: asAsked(as, last, first) };
  return Number.isFinite(answer.answer) ? answer : null;
}

/** A figure as it is asked for: itself, how far it moved from the first, or how many times as much it is. */
export function asAsked(as: AskedAs, figure: number, first: number): number {
  switch (as) {
    case 'value':
      return figure;
    case 'shift':
      return figure - first;
    case 'times':
      return figure / first;
  }
}

/** The lesson's answer to its own question. */
export const lessonAnswer = (lesson: Lesson, estimator: Estimator = estimateHere): Answer | null =>
  answerOf(startBench(lesson), lesson.question, estimator);

/** Changes with what the engine found in the place of "solved"; one that asks for nothing solved leaves them as they are. */
export function withSolved(
  bench: LessonBench,
  { change, quantity }: Asked,
  changes: readonly Change[],
  estimator: Estimator = estimateHere,
): readonly Change[] {
  if (quantity.of !== 'partFor' || !changes.some((each) => each.do === 'solved')) return changes;
  const found = quantityAt(changed(bench, change), quantity, estimator);
  if (found === null) return changes;
  return changes.map((each) => (each.do === 'solved' ? solvedChange(quantity, found) : each));
}

/** The bench after all that a question speaks of: its change, and what was looked for put in. */
export const benchAfter = (
  bench: LessonBench,
  asked: Asked,
  estimator: Estimator = estimateHere,
): LessonBench => changed(bench, withSolved(bench, asked, [...asked.change, { do: 'solved' }], estimator));
