import type { Camera, Scene } from 'three';
import { panElevation, zoomElevation } from '../../interaction/elevation';
import type { TipChord } from '../../interaction/wingTip';
import { itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import { type Hit, pick } from '../frame/picking';
import { type StageDrag, startItemDrag } from './itemDrag';
import { startTipDrag, tipAt } from './tipGrip';

export interface GestureSetting {
  readonly bench: Bench;
  readonly camera: () => Camera;
  readonly scene: () => Scene;
  /** Brings the view shown back to where it began. */
  readonly reset: () => void;
  /** Told how a drag reads, and null when it ends. */
  readonly onDrag: (reading: string | null) => void;
}

/** A finger or mouse may shake so much and still be a click, px. */
const CLICK_PX = 5;
/** Around a fingertip, for things smaller than one, px. */
const FINGER_PX = 15;
/** How near to a tip chord takes it in hand, px. */
const TIP_PX = { mouse: 7, finger: 22 } as const;
const WHEEL = 0.0015;
const SWEEP_HINT = 'Drag the tip forward or aft to sweep the wing';

type Place = readonly [x: number, y: number];

interface Press {
  readonly pointerId: number;
  readonly start: Place;
  readonly hit: Hit | null;
  readonly tip: TipChord | null;
  drag: StageDrag | null;
  moved: boolean;
}

/**
 * The one owner of gestures on the stage. It listens before anything else does: a pointer that goes down
 * on something movable is never seen by the orbit, so there is no orbit to switch off or to forget.
 * Returns how to take it away again.
 */
export function attachGestures(box: HTMLElement, setting: GestureSetting): () => void {
  const { bench } = setting;
  const pointers = new Map<number, Place>();
  let press: Press | null = null;
  let hinted = false;

  const place = (event: MouseEvent): Place => {
    const { left, top } = box.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  };
  const picture = ([x, y]: Place): Place => [(x / box.clientWidth) * 2 - 1, 1 - (y / box.clientHeight) * 2];
  const pickAt = (at: Place) =>
    pick(setting.scene(), setting.camera(), picture(at), bench.view.getState().selectedId);
  const flat = () => {
    const { view } = bench.view.getState();
    return view === 'free' ? null : view;
  };

  /** A fingertip takes the nearest thing under it. */
  const pickNear = (at: Place, finger: boolean): Hit | null => {
    const straight = pickAt(at);
    if (!finger || straight?.kind === 'item') return straight;
    for (let i = 0; i < 8; i += 1) {
      const turn = (i * Math.PI) / 4;
      const near = pickAt([at[0] + FINGER_PX * Math.cos(turn), at[1] + FINGER_PX * Math.sin(turn)]);
      if (near?.kind === 'item') return near;
    }
    return straight;
  };

  const tipNear = (at: Place, finger: boolean): TipChord | null =>
    tipAt(
      bench,
      {
        camera: setting.camera,
        sizePx: () => ({ width: box.clientWidth, height: box.clientHeight }),
      },
      at,
      finger ? TIP_PX.finger : TIP_PX.mouse,
    );

  const letGo = (how: 'setDown' | 'cancel') => {
    const dragging = press?.drag;
    press = null;
    if (!dragging) return;
    dragging.end(how);
    setting.onDrag(null);
    box.style.cursor = '';
  };

  const onDown = (event: PointerEvent) => {
    if (event.target !== box.querySelector('canvas')) return;
    const at = place(event);
    pointers.set(event.pointerId, at);
    if (press?.drag) return event.stopPropagation();
    if (pointers.size > 1 || event.button !== 0) {
      press = null;
      return;
    }
    const finger = event.pointerType === 'touch';
    const hit = pickNear(at, finger);
    const tip = hit?.kind === 'item' ? null : tipNear(at, finger);
    press = { pointerId: event.pointerId, start: at, hit, tip, drag: null, moved: false };
    const item = hit?.kind === 'item' ? itemById(bench.document.current(), hit.id) : undefined;
    if (item) bench.view.setState({ selectedId: item.id });
    const inHand = tip !== null || (item !== undefined && !item.locked);
    if (inHand) event.stopPropagation();
    if (inHand || flat()) box.setPointerCapture(event.pointerId);
  };

  const dragAfter = (event: PointerEvent, at: Place, now: Press) => {
    const keys = { upright: event.shiftKey, free: event.altKey };
    const reading = now.drag?.moveTo(picture(at), keys);
    if (reading) setting.onDrag(reading);
  };

  const onMove = (event: PointerEvent) => {
    const at = place(event);
    const before = pointers.get(event.pointerId);
    if (!before) {
      if (event.pointerType !== 'touch' && event.buttons === 0) hover(at);
      return;
    }
    const others = [...pointers].find(([id]) => id !== event.pointerId)?.[1];
    pointers.set(event.pointerId, at);
    const elevation = flat();
    if (others && elevation && !press?.drag) return pinch(elevation, before, at, others);
    if (!press || press.pointerId !== event.pointerId) return;
    if (!press.moved && Math.hypot(at[0] - press.start[0], at[1] - press.start[1]) < CLICK_PX) return;
    const began = !press.moved;
    press.moved = true;
    if (began && press.hit?.kind === 'item') {
      const { id, pointMm } = press.hit;
      press.drag = startItemDrag(bench, id, pointMm, {
        camera: setting.camera,
        heightPx: () => box.clientHeight,
      });
    } else if (began && press.tip) {
      press.drag = startTipDrag(bench, press.tip, picture(press.start), setting.camera);
    }
    if (began && press.drag) box.style.cursor = press.tip ? 'ew-resize' : 'grabbing';
    if (press.drag) return dragAfter(event, at, press);
    if (elevation) pan(elevation, at, began ? press.start : before);
  };

  const pan = (view: NonNullable<ReturnType<typeof flat>>, at: Place, before: Place) =>
    bench.axis.setState((axes) => panElevation(axes, view, [at[0] - before[0], at[1] - before[1]]));

  const pinch = (view: NonNullable<ReturnType<typeof flat>>, before: Place, at: Place, other: Place) => {
    const apart = (p: Place) => Math.max(Math.hypot(p[0] - other[0], p[1] - other[1]), 1);
    const middle: Place = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2];
    bench.axis.setState((axes) => zoomElevation(axes, view, apart(before) / apart(at), middle));
    pan(view, middle, [(before[0] + other[0]) / 2, (before[1] + other[1]) / 2]);
  };

  const hover = (at: Place) => {
    const hit = pickAt(at);
    const id = hit?.kind === 'item' ? hit.id : null;
    if (id !== bench.view.getState().hoveredId) bench.view.setState({ hoveredId: id });
    const item = id ? itemById(bench.document.current(), id) : undefined;
    hint(!item && tipNear(at, false) !== null);
    box.style.cursor = item ? (item.locked ? 'pointer' : 'grab') : hinted ? 'ew-resize' : '';
  };

  const hint = (overTip: boolean) => {
    if (overTip === hinted) return;
    hinted = overTip;
    setting.onDrag(overTip ? SWEEP_HINT : null);
  };

  const onUp = (event: PointerEvent) => {
    pointers.delete(event.pointerId);
    if (press?.pointerId !== event.pointerId) return;
    const { hit, moved, drag } = press;
    if (drag) event.stopPropagation();
    letGo('setDown');
    if (!moved && hit?.kind !== 'item') bench.view.setState({ selectedId: hit?.id ?? null });
  };

  const onLost = (event: PointerEvent) => {
    pointers.delete(event.pointerId);
    if (press?.pointerId === event.pointerId) letGo('cancel');
  };
  const onLeave = () => {
    hint(false);
    if (bench.view.getState().hoveredId !== null) bench.view.setState({ hoveredId: null });
  };
  const onBlur = () => {
    pointers.clear();
    letGo('cancel');
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !press?.drag) return;
    event.preventDefault();
    event.stopPropagation();
    letGo('cancel');
  };
  const onWheel = (event: WheelEvent) => {
    const view = flat();
    if (!view) return;
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : 1;
    const factor = Math.exp(event.deltaY * lines * WHEEL * (event.ctrlKey ? 5 : 1));
    bench.axis.setState((axes) => zoomElevation(axes, view, factor, place(event)));
  };
  const onDouble = (event: MouseEvent) => {
    if (pickAt(place(event))?.kind !== 'item') setting.reset();
  };

  // Another view, or the thing in hand gone from under it, ends a drag as if it had not begun.
  const offView = bench.view.subscribe((now, before) => {
    if (now.view !== before.view) letGo('cancel');
  });
  const offDrag = bench.drag.api.subscribe(({ itemId }) => {
    if (itemId === null && press?.drag) {
      press = null;
      setting.onDrag(null);
      box.style.cursor = '';
    }
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
  box.addEventListener('pointerleave', onLeave, { signal });
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
