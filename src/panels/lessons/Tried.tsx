import { useEffect, useState } from 'react';
import { changed, type LessonBench } from '../../model/lessons/bench';
import { filled } from '../../model/lessons/fill';
import { subjectOf } from '../../model/lessons/goals';
import { benchAtStep, settled, stepState, wayOf } from '../../model/lessons/steps';
import type { Change } from '../../model/lessons/types';
import { GoalMeter } from './GoalMeter';
import { LessonCautions } from './LessonCautions';
import type { SeatOfLesson } from './lessonBench';
import { Said } from './Said';
import { StepControls } from './StepControls';
import type { Told } from './told';
import { liveEstimator, useNow } from './useNow';

interface TriedProps extends Told {
  readonly seat: SeatOfLesson;
  readonly steps: number;
  readonly onStep: (steps: number) => void;
  readonly onDone: () => void;
}

/** The experiment, step by step, by hand on the live bench. */
export function Tried({ lesson, reading, fillings, seat, steps, onStep, onDone }: TriedProps) {
  const { experiment } = lesson;
  const index = Math.min(steps, experiment.length - 1);
  const step = experiment[index]!;
  const [from, setFrom] = useState<LessonBench>(() => benchAtStep(lesson, index));
  const now = useNow(seat);
  const state = stepState(lesson, { index, from }, now, reading, liveEstimator(seat.bench));
  const way = wayOf(lesson, step);
  const isLast = index === experiment.length - 1;

  // After the page has put the bench as the stage wants it, which lets go of whatever was chosen.
  useEffect(() => {
    seat.holdTo(step.rail ?? null);
    choose(seat, wayOf(lesson, step));
    return () => seat.holdTo(null);
  }, [lesson, seat, step]);

  const putOn = (bench: LessonBench) => {
    seat.putOn(bench);
    choose(seat, way);
  };

  const goOn = () => {
    const after = settled(lesson, { index, from }, seat.now());
    seat.putOn(after);
    if (isLast) return onDone();
    setFrom(after);
    onStep(index + 1);
  };
  return (
    <>
      <div className="lesson-says">
        {experiment.length > 1 && (
          <p className="lesson-count">
            Step {index + 1} of {experiment.length}
          </p>
        )}
        <h3 tabIndex={-1}>
          <Said>{filled(step.do, fillings, reading)}</Said>
        </h3>
        {index === 0 && <LessonCautions ids={lesson.cautions} />}
      </div>
      <div className="lesson-does">
        <StepControls key={index} seat={seat} from={from} way={way} />
        <GoalMeter goal={step.goal} way={way} from={from} now={now} done={state.done} />
        <p className="lesson-hint" role="status" data-kind={state.done ? 'done' : state.hint?.kind}>
          {state.done
            ? step.after
              ? filled(step.after, fillings, reading)
              : 'That is it.'
            : state.hint?.says}
        </p>
        <p className="lesson-go">
          <button type="button" className="button strong lesson-next" disabled={!state.done} onClick={goOn}>
            {isLast ? 'Hold it against my prediction' : 'Next step'}
          </button>
          {state.hint?.kind === 'other' && (
            <button type="button" className="button" onClick={() => putOn(from)}>
              Put it all back
            </button>
          )}
          {!state.done && (
            <button type="button" className="link lesson-show" onClick={() => putOn(changed(from, way))}>
              Show me
            </button>
          )}
        </p>
      </div>
    </>
  );
}

/** Takes up what a step is about, so that keys move it; nothing where it is not aboard. */
function choose(seat: SeatOfLesson, [first]: readonly Change[]): void {
  const subject = first ? subjectOf(first) : '';
  const { parts, tanks } = seat.now().aircraft;
  const isAboard = [...parts, ...tanks].some(({ id }) => id === subject);
  seat.bench.view.setState({ selectedId: isAboard ? subject : null });
}
