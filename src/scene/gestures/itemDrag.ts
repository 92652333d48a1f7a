import { type Camera, Vector3 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { dragStep, type Grip, regrip } from '../../interaction/dragStep';
import { itemExtent, neighboursOf } from '../../model/airframe/extent';
import { itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import { toWorld } from '../frame/frame';
import { mmPerPixel } from '../frame/mmPerPixel';
import { pointerRay } from '../frame/picking';
import { extentOnce } from '../frame/useGround';
import { dragReading } from './stageReadings';

/** How near to a neighbour, in pixels of the picture, a dragged thing catches on it. */
const REACH_PX = 7;
/** How far out of the aircraft's box a thing can be dragged, mm. */
const OUTSIDE_MM = 300;

/** Something in hand on the stage. */
export interface StageDrag {
  /** Moves it after the pointer; returns how that reads, or null where the pointer leads nowhere. */
  moveTo(
    at: readonly [number, number],
    keys: { readonly upright: boolean; readonly free: boolean },
  ): string | null;
  end(how: 'setDown' | 'cancel'): void;
}

const shift = (p: Vec3, by: Vec3, sign: number): Vec3 => [
  p[0] + sign * by[0],
  p[1] + sign * by[1],
  p[2] + sign * by[2],
];

/** Picks an item up where it was grabbed, with what is chosen together with it; null when it is locked, gone, or something else is in hand. */
export function startItemDrag(
  bench: Bench,
  itemId: string,
  grabbedMm: Vec3,
  lens: {
    readonly camera: () => Camera;
    readonly sizePx: () => { readonly width: number; readonly height: number };
  },
): StageDrag | null {
  const aircraft = bench.document.current();
  const item = itemById(aircraft, itemId);
  if (!item || !bench.drag.pickUp(itemId)) return null;
  const here = itemExtent(item);
  const extent = {
    minMm: shift(here.minMm, item.positionMm, -1),
    maxMm: shift(here.maxMm, item.positionMm, -1),
  };
  const neighbours = neighboursOf(aircraft, [itemId, ...bench.drag.api.getState().alongIds]);
  const all = extentOnce(aircraft);
  const margin: Vec3 = [OUTSIDE_MM, OUTSIDE_MM, OUTSIDE_MM];
  const bounds = { minMm: shift(all.minMm, margin, -1), maxMm: shift(all.maxMm, margin, 1) };
  const point = new Vector3();
  let grip: Grip = { itemMm: item.positionMm, grabbedMm, upright: false };
  let nowMm: Vec3 = item.positionMm;

  return {
    moveTo: (at, { upright, free }) => {
      if (upright !== grip.upright) grip = regrip(grip, nowMm, upright);
      const camera = lens.camera();
      const reachMm = REACH_PX * mmPerPixel(camera, lens.sizePx(), toWorld(nowMm, point));
      const snapped = dragStep(grip, {
        ray: pointerRay(camera, at),
        view: bench.view.getState().view,
        upright,
        snap: free ? null : { gridMm: aircraft.gridMm, reachMm, extent, neighbours },
        bounds,
      });
      if (!snapped) return null;
      nowMm = snapped.positionMm;
      bench.drag.moveTo(nowMm);
      return dragReading(bench, snapped);
    },
    end: (how) => bench.drag[how](),
  };
}
