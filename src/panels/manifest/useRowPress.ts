import { type MouseEvent, type PointerEvent, useRef } from 'react';
import { useBench } from '../../store/react';
import { choosesMore, toggleChosen } from '../../store/viewStore';

/** So long a finger rests on a row to choose it with others, ms. */
const LONG_PRESS_MS = 550;

/** A click selects a row alone; with Shift or Ctrl, or after a long press of a finger, it is chosen with the others. */
export function useRowPress(id: string) {
  const { view } = useBench();
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const rested = useRef(false);
  const stop = () => clearTimeout(timer.current);
  return {
    onPointerDown: (event: PointerEvent) => {
      rested.current = false;
      if (event.pointerType !== 'touch') return;
      timer.current = setTimeout(() => {
        rested.current = true;
        toggleChosen(view, id);
      }, LONG_PRESS_MS);
    },
    onPointerUp: stop,
    onPointerCancel: stop,
    onContextMenu: (event: MouseEvent) => {
      if (rested.current) event.preventDefault();
    },
    onClick: (event: MouseEvent) => {
      stop();
      if (rested.current) return;
      if (choosesMore(event)) toggleChosen(view, id);
      else view.setState({ selectedId: id, groupIds: [] });
    },
  };
}
