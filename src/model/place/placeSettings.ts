import type { Vec3 } from '../../engine/geometry/types';
import type { BallastSpot } from '../../engine/place/types';
import { pieces } from '../airframe/pieces';
import type { Aircraft, BallastSpotItem, Part } from '../document/types';
import { wingPlanform } from '../stability/band';

/** Where a part may be put. */
export type PlaceRule =
  /** Anywhere in the bays named, as it is turned or otherwise. */
  | { readonly by: 'bays'; readonly bayIds: readonly string[] }
  /** Along x at its own height and buttline: between two stations of its origin, or as far as the hull lets it. */
  | { readonly by: 'rail'; readonly stations: { readonly fromMm: number; readonly toMm: number } | 'hull' }
  /** Not at all. */
  | { readonly by: 'stay' };

/** What is asked for. */
export interface PlaceSettings {
  readonly down: Vec3;
  /** How each part may be placed, by its id; `defaultRule` for one that is not named. */
  readonly rules?: Readonly<Record<string, PlaceRule>>;
  /** Parts that may also be turned by a right angle, or end for end. */
  readonly mayTurn?: readonly string[];
  /** The file's ballast spots, or the usual ones, when left out. */
  readonly spots?: readonly BallastSpot[];
  /** Least gap around everything, mm; 1 when left out. */
  readonly clearanceMm?: number;
  /** Whether keep-apart rules and leads are held to; they are when left out. */
  readonly keepApart?: boolean;
  readonly leads?: boolean;
  /** The static margin's own limits or stated ones: the band that counts, where the aircraft states none. */
  readonly band?: { readonly forwardMm: number; readonly aftMm: number } | null;
}

/** Roles of things made to be moved; the others stay unless a rule says otherwise. */
const MOVABLE = new Set<Part['role']>(['energy', 'payload', 'radio', 'ballast', 'other']);

/** A locked part stays; one bound to a bay stays in it; others may go to any bay, or slide along the hull. */
export function defaultRule({ bays = [] }: Aircraft, part: Part): PlaceRule {
  if (part.locked || !MOVABLE.has(part.role)) return { by: 'stay' };
  if (part.bayId && bays.some(({ id }) => id === part.bayId)) return { by: 'bays', bayIds: [part.bayId] };
  return bays.length > 0
    ? { by: 'bays', bayIds: bays.map(({ id }) => id) }
    : { by: 'rail', stations: 'hull' };
}

/** Ballast goes this far inside the ends of the hull and of the wing, mm. */
const INSIDE_END_MM = 30;
const USUAL = { stepG: 1, mostG: 500 } as const;

/** Where ballast is usually put: both ends of the hull, and both tips where the lateral balance may need it. */
export function usualSpots(aircraft: Aircraft): BallastSpotItem[] {
  const spots: BallastSpotItem[] = [];
  const hull = pieces(aircraft).find(({ shape }) => shape.kind === 'loft');
  if (hull?.shape.kind === 'loft') {
    const { sections } = hull.shape;
    const end = (stationMm: number): Vec3 => {
      const near = sections.reduce((a, b) =>
        Math.abs(b.xMm - stationMm) < Math.abs(a.xMm - stationMm) ? b : a,
      );
      const [x, y, z] = hull.pose.positionMm;
      return [x + stationMm, y + near.centreYMm, z + near.centreZMm];
    };
    const [noseMm, tailMm] = [sections[0]?.xMm ?? 0, sections.at(-1)?.xMm ?? 0];
    spots.push({ id: 'nose', name: 'Nose', positionMm: end(noseMm + INSIDE_END_MM), ...USUAL });
    spots.push({ id: 'tail', name: 'Tail', positionMm: end(tailMm - INSIDE_END_MM), ...USUAL });
  }
  const wing = wingPlanform(aircraft);
  if (wing) {
    const x = wing.lemacMm + wing.macMm / 4;
    const y = wing.spanMm / 2 - INSIDE_END_MM;
    spots.push({ id: 'left-tip', name: 'Left tip', positionMm: [x, -y, wing.macWaterlineMm], ...USUAL });
    spots.push({ id: 'right-tip', name: 'Right tip', positionMm: [x, y, wing.macWaterlineMm], ...USUAL });
  }
  return spots;
}
