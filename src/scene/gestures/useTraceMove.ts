import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Elevation } from '../../interaction/elevation';
import { type Placed, placeAtPx, type ViewPlace } from '../../interaction/trace';
import { useBench } from '../../store/react';

const STEP = 'Move the drawing';

/** Across and up as seen; seen from ahead, right is the left wing. */
const WAYS: Readonly<Record<string, ViewPlace>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A drawing moved by mouse, finger or arrow keys: a preview with each move, one step at the end, Escape puts it back. */
export function useTraceMove(view: Elevation, movedBy: (by: ViewPlace) => Placed) {
  const { trace, axis } = useBench();
  const from = useRef<ViewPlace | null>(null);
  const taken = useRef(false);

  const placeOf = (event: PointerEvent<HTMLElement>): ViewPlace => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    return placeAtPx(axis.getState(), view, [event.clientX - left, event.clientY - top]);
  };
  const show = (by: ViewPlace) => {
    const next = movedBy(by);
    if (typeof next === 'string') return;
    taken.current = true;
    trace.preview(next);
  };
  const setDown = () => {
    from.current = null;
    const laid = trace.shown();
    if (taken.current && laid) trace.put(STEP, laid.trace);
    taken.current = false;
  };
  const putBack = () => {
    from.current = null;
    taken.current = false;
    trace.preview(null);
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      from.current = placeOf(event);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      if (!from.current) return;
      const [across, upright] = placeOf(event);
      show([across - from.current[0], upright - from.current[1]]);
      from.current = [across, upright];
    },
    onPointerUp: setDown,
    onPointerCancel: putBack,
    onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
      const way = WAYS[event.key];
      if (event.key === 'Escape') {
        if (taken.current) putBack();
        else trace.begin(null);
      } else if (way && !event.ctrlKey && !event.metaKey && !event.altKey) {
        const mm = event.shiftKey ? 10 : 1;
        show([way[0] * mm * (view === 'front' ? -1 : 1), way[1] * mm]);
      } else return;
      event.preventDefault();
      event.stopPropagation();
    },
    onKeyUp: (event: KeyboardEvent<HTMLElement>) => {
      if (event.key in WAYS) setDown();
    },
    onBlur: setDown,
  };
}
