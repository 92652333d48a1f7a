import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { answerOf, lessonAnswer } from '../../model/lessons/answer';
import { checkBench } from '../../model/lessons/bench';
import { lessonFillings, readingFor } from '../../model/lessons/fill';
import type { Lesson } from '../../model/lessons/types';
import type { LessonProgress, LessonStage } from '../../store/lessonProgress';
import { useView } from '../../store/react';
import { Asked } from './Asked';
import { Checked } from './Checked';
import { useLessonKeys } from './FreePlay';
import { Happened } from './Happened';
import { LessonSheet } from './LessonSheet';
import type { SeatOfLesson } from './lessonBench';
import { benchFor, isRevealed, liveFigure } from './lessonCourse';
import { Summed } from './Summed';
import { Tried } from './Tried';
import type { Draft, WaysOn } from './told';
import { liveEstimator, useNow } from './useNow';
import { useShownAxis } from './useShownAxis';

interface GuidedProps extends WaysOn {
  readonly lesson: Lesson;
  readonly seat: SeatOfLesson;
  readonly progress: LessonProgress;
  readonly onProgress: (progress: LessonProgress) => void;
}

/** The five stages, one thing at a time: the stage, under it the axis, and under that the words with one button to go on. */
export function Guided({ lesson, seat, progress, onProgress, ...ways }: GuidedProps) {
  const units = useView((view) => view.units);
  const reading = useMemo(() => readingFor(lesson, units), [lesson, units]);
  const fillings = useMemo(() => lessonFillings(lesson, units), [lesson, units]);
  const answer = useMemo(() => lessonAnswer(lesson), [lesson]);
  const checkAnswer = useMemo(() => answerOf(checkBench(lesson), lesson.check.question), [lesson]);
  const { stage, checkGuess } = progress;
  const [draft, setDraft] = useState<Draft>(() => freshDraft(lesson, stage));
  const open = stage === 'tried' || stage === 'happened' || stage === 'summed' || checkGuess !== null;
  // A key that plays the fuel would show what is being asked.
  useLessonKeys(!open);
  useBenchOfStage(lesson, seat, progress);
  const now = useNow(seat);
  const live = stage === 'tried' ? liveFigure(lesson, now, liveEstimator(seat.bench)) : null;
  const axis = useShownAxis({
    lesson,
    progress,
    reading,
    answer,
    checkAnswer,
    live,
    draft,
    onDraft: setDraft,
  });

  const go = (to: LessonStage, change: Partial<LessonProgress> = {}) => {
    setDraft(freshDraft(lesson, to));
    onProgress({ ...progress, ...change, stage: to });
  };
  if (!answer || !checkAnswer)
    return <p className="lesson-none">The engine finds no answer for this lesson’s aircraft.</p>;
  const common = { lesson, reading, fillings };
  return (
    <LessonSheet axis={axis} open={open} wordsKey={`${stage} ${progress.steps} ${checkGuess === null}`}>
      {stage === 'asked' && (
        <Asked {...common} draft={draft} onPredict={() => go('tried', { guess: draft.value, steps: 0 })} />
      )}
      {stage === 'tried' && (
        <Tried
          {...common}
          seat={seat}
          steps={progress.steps}
          onStep={(steps) => onProgress({ ...progress, steps })}
          onDone={() => go('happened')}
        />
      )}
      {stage === 'happened' && (
        <Happened {...common} guess={progress.guess ?? 0} answer={answer} onDone={() => go('summed')} />
      )}
      {stage === 'summed' && <Summed {...common} onDone={() => go('checked', { checkGuess: null })} />}
      {stage === 'checked' && (
        <Checked
          {...common}
          {...ways}
          answer={checkAnswer}
          reply={checkGuess}
          draft={draft}
          onReply={(reply) => onProgress({ ...progress, checkGuess: reply, done: true })}
        />
      )}
    </LessonSheet>
  );
}

/** Where the marker stands before anybody has touched it. */
function freshDraft({ question, check }: Lesson, stage: LessonStage): Draft {
  const asked = stage === 'checked' && check.question.by === 'marker' ? check.question : question;
  return { value: asked.axis.start, placed: false };
}

/** Puts the bench as each stage wants it. Where the lesson was left for free play, it stands as it did. */
function useBenchOfStage(lesson: Lesson, seat: SeatOfLesson, progress: LessonProgress): void {
  const shown = useRef(progress);
  useLayoutEffect(() => {
    const { stage, checkGuess } = shown.current;
    const comes = stage !== progress.stage || checkGuess !== progress.checkGuess;
    shown.current = progress;
    if (comes) seat.putOn(benchFor(lesson, progress));
    seat.reveal(isRevealed(progress));
    seat.bench.view.setState({ view: lesson.look?.view ?? 'side' });
  }, [lesson, seat, progress]);
}
