import './show.css';
import { use, useEffect, useMemo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { fileStem } from '../../../model/document/fileStem';
import type { Slide } from '../../../model/document/types';
import { slidesOf } from '../../../model/talk/slides';
import { useCommitted } from '../../../store/react';
import { FilesContext } from '../../filesContext';
import { Icon } from '../../icons';
import { filmOfShow } from './filmOfShow';
import { SlideShown } from './SlideShown';
import { useFullScreen } from './useFullScreen';
import { type ShowWays, useShowKeys } from './useShowKeys';
import { useShowBench } from './useShown';

interface ShowProps {
  /** The slide that it begins with. */
  readonly from: number;
  /** Goes through by itself and is filmed. */
  readonly filmed: boolean;
  readonly onClose: () => void;
}

/** The talk over the whole screen, one slide at a time. */
export function Show({ from, filmed, onClose }: ShowProps) {
  const aircraft = useCommitted((committed) => committed);
  const slides = slidesOf(aircraft);
  const [wanted, setWanted] = useState(from);
  const [notes, setNotes] = useState(false);
  const [pointer, setPointer] = useState(true);
  const [round, setRound] = useState(0);
  const sheet = useRef<HTMLDivElement>(null);
  const bench = useShowBench(aircraft);
  const count = slides.length;
  const at = Math.min(wanted, count - 1);
  const slide = slides[at];
  const ways = useMemo((): ShowWays => {
    const go = (by: number) => setWanted((now) => Math.min(count - 1, Math.max(0, now + by)));
    return {
      go,
      goTo: (end) => setWanted(end === 'first' ? 0 : count - 1),
      leave: onClose,
      notes: () => setNotes((now) => !now),
      pointer: () => setPointer((now) => !now),
      again: () => setRound((now) => now + 1),
    };
  }, [count, onClose]);
  useShowKeys(ways);
  useFullScreen(sheet, onClose);
  const filming = useFilm(filmed, bench, slides, setWanted, onClose);
  if (!slide) return null;
  return createPortal(
    <div
      ref={sheet}
      className="show"
      role="dialog"
      aria-modal="true"
      aria-label={`Slide ${at + 1} of ${count}: ${slide.title}`}
      tabIndex={-1}
      data-testid="show"
    >
      <h2>{slide.title}</h2>
      <SlideShown
        aircraft={aircraft}
        slide={slide}
        round={round}
        pointer={pointer && !filmed}
        onSwipe={ways.go}
        bench={bench}
      />
      {notes && (
        <aside className="show-notes" aria-label="Note">
          {slide.note ?? 'This slide has no note.'}
        </aside>
      )}
      <footer className="show-foot">
        <button type="button" aria-label="The slide before" disabled={at === 0} onClick={() => ways.go(-1)}>
          <Icon name="up" />
        </button>
        <span className="figure" role="status">
          {at + 1} / {count}
        </span>
        <button
          type="button"
          aria-label="The next slide"
          disabled={at === count - 1}
          onClick={() => ways.go(1)}
        >
          <Icon name="down" />
        </button>
        {slide.burn && (
          <button type="button" onClick={ways.again}>
            Again
          </button>
        )}
        <button type="button" aria-pressed={notes} onClick={ways.notes}>
          Note
        </button>
        <button type="button" aria-pressed={pointer} onClick={ways.pointer}>
          Pointer
        </button>
        {filmed && <span role="status">{filming}</span>}
        <button type="button" onClick={onClose}>
          Leave
        </button>
      </footer>
    </div>,
    document.body,
  );
}

/** What is and what is not on the film. */
const filmSaid = (slides: readonly Slide[]): string =>
  slides.some(({ against }) => against?.as === 'beside')
    ? 'Filming: the picture, without the words; of two side by side “Now” alone'
    : 'Filming: the picture, without the words';

/** Films the talk from its first slide to its last, saves it and leaves; says how far it is, or why not. */
function useFilm(
  filmed: boolean,
  bench: Parameters<typeof filmOfShow>[0],
  slides: Parameters<typeof filmOfShow>[1],
  onSlide: (at: number) => void,
  onDone: () => void,
): string {
  const files = use(FilesContext);
  const [said, setSaid] = useState('Waiting for the picture …');
  const stem = useCommitted(({ name }) => fileStem(name));
  const latest = useRef({ slides, onSlide, onDone });
  latest.current = { slides, onSlide, onDone };
  useEffect(() => {
    if (!filmed) return;
    const control = new AbortController();
    const { slides: all, onSlide: show, onDone: done } = latest.current;
    const onProgress = (at: number) => {
      show(at);
      setSaid(filmSaid(all));
    };
    filmOfShow(bench, all, onProgress, control.signal).then(
      (bytes) => {
        files?.saveBytes(`${stem}-talk.webm`, bytes, 'video/webm');
        done();
      },
      (error: unknown) => {
        if (!control.signal.aborted) setSaid(`Not filmed: ${error instanceof Error ? error.message : error}`);
      },
    );
    return () => control.abort();
  }, [filmed, bench, files, stem]);
  return said;
}
