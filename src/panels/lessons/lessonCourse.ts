import { asAsked, benchAfter } from '../../model/lessons/answer';
import { checkBench, type LessonBench, startBench } from '../../model/lessons/bench';
import { figureAt } from '../../model/lessons/quantity';
import { asItIs } from '../../model/lessons/solved';
import { benchAtStep } from '../../model/lessons/steps';
import type { Estimator, Lesson } from '../../model/lessons/types';
import type { LessonProgress, LessonStage } from '../../store/lessonProgress';

/** What each stage is called. */
export const STAGE_NAMES: Readonly<Record<LessonStage, string>> = {
  asked: 'Predict',
  tried: 'Try',
  happened: 'See',
  summed: 'The sum',
  checked: 'Check',
};

/** How the bench stands where a person has come to. */
export function benchFor(lesson: Lesson, { stage, steps, checkGuess }: LessonProgress): LessonBench {
  switch (stage) {
    case 'asked':
      return startBench(lesson);
    case 'tried':
      return benchAtStep(lesson, steps);
    case 'happened':
    case 'summed':
      return benchAfter(startBench(lesson), lesson.question);
    case 'checked': {
      const bench = checkBench(lesson);
      return checkGuess === null ? bench : benchAfter(bench, lesson.check.question);
    }
  }
}

/** Whether the CG and the figures may be seen: never before what they would tell was predicted. */
export const isRevealed = ({ stage, checkGuess }: LessonProgress): boolean =>
  stage === 'checked' ? checkGuess !== null : stage !== 'asked';

/** What the lesson asks for as it is on the bench now; null where the bench has no such figure. */
export function liveFigure(lesson: Lesson, now: LessonBench, estimator: Estimator): number | null {
  const { quantity, as } = lesson.question;
  const figure = (bench: LessonBench) =>
    quantity.of === 'partFor' ? asItIs(bench, quantity) : figureAt(bench, quantity, estimator);
  const [first, last] = [figure(startBench(lesson)), figure(now)];
  return first === null || last === null ? null : asAsked(as, last, first);
}
