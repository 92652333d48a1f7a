import './lessonWords.css';
import { type ReactNode, use, useEffect, useRef } from 'react';
import { OwnBenchContext } from '../ownBench';
import { Boundary } from '../trouble/Boundary';
import { useNudge } from '../useNudge';
import { type AxisOfQuestion, LessonAxis } from './LessonAxis';

export interface ShownAxis {
  readonly of: AxisOfQuestion;
  readonly value: number;
  readonly placed: boolean;
  readonly onMove: ((value: number) => void) | null;
  readonly answer: { readonly value: number; readonly isLive: boolean } | null;
  readonly name: string;
}

interface LessonSheetProps {
  /** Null where nothing is asked along an axis. */
  readonly axis: ShownAxis | null;
  /** Whether hands may be laid on the aircraft. */
  readonly open: boolean;
  /** Which words these are: with others the focus goes to their heading. */
  readonly wordsKey: string;
  readonly children: ReactNode;
}

/** The stage, the axis under it in the same width, and the words. */
export function LessonSheet({ axis, open, wordsKey, children }: LessonSheetProps) {
  const stage = use(OwnBenchContext)?.stage;
  const nudge = useNudge();
  const words = useRef<HTMLElement>(null);
  const shown = useRef(wordsKey);
  useEffect(() => {
    // Who hears the page is led to what comes next; at the opening the page's own order serves.
    if (shown.current !== wordsKey) words.current?.querySelector('h3')?.focus({ preventScroll: true });
    shown.current = wordsKey;
    if (words.current) words.current.scrollTop = 0;
  }, [wordsKey]);
  return (
    <div className="lesson-sheet">
      <div className="lesson-stage" data-testid="lesson-stage" data-still={!open || undefined}>
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset */}
        <div
          className="stage-picture"
          role="group"
          tabIndex={open ? 0 : -1}
          aria-label={
            open
              ? 'Stage. Arrow keys move the selected thing, square brackets select the next one.'
              : 'Stage. It can be moved once you have made your prediction.'
          }
          {...(open && nudge)}
        >
          <Boundary place="The stage">{stage}</Boundary>
        </div>
        {axis?.of.onStage && (
          <span className="lesson-plumb" style={{ left: axis.of.onStage(axis.value) }} aria-hidden="true" />
        )}
      </div>
      {axis && <LessonAxis {...axis} />}
      <section ref={words} className="lesson-words" aria-label="The lesson">
        {children}
      </section>
    </div>
  );
}
