import type { Camera } from 'three';
import { itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import { isOneOfSeveral } from '../../store/viewStore';
import type { EyeControl } from '../frame/Cameras';
import { createHovering } from './hovering';
import { startItemDrag } from './itemDrag';
import { createLooking } from './looking';
import { clicked, hasMoved, isInHand, type Press, selectPressed } from './pressing';
import { createReach } from './reaching';
import { createStageFrame, type Place } from './stageFrame';
import { startTipDrag } from './tipGrip';

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
  const pointers = new Map<number, Place>();
  /** Pointers that the orbit has not seen go down, so that it must not see them at all. */
  const kept = new Set<number>();
  let press: Press | null = null;
  let stopWaiting = () => {};
  const onPicture = (event: Event) => event.target === box.querySelector('canvas');

  const forget = () => {
    stopWaiting();
    press = null;
  };
  const letGo = (how: 'setDown' | 'cancel') => {
    const dragging = press?.drag;
    forget();
    if (!dragging) return;
    dragging.end(how);
    onDrag(null);
    box.style.cursor = '';
  };

  const onDown = (event: PointerEvent) => {
    if (!onPicture(event)) return;
    eye()?.land();
    if (pointers.size === 0) frame.letGo();
    frame.hold();
    const start = frame.place(event);
    pointers.set(event.pointerId, start);
    if (pointers.size > 1) return secondFinger(event);
    forget();
    if (event.button !== 0) return;
    const reached = reach(start, event.pointerType === 'touch');
    press = { ...reached, pointerId: event.pointerId, start, drag: null, spent: false, rested: false };
    stopWaiting = selectPressed(bench, press, event);
    if (isInHand(reached)) keep(event);
    if (isInHand(reached) || looking.elevation()) box.setPointerCapture(event.pointerId);
  };
  const keep = (event: PointerEvent) => {
    kept.add(event.pointerId);
    event.stopPropagation();
  };
  /** A second finger makes a pinch of what began on a part: it is put back. */
  const secondFinger = (event: PointerEvent) => {
    letGo('cancel');
    if (kept.size > 0) keep(event);
  };

  const onMove = (event: PointerEvent) => {
    const at = frame.place(event);
    const before = pointers.get(event.pointerId);
    if (!before) {
      if (event.pointerType !== 'touch' && event.buttons === 0) hovering.over(at);
      return;
    }
    const other = [...pointers].find(([id]) => id !== event.pointerId)?.[1];
    pointers.set(event.pointerId, at);
    const elevation = looking.elevation();
    if (kept.has(event.pointerId)) event.stopPropagation();
    if (other && (elevation || kept.size > 0)) return looking.pinch(elevation, before, at, other);
    if (press?.pointerId === event.pointerId) pressMoved(press, event, at, before);
  };
  const pressMoved = (now: Press, event: PointerEvent, at: Place, before: Place) => {
    if (now.rested || (!now.spent && !hasMoved(now, at))) return;
    const begins = !now.spent;
    now.spent = true;
    if (begins) takeUp(now);
    const elevation = looking.elevation();
    if (now.drag) {
      const keys = { upright: event.shiftKey, free: event.altKey };
      const reading = now.drag.moveTo(frame.picture(at), keys);
      if (reading) onDrag(reading);
    } else if (elevation) looking.pan(elevation, at, begins ? now.start : before);
  };
  const takeUp = (now: Press) => {
    stopWaiting();
    const { hit, item, tip, start } = now;
    if (item && hit?.kind === 'item') {
      now.drag = startItemDrag(bench, item.id, hit.pointMm, { camera, sizePx: frame.size });
      const { selectedId } = bench.view.getState();
      if (now.drag && selectedId !== item.id && !isOneOfSeveral(bench.view, item.id))
        bench.view.setState({ selectedId: item.id });
    } else if (tip) now.drag = startTipDrag(bench, tip, frame.picture(start), camera);
    if (now.drag) box.style.cursor = tip ? 'ew-resize' : 'grabbing';
  };

  const gone = (event: PointerEvent) => {
    pointers.delete(event.pointerId);
    if (kept.delete(event.pointerId) && event.type !== 'lostpointercapture') event.stopPropagation();
    if (pointers.size === 0) frame.letGo();
  };
  const onUp = (event: PointerEvent) => {
    gone(event);
    if (press?.pointerId !== event.pointerId) return;
    const ended = press;
    letGo('setDown');
    if (!ended.spent) clicked(bench, ended, event);
  };
  const onLost = (event: PointerEvent) => {
    gone(event);
    if (press?.pointerId === event.pointerId) letGo('cancel');
  };
  const onBlur = () => {
    pointers.clear();
    kept.clear();
    frame.letGo();
    letGo('cancel');
  };

  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !press?.drag) return;
    event.preventDefault();
    event.stopPropagation();
    letGo('cancel');
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
    if (press?.item) event.preventDefault();
  };

  // Another view, or the thing in hand gone from under it, ends a drag as if it had not begun.
  const offView = bench.view.subscribe((now, before) => {
    if (now.view !== before.view) letGo('cancel');
  });
  const offDrag = bench.drag.api.subscribe(({ itemId }) => {
    if (itemId !== null || !press?.drag) return;
    forget();
    onDrag(null);
    box.style.cursor = '';
  });
  const offDocument = bench.document.subscribe(() => {
    const { itemId } = bench.drag.api.getState();
    if (press?.drag && itemId && !itemById(bench.document.current(), itemId)) letGo('cancel');
  });

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
    offView();
    offDrag();
    offDocument();
    letGo('cancel');
  };
}
