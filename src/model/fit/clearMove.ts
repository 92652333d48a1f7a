import type { Vec3 } from '../../engine/geometry/types';
import { add, length, scale, sub } from '../../engine/geometry/vec3';
import { itemById, placeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { type Clearance, hullFit } from './clearances';

/** Left free beyond the shortest move, so that what was cleared does not touch, mm. */
const gapMm = 0.1;
const steps = 12;

/**
 * The move that clears an item of one clash, mm: the shortest way out of another solid and a tenth of a millimetre;
 * out of a hull's wall one found in small steps. Null when none was found.
 */
export function clearMove(aircraft: Aircraft, itemId: string, clash: Clearance): Vec3 | null {
  if (clash.what === 'hull') return moveIn(aircraft, itemId);
  const by = clash.clearByMm;
  const longMm = by ? length(by) : 0;
  return by && longMm > 0 ? scale(by, (longMm + gapMm) / longMm) : null;
}

const nudges: readonly Vec3[] = [-gapMm, gapMm].flatMap((by): Vec3[] => [
  [by, 0, 0],
  [0, by, 0],
  [0, 0, by],
]);

/** The one of six small steps further that leaves most room to the hull. */
function bestOf(aircraft: Aircraft, itemId: string, fromMm: Vec3): Vec3 {
  const at = itemById(aircraft, itemId)?.positionMm ?? [0, 0, 0];
  const room = (by: Vec3) => {
    const fit = hullFit(placeItem(aircraft, itemId, add(at, by)), itemId);
    return fit.place === 'inside' ? fit.clearance.distanceMm : Number.NEGATIVE_INFINITY;
  };
  return nudges
    .map((nudge) => add(fromMm, nudge))
    .reduce((best, one) => (room(one) > room(best) ? one : best));
}

/** Goes in from the wall where it pokes through most, again and again, until it pokes through nowhere. */
function moveIn(aircraft: Aircraft, itemId: string): Vec3 | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  let by: Vec3 = [0, 0, 0];
  for (let step = 0; step < steps; step += 1) {
    const fit = hullFit(placeItem(aircraft, itemId, add(item.positionMm, by)), itemId);
    if (fit.place === 'outside') return null;
    const { distanceMm, pointsMm } = fit.clearance;
    if (distanceMm >= 0) return by;
    const inward = sub(pointsMm[1], pointsMm[0]);
    const longMm = length(inward);
    // What just touches the surface from within has no way out of its own: the best of six small steps tells it.
    by = longMm > 0 ? add(by, scale(inward, (gapMm - distanceMm) / longMm)) : bestOf(aircraft, itemId, by);
  }
  return null;
}
