import type { Band } from '../../engine/balance/band';
import type { Vec3 } from '../../engine/geometry/types';
import type { BallastSpot } from '../../engine/place/types';
import type { Item } from '../document/edit';
import type { Aircraft, AircraftKind, Part } from '../document/types';
import { wingPlanform } from '../stability/band';
import { aircraftCases } from './loadCases';

/** Where a part may be put. */
export type PlaceRule =
  /** Anywhere in the bays named, as it is turned or otherwise. */
  | { readonly by: 'bays'; readonly bayIds: readonly string[] }
  /** At its own height: along x between two stations of its origin, or along and across as far as the hull lets it. */
  | { readonly by: 'rail'; readonly stations: { readonly fromMm: number; readonly toMm: number } | 'hull' }
  /** Not at all. */
  | { readonly by: 'stay' };

/** What is asked for. */
export interface PlaceSettings {
  readonly down: Vec3;
  /** Other attitudes that the limits must be kept in as well, each as its apparent down. */
  readonly alsoDown?: readonly Vec3[];
  /** How each part or tank may be placed, by its id; `defaultRule` for one that is not named. */
  readonly rules?: Readonly<Record<string, PlaceRule>>;
  /** The file's ballast spots, or the usual ones, when left out. */
  readonly spots?: readonly BallastSpot[];
  /** Least gap around everything, mm; 1 when left out. */
  readonly clearanceMm?: number;
  /** Whether keep-apart rules and leads are held to; they are when left out. */
  readonly keepApart?: boolean;
  readonly leads?: boolean;
  /** The static margin's own limits or stated ones: the band that counts, where the aircraft states none. */
  /** Ballast that has been taken out first: its places count as spots. */
  readonly emptied?: readonly Part[];
  /** How far inside the limits everything should be, mm; nothing is asked when left out. */
  readonly wantedMarginMm?: number;
  readonly band?: { readonly forwardMm: number; readonly aftMm: number } | null;
}

/** Roles of things made to be moved; the others stay unless a rule says otherwise. */
const MOVABLE = new Set<Part['role']>(['energy', 'payload', 'radio', 'ballast', 'other']);

/** A locked part stays, and so does each of a mirrored pair; one bound to a bay stays in it; others may go to any bay, or slide along the hull. */
export function defaultRule({ bays = [] }: Aircraft, part: Item): PlaceRule {
  if (part.locked || part.twinId !== undefined || !('role' in part) || !MOVABLE.has(part.role))
    return { by: 'stay' };
  if (part.bayId && bays.some(({ id }) => id === part.bayId)) return { by: 'bays', bayIds: [part.bayId] };
  return bays.length > 0
    ? { by: 'bays', bayIds: bays.map(({ id }) => id) }
    : { by: 'rail', stations: 'hull' };
}

/**
 * The margin that somebody would fly, mm: this share of the MAC inside either limit, or of the band where no MAC is known,
 * and never more than half of what the CG's travel leaves of the band on either side. Common practice, no source; a glider
 * is flown nearer to its limits.
 */
const SHARE_OF_MAC: Readonly<Record<AircraftKind, number>> = {
  petrol: 0.01,
  turbine: 0.01,
  electric: 0.01,
  glider: 0.005,
};
const MOST_OF_PLAY = 0.5;

export function usualMarginMm(aircraft: Aircraft, band: Band, down: Vec3): number {
  const widthMm = band.aftMm - band.forwardMm;
  const macMm = wingPlanform(aircraft)?.macMm ?? widthMm * 10;
  const stations = aircraftCases(aircraft, down).map(({ massG, momentGmm }) => momentGmm[0] / massG);
  const travelMm = stations.length > 0 ? Math.max(...stations) - Math.min(...stations) : 0;
  const asked = Math.min(SHARE_OF_MAC[aircraft.kind] * macMm, (MOST_OF_PLAY * (widthMm - travelMm)) / 2);
  return Math.max(0, Math.floor(asked * 10) / 10);
}
