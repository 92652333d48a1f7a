import { leadStates } from '../airframe/leads';
import type { Aircraft } from '../document/types';
import { bayFault } from '../fit/bays';
import { clearances, hullFit } from '../fit/clearances';
import { keepApartFaults } from '../fit/keepApart';

/** One thing that does not fit. */
export interface FitProblem {
  readonly kind: 'clash' | 'outside' | 'bay' | 'lead' | 'keep-apart';
  /** What it is about: the item first. */
  readonly ids: readonly string[];
  /** How far it is in, out or short, mm. */
  readonly byMm: number;
}

/** Touching is no clash, mm. */
const TOUCH_MM = 1e-6;

/** Everything that does not fit, as the aircraft stands; of `about` only where one of these parts and tanks is in it, and leads. */
export function fitProblemsOf(
  aircraft: Aircraft,
  about: ReadonlySet<string> | null = null,
): readonly FitProblem[] {
  const asked = ({ id }: { readonly id: string }) => !about || about.has(id);
  const parts = aircraft.parts.filter(asked);
  const tanks = aircraft.tanks.filter(asked);
  const seen = new Set<string>();
  const found: FitProblem[] = [];
  for (const { id } of [...parts, ...tanks]) {
    for (const { what, id: otherId, distanceMm, clearByMm } of clearances(aircraft, id)) {
      if (what === 'hull' || !clearByMm || distanceMm > -TOUCH_MM) continue;
      const key = [id, otherId].sort().join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      found.push({ kind: 'clash', ids: [id, otherId], byMm: -distanceMm });
    }
    const hull = hullFit(aircraft, id);
    if (hull.place === 'inside' && hull.clearance.distanceMm < -TOUCH_MM) {
      found.push({ kind: 'outside', ids: [id, hull.clearance.id], byMm: -hull.clearance.distanceMm });
    }
  }
  for (const part of parts) {
    const fault = bayFault(aircraft, part);
    if (fault) found.push({ kind: 'bay', ids: [part.id, fault.bayId], byMm: fault.overMm });
  }
  for (const { id, slackMm } of leadStates(aircraft)) {
    if (slackMm < 0) found.push({ kind: 'lead', ids: [id], byMm: -slackMm });
  }
  for (const { aId, bId, shortByMm } of keepApartFaults(aircraft)) {
    if (!about || about.has(aId) || about.has(bId)) {
      found.push({ kind: 'keep-apart', ids: [aId, bId], byMm: shortByMm });
    }
  }
  return found;
}
