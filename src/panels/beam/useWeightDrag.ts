import { type PointerEvent, useEffect, useRef } from 'react';
import type { Vec3 } from '../../engine/geometry/types';
import { type Extent, snapPlace } from '../../interaction/snap';
import { itemExtent, neighboursOf } from '../../model/airframe/extent';
import { itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { choosesMore, isOneOfSeveral, toggleChosen } from '../../store/viewStore';
import type { Line } from './lines';

/** A press that moves less than this is a click, px. */
const CLICK_PX = 3;
/** How near a neighbour or the centre line must be to catch, px. */
const CATCH_PX = 5;

interface Held {
  readonly pointerId: number;
  readonly startPx: number;
  readonly fromMm: Vec3;
  readonly extent: Extent;
  readonly neighbours: readonly Extent[];
  moving: boolean;
}

function moveHeld(bench: Bench, line: Line, held: Held, byPx: number, free: boolean): void {
  const { mmPerPx } = line.pick(bench.axis.getState());
  const wanted: [number, number, number] = [...held.fromMm];
  wanted[line.axis] += byPx * mmPerPx;
  if (free) {
    wanted[line.axis] = Math.round(wanted[line.axis] * 10) / 10;
    bench.drag.moveTo(wanted);
    return;
  }
  const { positionMm } = snapPlace(wanted, {
    gridMm: bench.document.api.getState().committed.gridMm,
    reachMm: CATCH_PX * Math.abs(mmPerPx),
    moving: [line.axis === 0, line.axis === 1, false],
    extent: held.extent,
    neighbours: held.neighbours,
  });
  bench.drag.moveTo(positionMm);
}

/** Drags a weight along the beam with mouse, pen or finger. `find` says which weight a press falls on. */
export function useWeightDrag(line: Line, find: (event: PointerEvent<SVGSVGElement>) => string | null) {
  const bench = useBench();
  const held = useRef<Held | null>(null);

  useEffect(() => {
    const giveUp = () => {
      if (!held.current) return;
      held.current = null;
      bench.drag.cancel();
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && held.current) {
        event.preventDefault();
        giveUp();
      }
    };
    window.addEventListener('keydown', onKey, true);
    window.addEventListener('blur', giveUp);
    return () => {
      giveUp();
      window.removeEventListener('keydown', onKey, true);
      window.removeEventListener('blur', giveUp);
    };
  }, [bench]);

  const end = (event: PointerEvent<SVGSVGElement>, keep: boolean) => {
    const hand = held.current;
    if (hand?.pointerId !== event.pointerId) return;
    held.current = null;
    if (keep && hand.moving) return bench.drag.setDown();
    const { itemId } = bench.drag.api.getState();
    bench.drag.cancel();
    if (keep && itemId !== null) bench.view.setState({ selectedId: itemId, groupIds: [] });
  };

  return {
    onPointerDown: (event: PointerEvent<SVGSVGElement>) => {
      if (event.button !== 0 || held.current) return;
      const itemId = find(event);
      if (itemId === null) return;
      if (choosesMore(event)) return toggleChosen(bench.view, itemId);
      // One of several keeps them together until it turns out to be a click.
      if (!isOneOfSeveral(bench.view, itemId)) bench.view.setState({ selectedId: itemId });
      const item = itemById(bench.document.current(), itemId);
      if (!item || !bench.drag.pickUp(itemId)) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      held.current = {
        pointerId: event.pointerId,
        startPx: event.clientX,
        fromMm: item.positionMm,
        extent: itemExtent({ ...item, positionMm: [0, 0, 0] }),
        neighbours: neighboursOf(bench.document.current(), [item.id, ...bench.drag.api.getState().alongIds]),
        moving: false,
      };
    },
    onPointerMove: (event: PointerEvent<SVGSVGElement>) => {
      const hand = held.current;
      if (hand?.pointerId !== event.pointerId) return;
      const byPx = event.clientX - hand.startPx;
      hand.moving ||= Math.abs(byPx) >= CLICK_PX;
      if (hand.moving) moveHeld(bench, line, hand, byPx, event.altKey);
    },
    onPointerUp: (event: PointerEvent<SVGSVGElement>) => end(event, true),
    onPointerCancel: (event: PointerEvent<SVGSVGElement>) => end(event, false),
    onLostPointerCapture: (event: PointerEvent<SVGSVGElement>) => end(event, false),
  };
}
