import type { Camera } from 'three';
import { itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import { isOneOfSeveral } from '../../store/viewStore';
import { startItemDrag } from './itemDrag';
import type { Looking } from './looking';
import { clicked, hasMoved, type Press, selectPressed } from './pressing';
import type { Reached } from './reaching';
import type { Place, StageFrame } from './stageFrame';
import { startTipDrag } from './tipGrip';

/** What one pointer holds on the stage: a press, and the drag or the pan that becomes of it. */
export interface StageHand {
  press(): Press | null;
  goDown(reached: Reached, start: Place, event: PointerEvent): void;
  /** The pressing pointer has moved from `before` to `at`. */
  move(at: Place, before: Place, event: PointerEvent): void;
  /** It has come up: what was dragged is set down, and what was not was clicked. */
  comeUp(event: PointerEvent): void;
  /** What was dragged is put back. */
  cancel(): void;
  /** Takes it away from the bench. */
  leave(): void;
}

interface HandSetting {
  readonly bench: Bench;
  readonly frame: StageFrame;
  readonly looking: Looking;
  readonly camera: () => Camera;
  /** Told how a drag reads, and null when it ends. */
  readonly onDrag: (reading: string | null) => void;
  readonly setCursor: (cursor: string) => void;
}

export function createStageHand(setting: HandSetting): StageHand {
  const { bench, frame, looking, onDrag, setCursor } = setting;
  let press: Press | null = null;
  let stopWaiting = () => {};

  const forget = () => {
    stopWaiting();
    press = null;
  };
  const empty = () => {
    forget();
    onDrag(null);
    setCursor('');
  };
  const letGo = (how: 'setDown' | 'cancel') => {
    const dragging = press?.drag;
    if (!dragging) return forget();
    // Forgotten first: the drag's own end is heard too.
    forget();
    dragging.end(how);
    empty();
  };
  const cancel = () => letGo('cancel');
  const takeUp = (now: Press) => {
    stopWaiting();
    now.drag = dragOf(now, setting);
    if (now.drag) setCursor(now.tip ? 'ew-resize' : 'grabbing');
  };
  const off = endsElsewhere(bench, {
    dragging: () => press?.drag != null,
    onGone: cancel,
    onOver: empty,
  });

  return {
    press: () => press,
    goDown(reached, start, event) {
      forget();
      press = { ...reached, pointerId: event.pointerId, start, drag: null, spent: false, rested: null };
      stopWaiting = selectPressed(bench, press, event);
    },
    move(at, before, event) {
      const now = press;
      const begins = now !== null && (!now.spent || now.rested !== null);
      if (!now || (begins && !hasMoved(now, at))) return;
      now.spent = true;
      // A hand that took its time before it moved drags like any other.
      now.rested?.();
      now.rested = null;
      if (begins) takeUp(now);
      const elevation = looking.elevation();
      if (now.drag) {
        const reading = now.drag.moveTo(frame.picture(at), { upright: event.shiftKey, free: event.altKey });
        if (reading) onDrag(reading);
      } else if (elevation) looking.pan(elevation, at, begins ? now.start : before);
    },
    comeUp(event) {
      const ended = press;
      letGo('setDown');
      if (ended && !ended.spent) clicked(bench, ended, event);
    },
    cancel,
    leave() {
      off();
      cancel();
    },
  };
}

/** The drag that a press becomes: of the thing under it, which is then selected, or of the tip. */
function dragOf({ hit, item, tip, start }: Press, { bench, frame, camera }: HandSetting) {
  if (item && hit?.kind === 'item') {
    const drag = startItemDrag(bench, item.id, hit.pointMm, { camera, sizePx: frame.size });
    const { selectedId } = bench.view.getState();
    if (drag && selectedId !== item.id && !isOneOfSeveral(bench.view, item.id))
      bench.view.setState({ selectedId: item.id });
    return drag;
  }
  return tip ? startTipDrag(bench, tip, frame.picture(start), camera) : null;
}

interface Elsewhere {
  readonly dragging: () => boolean;
  /** What is in hand is gone from under it, or is seen in another view. */
  readonly onGone: () => void;
  /** The drag is over already. */
  readonly onOver: () => void;
}

/** Another view, or the thing in hand gone from under it, ends a drag as if it had not begun. Returns how to stop listening. */
function endsElsewhere(bench: Bench, { dragging, onGone, onOver }: Elsewhere): () => void {
  const off = [
    bench.view.subscribe((now, before) => {
      if (now.view !== before.view) onGone();
    }),
    bench.drag.api.subscribe(({ itemId }) => {
      if (itemId === null && dragging()) onOver();
    }),
    bench.document.subscribe(() => {
      const { itemId } = bench.drag.api.getState();
      if (dragging() && itemId && !itemById(bench.document.current(), itemId)) onGone();
    }),
  ];
  return () => {
    for (const stop of off) stop();
  };
}
