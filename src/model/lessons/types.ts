import type * as v from 'valibot';
import type { Aircraft } from '../document/types';
import type { StabilityEstimate } from '../stability/stability';
import type { change } from './schema/change';
import type { lesson } from './schema/lesson';
import type { quantity, shownQuantity } from './schema/quantity';
import type { choiceQuestion, question } from './schema/question';
import type { step } from './schema/step';

type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/*
 * How a lesson is gone through; every function is pure, and each figure comes from the engine.
 *
 * 0  `readLesson(json)` (or `parseLesson(text)`) gives the lesson, or sentences. `startBench(lesson)` is the bench to put up:
 *    aircraft, fuel, attitude, switches; `look` says how it is looked at.
 * 1  `question.ask` through `filled(text, fillings, readingFor(lesson, units))`; the marker runs along `question.axis`, in the
 *    unit of the quantity (`figureText` writes it; stations are from the datum and read from `question.from`).
 * 2  `firstProgress(lesson)`; with each change of the live bench `stepState(lesson, progress, now, reading)` says whether the
 *    step is done, or what hint to give. When it is done: `settled(...)` is the bench set exactly, `nextStep(progress, bench)`
 *    the next step. `benchAtStep(lesson, index)` puts the bench back after free play; `wayOf` shows how a step is done.
 * 3  `lessonAnswer(lesson)` and `compared(predicted, answer, question.axis)` choose the words in `outcome`; their
 *    placeholders are `lessonFillings(lesson, units)` and `predictionFillings(question, predicted, answer, reading)`.
 * 4  `lessonSheets(lesson, units)` are the sums, with `sum.intro` before and `sum.closing` after them.
 * 5  `checkBench(lesson)`, `answerOf(checkBench(lesson), check.question)`, and `isRight(check.question, answer, reply)`.
 *
 * Where the neutral point is asked for, an `Estimator` may be handed in; without one it is worked out on the spot, once for
 * each airframe (`needsEstimate` tells whether a quantity wants it).
 */

/** A lesson as the file has it, its aircraft not yet read. */
export type LessonFile = Frozen<v.InferOutput<typeof lesson>>;

/** A lesson that was read, with its aircraft (`readLesson`). */
export interface Lesson extends Omit<LessonFile, 'aircraft' | 'check'> {
  readonly aircraft: Aircraft;
  readonly check: Omit<LessonFile['check'], 'aircraft'> & { readonly aircraft?: Aircraft };
}

export type Change = Frozen<v.InferOutput<typeof change>>;
export type Quantity = Frozen<v.InferOutput<typeof quantity>>;
export type ShownQuantity = Frozen<v.InferOutput<typeof shownQuantity>>;
export type PartFor = Extract<Quantity, { readonly of: 'partFor' }>;
/** A question answered with a marker. */
export type Question = Frozen<v.InferOutput<typeof question>>;
/** A question answered by choosing words. */
export type ChoiceQuestion = Frozen<v.InferOutput<typeof choiceQuestion>>;
export type CheckQuestion = LessonFile['check']['question'];
export type Step = Frozen<v.InferOutput<typeof step>>;
export type Goal = Step['goal'];
/** The figure itself, how far it moved, or how many times as much it is. */
export type AskedAs = Question['as'];
/** What a question asks for and after which change. */
export type Asked = Pick<Question, 'change' | 'quantity' | 'as'>;

/** Finds the neutral point of an aircraft; null where nothing lifts or none can be found. */
export type Estimator = (aircraft: Aircraft) => StabilityEstimate | null;
