import type { Bench } from '../../store/bench';
import { choosesMore, isOneOfSeveral, toggleChosen } from '../../store/viewStore';
import type { StageDrag } from './itemDrag';
import type { Reached } from './reaching';
import type { Place } from './stageFrame';

/** A finger or mouse may shake so much and still be a click, px. */
const CLICK_PX = 5;
/** A finger that has rested may drift so much and still not be dragging, px. */
const DRIFT_PX = 12;
/** So long a finger rests on a thing to choose it with others, ms. */
const LONG_PRESS_MS = 550;

/** One pointer that has gone down on the stage. */
export interface Press extends Reached {
  readonly pointerId: number;
  readonly start: Place;
  drag: StageDrag | null;
  /** It has moved too far to be a click, or has rested too long. */
  spent: boolean;
  /** It has rested so long that it has chosen its thing: how to take that back, should it drag after all. */
  rested: (() => void) | null;
}

export const hasMoved = ({ start, rested }: Press, at: Place): boolean =>
  Math.hypot(at[0] - start[0], at[1] - start[1]) >= (rested ? DRIFT_PX : CLICK_PX);

/** Whether a thing that can be moved, or a tip, is under it. */
export const isInHand = ({ item, tip }: Reached): boolean => tip !== null || (item !== null && !item.locked);

/**
 * Selects what is pressed, at once, so that it answers under the hand; with a key that chooses several, and for one of
 * several chosen, which may be going to be dragged, that waits for the click. A finger that rests chooses several too, unless
 * it drags in the end. Returns how to stop waiting for that.
 */
export function selectPressed(bench: Bench, press: Press, event: PointerEvent): () => void {
  const { item } = press;
  if (!item || choosesMore(event)) return () => {};
  const { selectedId, groupIds } = bench.view.getState();
  if (!isOneOfSeveral(bench.view, item.id)) bench.view.setState({ selectedId: item.id, groupIds: [] });
  if (event.pointerType !== 'touch') return () => {};
  const choose = () => {
    if (press.spent) return;
    const pressed = bench.view.getState();
    press.spent = true;
    press.rested = () => bench.view.setState({ selectedId: pressed.selectedId, groupIds: pressed.groupIds });
    bench.view.setState({ selectedId, groupIds });
    toggleChosen(bench.view, item.id);
  };
  // Where the page was busy the finger may have moved long since: moves are handed over with a frame, before what waits for it.
  let frame = 0;
  const timer = setTimeout(() => {
    frame = requestAnimationFrame(choose);
  }, LONG_PRESS_MS);
  return () => {
    clearTimeout(timer);
    cancelAnimationFrame(frame);
  };
}

/**
 * What a click does: on a thing with a key it is chosen too, on one of several it is selected alone, and beside all
 * things what lies there is selected.
 */
export function clicked(bench: Bench, { item, hit }: Press, event: PointerEvent): void {
  if (item && choosesMore(event)) toggleChosen(bench.view, item.id);
  else if (item) bench.view.setState({ selectedId: item.id, groupIds: [] });
  else bench.view.setState({ selectedId: hit?.id ?? null, groupIds: [] });
}
