import { useRef } from 'react';
import { sameList } from '../../engine/memory/memory';
import type { Bench } from '../../store/bench';
import type { Line } from './lines';
import { isInView, type TravelScale, travelScale, travelStretch } from './travelScale';

/** The columns that the travel is drawn between: on the left the names of its rows stand. */
export const fromPx = 60;
export const toPx = (widthPx: number) => widthPx - 20;

/**
 * How the travel is enlarged. The scale is chosen again whenever nothing is in hand; during a drag it stays as it was,
 * so that what moves is the CG, until the travel would leave the picture.
 */
export function useTravelScale(line: Line): (bench: Bench) => TravelScale {
  const last = useRef<{
    readonly widthPx: number;
    readonly mmPerPx: number;
    readonly scale: TravelScale;
    /** What it was chosen for: asked again for the same, as for each point of a curve, it is the same. */
    readonly causes: readonly unknown[];
  } | null>(null);
  return (bench) => {
    const causes = [
      line,
      bench.document.current(),
      bench.balance.get(),
      bench.axis.getState(),
      bench.place.get().ghost,
      bench.drag.api.getState().itemId,
    ];
    if (last.current && sameList(last.current.causes, causes)) return last.current.scale;
    const { travel, cgMm } = bench.balance.get();
    const { widthPx, ...axes } = bench.axis.getState();
    const axis = line.pick({ widthPx, ...axes });
    const at = travel.map((point) => point.cgMm[line.axis]);
    const zone = line.zone(bench.document.current(), bench.balance.get());
    const limits = zone ? [zone.forwardMm, zone.aftMm] : [];
    const ghost = (bench.place.get().ghost?.travel ?? []).map((point) => point.cgMm[line.axis]);
    const seen = [...(at.length > 0 ? at : [cgMm?.[line.axis] ?? 0]), ...ghost];
    const stretch = travelStretch(seen, limits);
    const kept = last.current;
    const inHand = bench.drag.api.getState().itemId !== null;
    const same = kept?.widthPx === widthPx && kept.mmPerPx === axis.mmPerPx;
    const travelOnly = travelStretch(at, []);
    const stays = kept && same && inHand && isInView(kept.scale, travelOnly, fromPx, toPx(widthPx));
    const scale = stays ? kept.scale : travelScale(axis, stretch, fromPx, toPx(widthPx));
    last.current = { widthPx, mmPerPx: axis.mmPerPx, scale, causes };
    return scale;
  };
}
