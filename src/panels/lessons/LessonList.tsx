import { useRef } from 'react';
import { type ProgressOfAll, STAGES, stageReached } from '../../store/lessonProgress';
import { Icon } from '../icons';
import type { ListedLesson } from '../lessonActions';
import { LessonDrawing } from './LessonDrawing';

interface LessonListProps {
  readonly lessons: readonly ListedLesson[];
  readonly progress: ProgressOfAll;
  readonly onOpen: (key: string) => void;
  readonly onRemove: (key: string) => void;
  readonly onOpenFile: () => void;
}

/** All lessons: those that come with the bench, and below them those of one's own. */
export function LessonList({ lessons, progress, onOpen, onRemove, onOpenFile }: LessonListProps) {
  const ours = lessons.filter(({ isOwn }) => !isOwn);
  const added = lessons.filter(({ isOwn }) => isOwn);
  const done = ours.filter(({ key }) => progress[key]?.done).length;
  return (
    <div className="lesson-list">
      <header className="lesson-list-head">
        <h2>Lessons</h2>
        <p>
          Balance, understood by hand. Say first what you think will happen, then try it on a small aircraft
          of its own. Yours stays as it is.
        </p>
        {done > 0 && (
          <p className="hint">
            {done} of {ours.length} done
          </p>
        )}
      </header>
      <ol className="lesson-cards">
        {ours.map((listed, at) => (
          <LessonCard key={listed.key} listed={listed} number={at + 1} progress={progress} onOpen={onOpen} />
        ))}
      </ol>
      <section className="lesson-own" aria-label="Lessons of your own">
        <h3>Lessons of your own</h3>
        <p className="hint">
          A lesson is a small file. Open one that your instructor gave you, or drop it on this page; it stays
          in this browser.
        </p>
        {added.length > 0 && (
          <ul className="lesson-cards">
            {added.map((listed) => (
              <LessonCard
                key={listed.key}
                listed={listed}
                number={null}
                progress={progress}
                onOpen={onOpen}
                onRemove={onRemove}
              />
            ))}
          </ul>
        )}
        <button type="button" className="button" onClick={onOpenFile}>
          Open a lesson file…
        </button>
      </section>
    </div>
  );
}

interface LessonCardProps {
  readonly listed: ListedLesson;
  readonly number: number | null;
  readonly progress: ProgressOfAll;
  readonly onOpen: (key: string) => void;
  readonly onRemove?: (key: string) => void;
}

function LessonCard({ listed: { key, lesson }, number, progress, onOpen, onRemove }: LessonCardProps) {
  const standing = progress[key];
  const reached = standing ? stageReached(standing) : 0;
  const done = standing?.done ?? false;
  const opener = useRef<HTMLButtonElement>(null);
  const view = lesson.look?.view;
  return (
    <li className="lesson-card" data-testid="lesson-card" data-done={done || undefined}>
      <button ref={opener} type="button" className="lesson-open" onClick={() => onOpen(key)}>
        <LessonDrawing
          aircraft={lesson.aircraft}
          view={view === 'front' ? 'behind' : view === 'top' ? 'top' : 'side'}
        />
        <span className="lesson-card-title">
          {number !== null && <span className="lesson-number figure">{number}</span>}
          {lesson.title}
        </span>
        <span className="lesson-card-about">{lesson.about}</span>
        <span className="lesson-card-foot">
          <span>{lesson.minutes} minutes</span>
          <Standing reached={reached} done={done} />
        </span>
      </button>
      {onRemove && (
        <button
          type="button"
          className="button bare"
          aria-label={`Take ${lesson.title} off the list`}
          title="Take it off the list"
          onClick={() => onRemove(key)}
        >
          <Icon name="bin" />
        </button>
      )}
    </li>
  );
}

/** Not begun, begun at a stage, or done: in words, and as five small strokes. */
function Standing({ reached, done }: { readonly reached: number; readonly done: boolean }) {
  const words = done
    ? reached > 0 && reached < STAGES.length
      ? `Done; again at ${reached} of ${STAGES.length}`
      : 'Done'
    : reached > 0
      ? `Begun, at ${reached} of ${STAGES.length}`
      : 'Not begun';
  return (
    <span className="lesson-standing">
      {done ? (
        <Icon name="tick" />
      ) : (
        <span className="lesson-strokes" aria-hidden="true">
          {STAGES.map((stage, at) => (
            <i key={stage} data-reached={at < reached || undefined} />
          ))}
        </span>
      )}
      {words}
    </span>
  );
}
