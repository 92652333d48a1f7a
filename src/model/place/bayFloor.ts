import type { PlaceBox } from '../../engine/place/types';
import { hulls, standingStructure } from '../airframe/solids';
import type { Aircraft, Bay } from '../document/types';
import { acrossAt, hullStations } from './hullRoom';

/** Boards are no higher than this, mm, and lie under this share of the bay at least. */
const BOARD_MM = 12;
const UNDER = 0.25;

/**
 * The waterline that parts in a bay stand on: the floor, shelf or strap face chosen for it; else the highest board that
 * lies in its lower half; else its lowest side.
 */
export function bayFloorMm(aircraft: Aircraft, bay: Bay, { minMm, maxMm }: PlaceBox): number {
  if (bay.standsOnMm !== undefined) return bay.standsOnMm;
  const half = (minMm[2] + maxMm[2]) / 2;
  const overlap = (low: number, high: number, axis: 0 | 1) =>
    Math.max(0, Math.min(high, maxMm[axis]) - Math.max(low, minMm[axis])) / (maxMm[axis] - minMm[axis]);
  const boards = standingStructure(aircraft).flatMap(({ solid }) => {
    const flat = solid.maxMm[2] - solid.minMm[2] <= BOARD_MM;
    const under =
      overlap(solid.minMm[0], solid.maxMm[0], 0) * overlap(solid.minMm[1], solid.maxMm[1], 1) >= UNDER;
    return flat && under && solid.maxMm[2] < half && solid.maxMm[2] >= minMm[2] ? [solid.maxMm[2]] : [];
  });
  return Math.max(minMm[2], ...boards);
}

/** A bay reaches out of every hull that it lies in by more than this before it is said, mm. */
const SAID_MM = 1;

/** By how much a bay is larger than the hull around it, in words, where it is: what lies outside is not used. */
export function bayExcessWords(aircraft: Aircraft, bay: Bay, { minMm, maxMm }: PlaceBox): string | null {
  let mostMm = 0;
  for (const stationMm of [minMm[0], (minMm[0] + maxMm[0]) / 2, maxMm[0]]) {
    const around = hulls(aircraft).filter((hull) => {
      const { fromMm, toMm } = hullStations(hull);
      return stationMm >= fromMm && stationMm <= toMm;
    });
    const outs = around.map((hull) => {
      const across = acrossAt(hull, stationMm, { fromMm: minMm[2], toMm: maxMm[2] });
      return across ? Math.max(across.fromMm - minMm[1], maxMm[1] - across.toMm) : maxMm[1] - minMm[1];
    });
    if (outs.length > 0) mostMm = Math.max(mostMm, Math.min(...outs));
  }
  return mostMm > SAID_MM
    ? `${bay.name} reaches ${Math.ceil(mostMm)} mm out of the hull; that part of it is not used.`
    : null;
}
