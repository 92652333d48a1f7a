import './lessonPage.css';
import { use, useEffect, useState } from 'react';
import type { LessonBench } from '../../model/lessons/bench';
import type { Bench } from '../../store/bench';
import { begunAnew, type LessonProgress, STAGES } from '../../store/lessonProgress';
import { BenchContext, useBench } from '../../store/react';
import { FilesContext } from '../filesContext';
import type { ListedLesson } from '../lessonActions';
import { UndoRedo } from '../menu/UndoRedo';
import { Notices } from '../Notices';
import { OwnBenchContext } from '../ownBench';
import { FreePlay } from './FreePlay';
import { Guided } from './Guided';
import { followPage, lessonSeat } from './lessonBench';
import { benchFor, isRevealed, STAGE_NAMES } from './lessonCourse';

declare global {
  interface HTMLElement {
    /** The bench of the lesson that is open, for whoever wants to look at it. */
    lessonBench?: Bench;
  }
}

interface LessonPageProps {
  readonly listed: ListedLesson;
  readonly progress: LessonProgress;
  readonly onProgress: (progress: LessonProgress) => void;
  /** Back to the list. */
  readonly onLeave: () => void;
  /** On to the lesson after this one; null after the last. */
  readonly next: { readonly title: string; open(): void } | null;
}

/** One lesson on a bench of its own: its five stages, and free play from any of them and back. */
export function LessonPage({ listed, progress, onProgress, onLeave, next }: LessonPageProps) {
  const { lesson } = listed;
  const main = useBench();
  const ownBench = use(OwnBenchContext);
  const [seat] = useState(() => lessonSeat(main, lesson, benchFor(lesson, progress)));
  /** How the lesson stood when it was left for free play; null while it is not. */
  const [left, setLeft] = useState<LessonBench | null>(null);
  /** Counts the beginnings, so that nothing of one is left in the next. */
  const [beginning, setBeginning] = useState(0);
  useEffect(() => followPage(main, seat.bench), [main, seat]);
  useEffect(() => ownBench?.start(seat.bench), [ownBench, seat]);

  const playFreely = () => {
    setLeft(seat.now());
    seat.holdTo(null);
    seat.reveal(true);
  };
  const comeBack = () => {
    if (!left) return;
    seat.putOn(left);
    seat.reveal(isRevealed(progress));
    seat.bench.view.setState({ view: lesson.look?.view ?? 'side' });
    setLeft(null);
  };
  const beginAnew = () => {
    setLeft(null);
    setBeginning(beginning + 1);
    const anew = begunAnew(progress);
    seat.putOn(benchFor(lesson, anew));
    seat.reveal(false);
    onProgress(anew);
  };
  const take = () => {
    const { aircraft } = seat.now();
    main.drag.cancel();
    main.document.replace(aircraft, `Take ${aircraft.name} from the lesson`);
    main.view.setState({ place: 'bench' });
    main.notice.tell({
      about: 'lesson',
      tone: 'done',
      text: `${aircraft.name} is on the bench, with a place of its own in the fleet. Undo brings back what stood here before.`,
    });
  };

  return (
    <main
      ref={(element) => {
        if (element) element.lessonBench = seat.bench;
      }}
      className="place lessons lesson"
      data-testid="lessons"
      data-stage={progress.stage}
    >
      <header className="lesson-head">
        <button type="button" className="button bare lesson-back" onClick={onLeave}>
          <span aria-hidden="true">‹</span> All lessons
        </button>
        <h2>{lesson.title}</h2>
        {left === null ? (
          <ol className="lesson-stages" aria-label="Stages of the lesson">
            {STAGES.map((stage, at) => (
              <li
                key={stage}
                aria-current={stage === progress.stage ? 'step' : undefined}
                data-past={at < STAGES.indexOf(progress.stage) || undefined}
              >
                <span className="figure">{at + 1}</span>{' '}
                <span className="lesson-stage-name">{STAGE_NAMES[stage]}</span>
              </li>
            ))}
          </ol>
        ) : (
          <p className="lesson-free">Free play: move what you like. Your place in the lesson is kept.</p>
        )}
        <div className="lesson-ways">
          {left === null ? (
            <>
              <button type="button" className="button" onClick={playFreely}>
                Try freely
              </button>
              <button type="button" className="button" onClick={beginAnew}>
                Start again
              </button>
            </>
          ) : (
            <>
              <BenchContext value={seat.bench}>
                <UndoRedo />
              </BenchContext>
              <button type="button" className="button strong" onClick={comeBack}>
                Back to the lesson
              </button>
              <button type="button" className="button" onClick={take}>
                Take this aircraft to the bench
              </button>
            </>
          )}
        </div>
      </header>
      <BenchContext value={seat.bench}>
        <FilesContext value={null}>
          {left === null ? (
            <Guided
              key={beginning}
              lesson={lesson}
              seat={seat}
              progress={progress}
              onProgress={onProgress}
              onLeave={onLeave}
              onTake={take}
              next={next}
            />
          ) : (
            <FreePlay />
          )}
          <Notices />
        </FilesContext>
      </BenchContext>
    </main>
  );
}
