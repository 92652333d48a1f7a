import type { Camera } from 'three';
import type { Bench } from '../../store/bench';
import type { EyeControl } from '../frame/Cameras';
import { createFingers } from './fingers';
import { createStageHand } from './hand';
import { createHovering } from './hovering';
import { createLooking } from './looking';
import { isInHand } from './pressing';
import { createReach } from './reaching';
import { createStageFrame } from './stageFrame';

export interface GestureSetting {
  readonly bench: Bench;
  readonly camera: () => Camera;
  readonly eye: () => EyeControl | null;
  /** Told how a drag reads, and null when it ends. */
  readonly onDrag: (reading: string | null) => void;
}

/**
 * The one owner of gestures on the stage. It listens before anything else does: a pointer that goes down
 * on something movable is never seen by the orbit, so there is no orbit to switch off or to forget.
 * Returns how to take it away again.
 */
export function attachGestures(box: HTMLElement, { bench, camera, eye, onDrag }: GestureSetting): () => void {
  const frame = createStageFrame(box);
  const looking = createLooking(bench, frame, eye);
  const reach = createReach(bench, frame, camera);
  const hovering = createHovering(bench, box, reach, onDrag);
  const fingers = createFingers(frame);
  const setCursor = (cursor: string) => {
    box.style.cursor = cursor;
  };
  const hand = createStageHand({ bench, frame, looking, camera, onDrag, setCursor });
  const onPicture = (event: Event) => event.target === box.querySelector('canvas');
  const isPressing = ({ pointerId }: PointerEvent) => hand.press()?.pointerId === pointerId;

  const onDown = (event: PointerEvent) => {
    if (!onPicture(event)) return;
    eye()?.land();
    const start = fingers.goDown(event);
    if (fingers.count() > 1) {
      // A second finger makes a pinch of what began on a part: it is put back.
      hand.cancel();
      if (fingers.anyKept()) fingers.keep(event);
      return;
    }
    hand.cancel();
    if (event.button !== 0) return;
    const reached = reach(start, event.pointerType === 'touch');
    hand.goDown(reached, start, event);
    if (isInHand(reached)) fingers.keep(event);
    if (isInHand(reached) || looking.elevation()) box.setPointerCapture(event.pointerId);
  };
  const onMove = (event: PointerEvent) => {
    const moved = fingers.move(event);
    if (!moved) {
      if (event.pointerType !== 'touch' && event.buttons === 0) hovering.over(frame.place(event));
      return;
    }
    const { at, before, other } = moved;
    const elevation = looking.elevation();
    if (other && (elevation || fingers.anyKept())) looking.pinch(elevation, before, at, other);
    else if (isPressing(event)) hand.move(at, before, event);
  };
  const onUp = (event: PointerEvent) => {
    fingers.goUp(event);
    if (isPressing(event)) hand.comeUp(event);
  };
  const onLost = (event: PointerEvent) => {
    fingers.goUp(event);
    if (isPressing(event)) hand.cancel();
  };
  const onBlur = () => {
    fingers.forget();
    hand.cancel();
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !hand.press()?.drag) return;
    event.preventDefault();
    event.stopPropagation();
    hand.cancel();
  };
  /** The stage takes the focus itself: the browser's own way scrolls the page to what gets it. */
  const onMouseDown = (event: MouseEvent) => {
    if (!onPicture(event)) return;
    event.preventDefault();
    box.closest<HTMLElement>('[tabindex]')?.focus({ preventScroll: true });
  };
  const onWheel = (event: WheelEvent) => {
    if (looking.wheel(event)) event.preventDefault();
  };
  const onDouble = (event: MouseEvent) => {
    if (!reach(frame.place(event), false).item) bench.eye.ask({ kind: 'reset' });
  };
  /** A finger that rests is ours, not the browser's. */
  const onMenu = (event: MouseEvent) => {
    if (hand.press()?.item) event.preventDefault();
  };

  const listening = new AbortController();
  const { signal } = listening;
  box.addEventListener('pointerdown', onDown, { capture: true, signal });
  box.addEventListener('pointermove', onMove, { capture: true, signal });
  box.addEventListener('pointerup', onUp, { capture: true, signal });
  box.addEventListener('pointercancel', onLost, { capture: true, signal });
  box.addEventListener('lostpointercapture', onLost, { signal });
  box.addEventListener('pointerleave', hovering.leave, { signal });
  box.addEventListener('mousedown', onMouseDown, { signal });
  box.addEventListener('contextmenu', onMenu, { signal });
  box.addEventListener('wheel', onWheel, { passive: false, signal });
  box.addEventListener('dblclick', onDouble, { signal });
  window.addEventListener('blur', onBlur, { signal });
  window.addEventListener('keydown', onKey, { capture: true, signal });
  return () => {
    listening.abort();
    hand.leave();
  };
}
