import './present.css';
import { useEffect, useRef, useState } from 'react';
import { slidesOf } from '../../model/talk/slides';
import { useBench, useCommitted } from '../../store/react';
import { Icon } from '../icons';
import { ABOUT, addBookmark, bookmark } from './bookmark';
import { SlideRow } from './SlideRow';
import { Show } from './show/Show';

export { bookmark };

interface Showing {
  readonly from: number;
  readonly filmed: boolean;
}

/** The aircraft's talk: its slides in order, and where it is shown from. */
export function Present() {
  const bench = useBench();
  const slides = useCommitted(slidesOf);
  const name = useCommitted((aircraft) => aircraft.name);
  const [showing, setShowing] = useState<Showing | null>(null);
  const none = slides.length === 0;
  const place = useRef<HTMLElement>(null);
  /** The focus goes to the slide that now stands there, or to the way to a first one. */
  const keepFocus = (at: number) =>
    requestAnimationFrame(() => {
      if (document.activeElement !== document.body && !document.activeElement?.matches(':disabled')) return;
      const shows = [...(place.current?.querySelectorAll<HTMLElement>('.slide-show') ?? [])];
      const next = shows[at] ?? shows.at(-1) ?? place.current?.querySelector<HTMLElement>('.slide-add');
      next?.focus();
    });
  // Here the slide itself is seen.
  useEffect(() => bench.notice.drop(ABOUT), [bench]);
  return (
    <main className="place present" data-testid="present" ref={place}>
      <header className="present-head">
        <h2>Present {name}</h2>
        <button type="button" className="button" onClick={() => bench.view.setState({ place: 'bench' })}>
          Back to the bench
        </button>
      </header>
      <p className="present-intro">
        {none
          ? 'A talk is a list of bookmarks, saved with the aircraft. Set the bench as it is to be seen: view, fuel, attitude, what is selected. Then bookmark it, here or in the menu.'
          : 'Each slide shows the aircraft as it is when you present, looked at as it was when you bookmarked it.'}
      </p>
      <div className="present-ways">
        <button
          type="button"
          className="button strong"
          disabled={none}
          onClick={() => setShowing({ from: 0, filmed: false })}
        >
          <Icon name="play" /> Present
        </button>
        <button type="button" className="button slide-add" onClick={() => addBookmark(bench)}>
          <Icon name="plus" /> Bookmark what is on the bench
        </button>
        <button
          type="button"
          className="button"
          disabled={none}
          onClick={() => setShowing({ from: 0, filmed: true })}
        >
          Film of the talk, WebM
        </button>
      </div>
      <ol className="slides">
        {slides.map((slide, at) => (
          <SlideRow
            key={slide.id}
            slide={slide}
            at={at}
            last={at === slides.length - 1}
            onShow={() => setShowing({ from: at, filmed: false })}
            onGone={() => keepFocus(at)}
          />
        ))}
      </ol>
      {showing && !none && <Show {...showing} onClose={() => setShowing(null)} />}
    </main>
  );
}
