import type { Answer } from './answer';
import type { ChoiceQuestion, LessonFile, Question } from './types';

/** How a prediction compares with what happened; each has its words in the lesson. */
export type Comparison = Exclude<keyof LessonFile['outcome'], 'why'>;

/** A marker goes by steps of tenths, which are not exact: so much beyond the tolerance is none, as a share of the figure. */
const ROUNDING = 1e-9;

/**
 * Whether a prediction was right within the tolerance; if not, whether it went the right way. Where nothing changes, any
 * change foretold is too much of it.
 */
export function compared(
  predicted: number,
  { before, answer }: Answer,
  { within }: Pick<Question['axis'], 'within'>,
): Comparison {
  const near = (a: number, b: number) => Math.abs(a - b) <= within + ROUNDING * Math.max(1, Math.abs(b));
  if (near(predicted, answer)) return 'right';
  if (near(answer, before)) return 'tooMuch';
  if (near(predicted, before)) return 'tooLittle';
  if ((predicted - before) * (answer - before) < 0) return 'wrongWay';
  return Math.abs(predicted - before) < Math.abs(answer - before) ? 'tooLittle' : 'tooMuch';
}

/** Which options the engine holds right, by their place in the list. A sound lesson has exactly one. */
export const rightOptions = (
  { options }: Pick<ChoiceQuestion, 'options'>,
  { answer }: Answer,
): readonly number[] =>
  options.flatMap(({ least = -Infinity, most = Infinity }, index) =>
    answer >= least && answer <= most ? [index] : [],
  );

/** What was answered to a check: where the marker was left, or which option was chosen. */
export type CheckReply =
  | { readonly by: 'marker'; readonly at: number }
  | { readonly by: 'choice'; readonly index: number };

/** Whether a reply to a check is right. */
export function isRight(
  question: LessonFile['check']['question'],
  answer: Answer,
  reply: CheckReply,
): boolean {
  if (question.by === 'marker') {
    return reply.by === 'marker' && compared(reply.at, answer, question.axis) === 'right';
  }
  return reply.by === 'choice' && rightOptions(question, answer).includes(reply.index);
}
