import type { Camera } from 'three';
import { panElevation, zoomElevation } from '../../interaction/elevation';
import type { TipChord } from '../../interaction/wingTip';
import { itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import type { EyeControl } from '../frame/Cameras';
import { type Hit, pick } from '../frame/picking';
import { type StageDrag, startItemDrag } from './itemDrag';
import { startTipDrag, tipAt } from './tipGrip';

export interface GestureSetting {
  readonly bench: Bench;
  readonly camera: () => Camera;
  readonly eye: () => EyeControl | null;
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

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

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
  /** Pointers that the orbit has not seen go down, so that it must not see them at all. */
  const kept = new Set<number>();
  let press: Press | null = null;
  let hinted = false;
  let held: Frame | null = null;

  // Read once for a whole gesture: whatever the page does meanwhile, a pixel of the pointer stays a pixel.
  const frame = (): Frame => {
    if (held) return held;
    const { left, top, width, height } = box.getBoundingClientRect();
    const now = { left, top, width, height };
    if (pointers.size > 0) held = now;
    return now;
  };
  const place = (event: MouseEvent): Place => {
    const { left, top } = frame();
    return [event.clientX - left, event.clientY - top];
  };
  const picture = ([x, y]: Place): Place => {
    const { width, height } = frame();
    return [(x / width) * 2 - 1, 1 - (y / height) * 2];
  };
  const sizePx = () => ({ width: frame().width, height: frame().height });
  const pickAt = (at: Place) => pick(bench, setting.camera(), picture(at));
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
    tipAt(bench, { camera: setting.camera, sizePx }, at, finger ? TIP_PX.finger : TIP_PX.mouse);

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
    setting.eye()?.land();
    if (pointers.size === 0) held = null;
    const at = place(event);
    pointers.set(event.pointerId, at);
    frame();
    // A second finger makes a pinch of what began on a part: it is put back.
    if (pointers.size > 1) {
      letGo('cancel');
      if (kept.size > 0) {
        kept.add(event.pointerId);
        event.stopPropagation();
      }
      return;
    }
    if (event.button !== 0) {
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
    if (inHand) {
      kept.add(event.pointerId);
      event.stopPropagation();
    }
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
    if (kept.has(event.pointerId)) event.stopPropagation();
    if (others && elevation) return pinch(elevation, before, at, others);
    if (others && kept.size > 0) return pinchFree(before, at, others);
    if (!press || press.pointerId !== event.pointerId) return;
    if (!press.moved && Math.hypot(at[0] - press.start[0], at[1] - press.start[1]) < CLICK_PX) return;
    const began = !press.moved;
    press.moved = true;
    if (began && press.hit?.kind === 'item') {
      const { id, pointMm } = press.hit;
      press.drag = startItemDrag(bench, id, pointMm, {
        camera: setting.camera,
        sizePx,
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

  const apart = (p: Place, q: Place) => Math.max(Math.hypot(p[0] - q[0], p[1] - q[1]), 1);
  const pinchFree = (before: Place, at: Place, other: Place) =>
    setting
      .eye()
      ?.zoomFree(
        apart(before, other) / apart(at, other),
        picture([(at[0] + other[0]) / 2, (at[1] + other[1]) / 2]),
      );

  const pinch = (view: NonNullable<ReturnType<typeof flat>>, before: Place, at: Place, other: Place) => {
    const middle: Place = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2];
    bench.axis.setState((axes) => zoomElevation(axes, view, apart(before, other) / apart(at, other), middle));
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

  const gone = (event: PointerEvent) => {
    pointers.delete(event.pointerId);
    if (kept.delete(event.pointerId) && event.type !== 'lostpointercapture') event.stopPropagation();
    if (pointers.size === 0) held = null;
  };

  const onUp = (event: PointerEvent) => {
    gone(event);
    if (press?.pointerId !== event.pointerId) return;
    const { hit, moved } = press;
    letGo('setDown');
    if (!moved && hit?.kind !== 'item') bench.view.setState({ selectedId: hit?.id ?? null });
  };

  const onLost = (event: PointerEvent) => {
    gone(event);
    if (press?.pointerId === event.pointerId) letGo('cancel');
  };
  const onLeave = () => {
    hint(false);
    if (bench.view.getState().hoveredId !== null) bench.view.setState({ hoveredId: null });
  };
  const onBlur = () => {
    pointers.clear();
    kept.clear();
    held = null;
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
    if (event.target !== box.querySelector('canvas')) return;
    event.preventDefault();
    box.closest<HTMLElement>('[tabindex]')?.focus({ preventScroll: true });
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
    if (pickAt(place(event))?.kind !== 'item') bench.eye.ask({ kind: 'reset' });
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
  box.addEventListener('mousedown', onMouseDown, { signal });
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
