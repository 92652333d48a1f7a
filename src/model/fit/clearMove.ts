import type { Vec3 } from '../../engine/geometry/types';
import { add, length, scale, sub } from '../../engine/geometry/vec3';
import { itemById, placeItem } from '../edit';
import type { Aircraft } from '../types';
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
    if (longMm === 0) return null;
    by = add(by, scale(inward, (gapMm - distanceMm) / longMm));
  }
  return null;
}
