import { benchAfter } from '../../model/lessons/answer';
import { checkBench, type LessonBench, startBench } from '../../model/lessons/bench';
import { benchAtStep } from '../../model/lessons/steps';
import type { Lesson } from '../../model/lessons/types';
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
