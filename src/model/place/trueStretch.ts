import type { Band } from '../../engine/balance/band';
import type { Stretch, Vec3 } from '../../engine/geometry/types';
import { aircraftExtent } from '../airframe/extent';
import { type Item, placeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { aircraftCases } from './loadCases';

/** Halvings of a stretch whose end does not hold: a metre comes down to a thousandth of a millimetre. */
const HALVINGS = 20;
/** Outside by less than this is rounding, mm. */
const TOUCH_MM = 1e-7;

/**
 * What of the stations that a line through the present place allows is allowed indeed: leads change their mass and their
 * run as an end of them moves, and foam is cut elsewhere. Each end is worked out on the aircraft as it would then be, within
 * the aircraft's length, and drawn in to where it holds; null when nothing holds. Ends are never let out.
 */
export function trueStretch(
  aircraft: Aircraft,
  item: Item,
  { allowed, bestMm }: { readonly allowed: Stretch; readonly bestMm: number | null },
  { down, band }: { readonly down: Vec3; readonly band: Band },
): Stretch | null {
  if (!bends(aircraft, item)) return allowed;
  const [, y, z] = item.positionMm;
  const holds = (stationMm: number) =>
    aircraftCases(placeItem(aircraft, item.id, [stationMm, y, z]), down).every(({ massG, momentGmm }) => {
      const cgMm = momentGmm[0] / massG;
      return cgMm >= band.forwardMm - TOUCH_MM && cgMm <= band.aftMm + TOUCH_MM;
    });
  const { minMm, maxMm } = aircraftExtent(aircraft);
  const aboard = (mm: number) => Math.min(maxMm[0], Math.max(minMm[0], mm));
  const [from, to] = [aboard(allowed.fromMm), aboard(allowed.toMm)];
  const inside = Math.min(to, Math.max(from, bestMm ?? from));
  const end = (atMm: number, wholeMm: number): number | null => {
    if (holds(atMm)) return wholeMm;
    if (!holds(inside)) return null;
    let [good, bad] = [inside, atMm];
    for (let k = 0; k < HALVINGS; k += 1) {
      const middle = (good + bad) / 2;
      if (holds(middle)) good = middle;
      else bad = middle;
    }
    return good;
  };
  const [fromMm, toMm] = [end(from, allowed.fromMm), end(to, allowed.toMm)];
  return fromMm === null || toMm === null ? null : { fromMm, toMm };
}

/** Whether the CG is no straight line in where an item stands: a lead hangs on it, or foam may be cut for it. */
const bends = ({ leads = [], structure }: Aircraft, { id, twinId }: Item): boolean =>
  leads.some(({ from, to }) => [from, to].some((end) => end === id || end === twinId)) ||
  structure.some((element) => element.kind === 'block' && element.cuttable);
