import type { BallastSpot } from '../../engine/place/types';
import { addPart } from '../document/edit';
import type { Aircraft } from '../document/types';
import { fitRefusals } from '../fit/wholeFit';
import { ballastPart } from './applyArrangement';

/** Spots with no more than they have room for inside the skin, and what is said of those that have none. */
export interface SpotRoom {
  readonly spots: readonly BallastSpot[];
  readonly notes: readonly string[];
}

/**
 * Lead in a thin tip soon reaches through the skin, or stands in no hull and no wing at all: what a spot may take is cut down
 * to what the fit lets stand there. By halves, so up to half of what would fit is left unused; never too much. What
 * else stands there now is no matter here, since it may move.
 */
export function spotRoom(aircraft: Aircraft, spots: readonly BallastSpot[]): SpotRoom {
  const notes: string[] = [];
  const roomy = spots.flatMap((spot): BallastSpot[] => {
    const least = Math.min(spot.stepG, spot.mostG);
    for (let grams = spot.mostG; grams >= least && grams > 0; grams /= 2) {
      if (standsInside(aircraft, spot, grams)) return [{ ...spot, mostG: wholeSteps(spot, grams) }];
    }
    if (spot.mostG > 0) notes.push(`No ballast at ${spot.name}: it has no room in a hull or a wing there.`);
    return [];
  });
  return { spots: roomy, notes };
}

const wholeSteps = ({ stepG }: BallastSpot, grams: number) =>
  stepG > 0 ? Math.floor(grams / stepG) * stepG : grams;

function standsInside(aircraft: Aircraft, spot: BallastSpot, grams: number): boolean {
  const { aircraft: loaded, id } = addPart(aircraft, ballastPart(spot, grams));
  return !fitRefusals(aircraft, loaded).some(
    ({ kind, parties }) =>
      (kind === 'outside' || kind === 'through') && parties.some((party) => party.id === id),
  );
}
