import type { Slide } from '../../model/document/types';
import { shownSlide } from '../../model/talk/shown';
import { moveSlide, removeSlide, replaceSeen, updateSlide } from '../../model/talk/slides';
import { seenNow } from '../../store/bookmark';
import { useBench, useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { TextEntry } from '../fields/TextEntry';
import { Icon } from '../icons';
import { SlideFields } from './SlideFields';
import { slideLine } from './slideLine';

interface SlideRowProps {
  readonly slide: Slide;
  readonly at: number;
  readonly last: boolean;
  readonly onShow: () => void;
  /** Called once it was deleted or moved, which takes the focus away. */
  readonly onGone: () => void;
}

/** One slide of the talk: its title, what it shows, and all that can be done with it. */
export function SlideRow({ slide, at, last, onShow, onGone }: SlideRowProps) {
  const bench = useBench();
  const { id, title } = slide;
  const line = useCommitted((aircraft) => slideLine(aircraft, slide));
  const missing = useCommitted((aircraft) => shownSlide(aircraft, slide).missing.join(' '));
  return (
    <li className="slide-row" data-testid="slide" aria-label={`Slide ${at + 1}: ${title}`}>
      <span className="slide-number figure">{at + 1}</span>
      <div className="slide-words">
        <TextEntry
          label={`Title of slide ${at + 1}`}
          bare
          read={() => title}
          write={(aircraft, text) => updateSlide(aircraft, id, { title: text })}
          step={`Rename slide ${at + 1}`}
        />
        <p className="slide-line">{line}</p>
        {missing && <p className="slide-missing">{missing}</p>}
        <details>
          <summary>Figures, burn, comparison, note</summary>
          <SlideFields slide={slide} number={at + 1} />
        </details>
      </div>
      <div className="slide-ways">
        <EditButton
          className="button bare"
          aria-label={`Move slide ${at + 1} up`}
          disabled={at === 0}
          step={`Move slide “${title}”`}
          edit={(aircraft) => moveSlide(aircraft, id, -1)}
          onDone={onGone}
        >
          <Icon name="up" />
        </EditButton>
        <EditButton
          className="button bare"
          aria-label={`Move slide ${at + 1} down`}
          disabled={last}
          step={`Move slide “${title}”`}
          edit={(aircraft) => moveSlide(aircraft, id, 1)}
          onDone={onGone}
        >
          <Icon name="down" />
        </EditButton>
        <EditButton
          step={`Replace slide “${title}”`}
          aria-label={`Replace slide ${at + 1} by what is on the bench`}
          edit={(aircraft) => replaceSeen(aircraft, id, seenNow(bench))}
        >
          Replace
        </EditButton>
        <button
          type="button"
          className="button slide-show"
          aria-label={`Show from slide ${at + 1}`}
          onClick={onShow}
        >
          Show
        </button>
        <EditButton
          className="button bare"
          aria-label={`Delete slide ${at + 1}`}
          step={`Delete slide “${title}”`}
          edit={(aircraft) => removeSlide(aircraft, id)}
          onDone={onGone}
        >
          <Icon name="bin" />
        </EditButton>
      </div>
    </li>
  );
}
