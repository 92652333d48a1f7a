import { type KeyboardEvent, useRef } from 'react';
import { nudgeBy } from '../interaction/nudge';
import { itemById, movedStructure, replaceStructure, structureById } from '../model/document/edit';
import type { Bench } from '../store/bench';
import { useBench } from '../store/react';
import { weightsAlong } from './beam/weights';

/** Selects the next thing forward or aft of the selected one. */
function selectNext(bench: Bench, step: 1 | -1): void {
  const order = [...weightsAlong(bench.balance.get(), 0)].sort((a, b) => a.atMm - b.atMm);
  const now = order.findIndex(({ sourceId }) => sourceId === bench.view.getState().selectedId);
  const next = now < 0 ? order[step === 1 ? 0 : order.length - 1] : order[now + step];
  if (next) bench.view.setState({ selectedId: next.sourceId });
}

/**
 * The keys of the stage and the beam. A part is in hand from the first press of an arrow until the keys
 * are let go, so that undo takes back the whole of it in one step.
 */
export function useNudge() {
  const bench = useBench();
  const inHand = useRef(false);
  const setDown = () => {
    if (!inHand.current) return;
    inHand.current = false;
    bench.drag.setDown();
  };
  return {
    onKeyDown: (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.target instanceof Element && event.target.closest('input, select, button, [role=slider]'))
        return;
      const { selectedId, view } = bench.view.getState();
      if (event.key === '[' || event.key === ']') {
        selectNext(bench, event.key === ']' ? 1 : -1);
      } else if (event.key === 'Escape') {
        if (inHand.current) {
          inHand.current = false;
          bench.drag.cancel();
        } else if (bench.drag.api.getState().itemId === null) bench.view.setState({ selectedId: null });
      } else {
        const by = nudgeBy(event.key, view, event.shiftKey);
        if (!by || selectedId === null) return;
        const aircraft = bench.document.current();
        const item = itemById(aircraft, selectedId);
        const piece = structureById(aircraft, selectedId);
        if (item) {
          inHand.current ||= bench.drag.pickUp(selectedId);
          const [x, y, z] = item.positionMm;
          if (inHand.current) bench.drag.moveTo([x + by[0], y + by[1], z + by[2]]);
        } else if (piece) {
          bench.document.commit(
            `Move ${piece.name}`,
            replaceStructure(bench.document.api.getState().committed, movedStructure(piece, by)),
          );
        } else return;
      }
      event.preventDefault();
    },
    onKeyUp: (event: KeyboardEvent) => {
      if (event.key !== 'Shift') setDown();
    },
    onBlur: setDown,
  };
}
