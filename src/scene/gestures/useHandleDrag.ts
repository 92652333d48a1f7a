import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react';
import { alongAxis, FINE_STEP, type Handle, held, snappedFigure } from '../../interaction/handles/handle';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import type { HandlePlace } from './handlePlace';

/** A pointer may shake so much and still only choose the handle, px. */
const CLICK_PX = 3;
/** How near to a neighbour's face a handle catches on it, px. */
const REACH_PX = 7;

interface InHand {
  readonly handle: Handle;
  readonly startPx: readonly [number, number];
  /** How far along its line it was grabbed, mm. */
  readonly grabbedMm: number;
  taken: boolean;
}

export interface HandleAsk {
  readonly thingId: string;
  readonly thingName: string;
  readonly place: RefObject<HandlePlace>;
}

/** What undo would take back. */
export const stepOf = (handle: Handle, name: string): string =>
  `Change ${handle.label.charAt(0).toLowerCase()}${handle.label.slice(1)} of ${name}`;

/** Ends what is in hand as one step; what cannot be is told and taken back. */
function setDown(bench: Bench, step: string): void {
  const text = bench.reshape.setDown(step);
  if (text === null) bench.notice.drop('edit');
  else bench.notice.tell({ about: 'edit', tone: 'bad', text });
}

/** A knob moved by mouse, finger or arrow keys: a preview with each move, one step at the end, Escape puts it back. */
export function useHandleDrag({ thingId, thingName, place }: HandleAsk) {
  const bench = useBench();
  const inHand = useRef<InHand | null>(null);
  const byKeys = useRef(false);

  const along = (handle: Handle, event: PointerEvent): number | null => {
    const ray = place.current.ray?.(event.clientX, event.clientY);
    return ray ? alongAxis(ray, handle.atMm, handle.axis) : null;
  };
  const letGo = (how: 'setDown' | 'cancel') => {
    const now = inHand.current;
    inHand.current = null;
    if (!now?.taken) return;
    if (how === 'cancel') bench.reshape.cancel();
    else setDown(bench, stepOf(now.handle, thingName));
  };
  const endKeys = (handle: Handle, how: 'setDown' | 'cancel') => {
    if (!byKeys.current) return;
    byKeys.current = false;
    if (how === 'cancel') bench.reshape.cancel();
    else setDown(bench, stepOf(handle, thingName));
  };

  const onPointerDown = (handle: Handle) => (event: PointerEvent<HTMLElement>) => {
    event.stopPropagation();
    if (event.button !== 0) return;
    event.currentTarget.focus({ preventScroll: true });
    event.preventDefault();
    const grabbedMm = along(handle, event);
    if (grabbedMm === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    inHand.current = { handle, startPx: [event.clientX, event.clientY], grabbedMm, taken: false };
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const now = inHand.current;
    if (!now) return;
    const [x, y] = now.startPx;
    if (!now.taken) {
      if (Math.hypot(event.clientX - x, event.clientY - y) < CLICK_PX) return;
      if (!bench.reshape.pickUp(thingId)) return letGo('cancel');
      now.taken = true;
    }
    const { handle, grabbedMm } = now;
    const alongMm = along(handle, event);
    if (alongMm === null) return;
    const figure = snappedFigure(handle, handle.after(alongMm - grabbedMm), {
      gridMm: bench.document.current().gridMm,
      reachMm: REACH_PX * (place.current.mmPerPx?.(handle) ?? 0),
      free: event.altKey,
    });
    bench.reshape.show(handle.set(figure));
  };
  const onKeyDown = (handle: Handle) => (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'Escape' && (inHand.current?.taken || byKeys.current)) {
      letGo('cancel');
      endKeys(handle, 'cancel');
    } else {
      const way = WAYS[event.key];
      if (way === undefined || event.ctrlKey || event.metaKey || inHand.current) return;
      const step = event.altKey ? FINE_STEP : event.shiftKey ? 10 : 1;
      byKeys.current ||= bench.reshape.pickUp(thingId) !== null;
      if (byKeys.current) bench.reshape.show(handle.set(held(handle, handle.value + way * step)));
    }
    event.preventDefault();
    event.stopPropagation();
  };
  return {
    onPointerDown,
    onPointerMove,
    onPointerUp: () => letGo('setDown'),
    onPointerCancel: () => letGo('cancel'),
    onLostPointerCapture: () => letGo('cancel'),
    onKeyDown,
    onKeyUp: (handle: Handle) => (event: KeyboardEvent<HTMLElement>) => {
      if (event.key !== 'Shift' && event.key !== 'Alt') endKeys(handle, 'setDown');
    },
    onBlur: (handle: Handle) => () => endKeys(handle, 'setDown'),
  };
}

const WAYS: Readonly<Record<string, 1 | -1>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
};
