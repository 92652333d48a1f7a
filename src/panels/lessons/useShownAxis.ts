import type { Answer } from '../../model/lessons/answer';
import type { Reading } from '../../model/lessons/figureText';
import type { Lesson, Question } from '../../model/lessons/types';
import type { LessonProgress } from '../../store/lessonProgress';
import { useAxis, useCommitted, useView } from '../../store/react';
import { fromWords } from '../measureFrom';
import type { ShownAxis } from './LessonSheet';
import { questionAxis } from './questionAxis';
import type { Draft } from './told';

interface ShownAxisInput {
  readonly lesson: Lesson;
  readonly progress: LessonProgress;
  readonly reading: Reading;
  readonly answer: Answer | null;
  readonly checkAnswer: Answer | null;
  /** How the figure that is asked for stands while it is tried; null where it has none. */
  readonly live: number | null;
  readonly draft: Draft;
  readonly onDraft: (draft: Draft) => void;
}

/** What stands on the axis at each stage; null where the check is answered in words. */
export function useShownAxis(input: ShownAxisInput): ShownAxis | null {
  const { lesson, progress, reading, answer, checkAnswer, live, draft, onDraft } = input;
  const axes = useAxis((state) => state);
  const view = useView((state) => state.view);
  const from = useCommitted((aircraft) => fromWords(aircraft, lesson.question.from ?? null));
  const { stage, guess, checkGuess } = progress;
  const of = (question: Pick<Question, 'quantity' | 'as' | 'axis'>) =>
    questionAxis(question, axes, view, reading, from);
  const open = { ...draft, onMove: (value: number) => onDraft({ value, placed: true }), answer: null };
  if (stage === 'checked') {
    const { question } = lesson.check;
    if (question.by === 'choice') return null;
    if (checkGuess === null) return { of: of(question), name: NAME, ...open };
    return {
      of: of(question),
      name: NAME,
      value: checkGuess,
      placed: true,
      onMove: null,
      answer: shown(checkAnswer?.answer),
    };
  }
  const question = of(lesson.question);
  if (stage === 'asked' || guess === null) return { of: question, name: NAME, ...open };
  return {
    of: question,
    name: NAME,
    value: guess,
    placed: true,
    onMove: null,
    answer:
      stage === 'tried' ? (live === null ? null : { value: live, isLive: true }) : shown(answer?.answer),
  };
}

const shown = (value: number | undefined) => (value === undefined ? null : { value, isLive: false });

const NAME = 'Your prediction';
