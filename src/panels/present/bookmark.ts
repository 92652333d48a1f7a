import { addSlide, isTalkFull, slidesOf } from '../../model/talk/slides';
import type { Bench } from '../../store/bench';
import { seenNow } from '../../store/bookmark';

const ABOUT = 'talk';

/** Keeps how the bench is looked at as a further slide of the aircraft's talk, and says so. */
export function bookmark(bench: Bench): void {
  const { document, notice, view } = bench;
  const { committed } = document.api.getState();
  if (isTalkFull(committed)) {
    notice.tell({
      about: ABOUT,
      tone: 'bad',
      text: 'Not bookmarked: the talk has as many slides as it can hold.',
    });
    return;
  }
  const number = slidesOf(committed).length + 1;
  const slide = {
    title: `Slide ${number}`,
    ...seenNow(bench),
    figures: ['verdict', 'cg-full', 'cg-dry'] as const,
  };
  document.commit(`Bookmark slide ${number}`, addSlide(committed, slide));
  notice.tell({
    about: ABOUT,
    tone: 'note',
    text: `Bookmarked as slide ${number} of the talk.`,
    actions: [
      {
        label: 'Name it',
        run: () => {
          notice.drop(ABOUT);
          view.setState({ place: 'present', playing: false });
        },
      },
    ],
  });
}
