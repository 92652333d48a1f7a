import { boxGap, type Solid } from '../../engine/fit/solid';
import type { Vec3 } from '../../engine/geometry/types';
import { add } from '../../engine/geometry/vec3';
import { perObjects } from '../../engine/memory/memory';
import { hullsAround, itemSolid, type Standing, standing } from '../airframe/solids';
import { itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { hullDistance, solidDistance, solidOverlap } from './overlaps';

/** How far an item is from one other item. Aircraft frame, mm. */
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

/** Of what stands apart, the nearest so many are measured. */
const nearestMost = 16;

/**
 * How far a part or tank is from what stands about it, nearest first: from the inner face of the hull that holds
 * its middle (where several do, the one it fits best), from parts, tanks and structure: all that it overlaps, and
 * the nearest 16 of the rest. An item with its middle in no hull stands outside and has no hull to keep clear of.
 * Every pair is worked out once for as long as both stand where they are, and the list is the same one for the
 * same aircraft. Empty for an unknown id.
 */
export const clearances = perObjects((aircraft: Aircraft, itemId: string): readonly Clearance[] => {
  const item = itemById(aircraft, itemId);
  if (!item) return [];
  const found = nearest(itemSolid(item), standing(aircraft));
  const hull = hullFit(aircraft, itemId);
  if (hull.place === 'inside') found.push(hull.clearance);
  return found.sort((a, b) => a.distanceMm - b.distanceMm);
});

/** Measures the nearest by their boxes first, until no other can be nearer than the last that counts. */
function nearest(moved: Solid, all: readonly Standing[]): Clearance[] {
  const byBox = all
    .filter(({ solid }) => solid !== moved)
    .map((standing) => ({ standing, gapMm: boxGap(moved, standing.solid) }))
    .sort((a, b) => a.gapMm - b.gapMm);
  const found: Clearance[] = [];
  const apartMm: number[] = [];
  for (const { standing, gapMm } of byBox) {
    if (gapMm > (apartMm[nearestMost - 1] ?? Number.POSITIVE_INFINITY)) break;
    const { what, id, name, solid } = standing;
    const measure = measured(moved, solid);
    found.push({ what, id, name, ...measure });
    if (measure.distanceMm < 0) continue;
    apartMm.push(measure.distanceMm);
    apartMm.sort((a, b) => a - b);
  }
  return found;
}

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
    const measure = hullDistance(solid, hull);
    if (!best || measure.distanceMm > best.distanceMm) {
      best = { what: 'hull', id: hull.id, name: hull.name, ...measure, clearByMm: null };
    }
  }
  return best ? { place: 'inside', clearance: best } : { place: 'outside' };
}

/** The clearances that are clashes, deepest first. */
export const clashesIn = (list: readonly Clearance[]): Clearance[] =>
  list.filter(({ what, distanceMm, clearByMm }) => (what === 'hull' ? distanceMm < 0 : clearByMm !== null));

function measured(a: Solid, b: Solid): Measure {
  const { distanceMm, pointsMm } = solidDistance(a, b);
  const overlap = distanceMm > 0 ? null : solidOverlap(a, b);
  if (!overlap) return { distanceMm, pointsMm, clearByMm: null };
  const { depthMm, clearByMm } = overlap;
  return { distanceMm: -depthMm, pointsMm: [pointsMm[0], add(pointsMm[0], clearByMm)], clearByMm };
}
