import { addSlide, isTalkFull, slidesOf } from '../../model/talk/slides';
import type { Bench } from '../../store/bench';
import { seenNow } from '../../store/bookmark';

/** What is said of the talk goes under this. */
export const ABOUT = 'talk';

/** Keeps how the bench is looked at as a further slide of the aircraft's talk; its number, or null where it holds no more. */
export function addBookmark(bench: Bench): number | null {
  const { document, notice } = bench;
  const { committed } = document.api.getState();
  if (isTalkFull(committed)) {
    const text = 'Not bookmarked: the talk has as many slides as it can hold.';
    notice.tell({ about: ABOUT, tone: 'bad', text });
    return null;
  }
  const number = slidesOf(committed).length + 1;
  const slide = {
    title: `Slide ${number}`,
    ...seenNow(bench),
    figures: ['verdict', 'cg-full', 'cg-dry'] as const,
  };
  document.commit(`Bookmark slide ${number}`, addSlide(committed, slide));
  return number;
}

/** The same from the bench, which says what came of it. */
export function bookmark(bench: Bench): void {
  const { notice, view } = bench;
  const number = addBookmark(bench);
  if (number === null) return;
  notice.tell({
    about: ABOUT,
    tone: 'note',
    text: `Bookmarked as slide ${number} of the talk.`,
    actions: [{ label: 'Name it', run: () => view.setState({ place: 'present', playing: false }) }],
  });
}
