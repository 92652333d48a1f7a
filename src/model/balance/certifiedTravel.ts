import type { Bounds } from '../../engine/balance/loadTypes';
import { cgTravel, momentOf, type TravelPoint } from '../../engine/balance/travel';
import { hiddenBetweenMoments } from '../../engine/balance/travelGaps';
import type { Vec3 } from '../../engine/geometry/types';
import type { MassProperties } from '../../engine/mass/types';
import { perObject } from '../../engine/memory/memory';
import { itemExtent } from '../airframe/extent';
import type { Aircraft, TankItem } from '../document/types';
import { keepTable, type LiquidTable, liquidTableOf, MOST_FUEL_STATES, withStates } from './liquidTable';

/** How closely the ends of the travel are certified, mm: half of what the verdict shows. */
const TOLERANCE_MM = 0.05;
/** Stretches of the burn narrower than this share of it are not parted further. */
const NARROWEST = 1e-6;

/** The CG travel with its ends certified. */
export interface CertifiedTravel {
  readonly table: LiquidTable;
  /** From full to dry, one point for each moment of the table that has a mass. */
  readonly travel: readonly TravelPoint[];
  /** No fuel state puts the CG farther fore or aft than this beyond the ends of `travel`, mm. */
  readonly withinMm: number;
}

/**
 * The travel over the burn, with as many fuel states as it takes for its foremost and aftmost points to be certain to
 * 0.05 mm, the changes of the feed among them; `withinMm` says what it came to. A table is kept with the states that one
 * balance needed, so that a drag pays for them once.
 * @param fixed everything aboard but the liquid
 */
export function certifiedTravel(fixed: MassProperties, loaded: Aircraft, down: Vec3): CertifiedTravel {
  const always = momentOf(fixed);
  const tanksMm = loaded.tanks.map(boundsOf);
  const before = liquidTableOf(loaded, down);
  let table = before;
  let hidden = hiddenBetweenMoments(always, table.moments, tanksMm);
  while (Math.max(0, ...hidden) > TOLERANCE_MM) {
    const room = MOST_FUEL_STATES - table.moments.length;
    const middles = doubtful(table, hidden).slice(0, room);
    if (middles.length === 0) break;
    table = withStates(table, middles);
    hidden = hiddenBetweenMoments(always, table.moments, tanksMm);
  }
  if (table !== before) keepTable(before, table);
  return { table, travel: cgTravel(fixed, table.moments), withinMm: Math.max(0, ...hidden) };
}

/** The middles of the stretches that could hide more than the tolerance, the worst first. */
function doubtful({ moments }: LiquidTable, hidden: readonly number[]): number[] {
  return hidden
    .map((mm, k) => ({ mm, from: moments[k]!.fuelFraction, to: moments[k + 1]!.fuelFraction }))
    .filter(({ mm, from, to }) => mm > TOLERANCE_MM && from - to > NARROWEST)
    .sort((a, b) => b.mm - a.mm)
    .map(({ from, to }) => (from + to) / 2);
}

/** A tank's box in the aircraft's frame; the same one again while the tank does not change. */
export const boundsOf = perObject((tank: TankItem): Bounds => {
  const { minMm, maxMm } = itemExtent(tank);
  return { min: minMm, max: maxMm };
});
