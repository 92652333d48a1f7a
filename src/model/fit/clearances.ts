import { hullClearance } from '../../engine/fit/hull';
import { shapeDistance, shapeOverlap } from '../../engine/fit/shapeDistance';
import type { Solid } from '../../engine/fit/solid';
import type { Vec3 } from '../../engine/geometry/types';
import { add, scale } from '../../engine/geometry/vec3';
import { perAircraft } from '../airframe/perAircraft';
import { hullsAround, itemSolid, standing } from '../airframe/solids';
import { itemById } from '../document/edit';
import type { Aircraft } from '../document/types';

/** How far an item is from one other thing. Aircraft frame, mm. */
export interface Clearance {
  readonly what: 'hull' | 'part' | 'tank' | 'structure';
  /** Of structure and hulls the piece's id. */
  readonly id: string;
  readonly name: string;
  /** Negative: they overlap by so much, or the item pokes so far through the hull's inner face. */
  readonly distanceMm: number;
  /** On the item and on the other; on overlap the ends of the way out. */
  readonly pointsMm: readonly [Vec3, Vec3];
  /** The shortest move of the item that clears the other; null without a clash, and for hulls. */
  readonly clearByMm: Vec3 | null;
}

type Measure = Pick<Clearance, 'distanceMm' | 'pointsMm' | 'clearByMm'>;

/** By solid, then by the other's id: what was measured, and against which solid or hull. */
const known = new WeakMap<Solid, Map<string, { readonly against: object; readonly measure: Measure }>>();

/**
 * How far a part or tank is from everything else, nearest first: from the inner face of the hull that holds
 * its middle (where several do, the one it fits best), from parts, tanks and structure. An item with its middle
 * in no hull stands outside and has no hull to keep clear of. Every pair is worked out once for as long as
 * both stand where they are, and the list is the same one for the same aircraft. Empty for an unknown id.
 */
export const clearances = perAircraft((aircraft, itemId): readonly Clearance[] => {
  const item = itemById(aircraft, itemId);
  if (!item) return [];
  const own = itemSolid(item);
  const found: Clearance[] = [];
  for (const { what, id, name, solid } of standing(aircraft)) {
    if (solid === own) continue;
    const measure = remembered(own, id, solid, () => turnedRound(solid, itemId, own) ?? measured(own, solid));
    found.push({ what, id, name, ...measure });
  }
  const hull = hullFit(aircraft, itemId);
  if (hull.place === 'inside') found.push(hull.clearance);
  return found.sort((a, b) => a.distanceMm - b.distanceMm);
});

/** Whether an item stands in a hull, by its middle, and its clearance there. */
export type HullFit =
  | { readonly place: 'inside'; readonly clearance: Clearance }
  | { readonly place: 'outside' };

export function hullFit(aircraft: Aircraft, itemId: string): HullFit {
  const item = itemById(aircraft, itemId);
  if (!item) return { place: 'outside' };
  const solid = itemSolid(item);
  let best: Clearance | null = null;
  for (const hull of hullsAround(aircraft, solid)) {
    const measure = remembered(solid, hull.id, hull, () => ({
      ...hullClearance(solid, hull),
      clearByMm: null,
    }));
    if (!best || measure.distanceMm > best.distanceMm) {
      best = { what: 'hull', id: hull.id, name: hull.name, ...measure };
    }
  }
  return best ? { place: 'inside', clearance: best } : { place: 'outside' };
}

/** The clearances that are clashes, deepest first. */
export const clashesIn = (list: readonly Clearance[]): Clearance[] =>
  list.filter(({ what, distanceMm, clearByMm }) => (what === 'hull' ? distanceMm < 0 : clearByMm !== null));

function measured(a: Solid, b: Solid): Measure {
  const { distanceMm, pointsMm } = shapeDistance(a, b);
  const overlap = distanceMm > 0 ? null : shapeOverlap(a, b);
  if (!overlap) return { distanceMm, pointsMm, clearByMm: null };
  const { depthMm, clearByMm } = overlap;
  return { distanceMm: -depthMm, pointsMm: [pointsMm[0], add(pointsMm[0], clearByMm)], clearByMm };
}

/** The same pair seen from the other side, if it was measured so. */
function turnedRound(other: Solid, itemId: string, own: Solid): Measure | null {
  const seen = known.get(other)?.get(itemId);
  if (seen?.against !== own) return null;
  const { distanceMm, pointsMm, clearByMm } = seen.measure;
  const [onOther, onOwn] = pointsMm;
  if (!clearByMm) return { distanceMm, pointsMm: [onOwn, onOther], clearByMm };
  const back = scale(clearByMm, -1);
  return { distanceMm, pointsMm: [onOther, add(onOther, back)], clearByMm: back };
}

/** What was measured before, if it was against the very same thing; of each id only the last is kept. */
function remembered(own: Solid, id: string, against: object, make: () => Measure): Measure {
  let byId = known.get(own);
  if (!byId) {
    byId = new Map();
    known.set(own, byId);
  }
  const before = byId.get(id);
  if (before?.against === against) return before.measure;
  const measure = make();
  byId.set(id, { against, measure });
  return measure;
}
