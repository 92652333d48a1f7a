import { commonCapacitiesMah } from '../../engine/power/cells';
import { balanceAt, LEVEL } from '../balance/balance';
import type { Aircraft, Part } from '../document/types';
import { isMassKnown, packTrial, withCapacity } from '../power/otherPacks';

/** Another capacity for a pack, and what comes of it. */
export interface PackOffer {
  readonly aircraft: Aircraft;
  readonly capacityMah: number;
  /** Typical, from what the pack aboard weighs. */
  readonly massG: number;
  /** How much lighter the whole gets +, heavier −, g, leads that grow or shrink with it counted; null where nobody knows what is aboard weighs. */
  readonly savedG: number | null;
  /** How far the CG moves, tanks full and dry, aft +, mm; null without a CG. */
  readonly cgShiftMm: { readonly full: number; readonly dry: number } | null;
}

/**
 * The smallest of the common capacities with which a pack does all that is asked of it. Null where the one aboard is as
 * small and does it, where nothing does it, where nobody says how long it flies, or where it feeds nothing.
 */
export function smallestPack(aircraft: Aircraft, packId: string): PackOffer | null {
  const part = aircraft.parts.find(({ id }) => id === packId);
  const pack = part?.power?.pack;
  const trial = packTrial(aircraft, packId);
  if (!part || !pack || !trial) return null;
  const isOther = (capacityMah: number) =>
    trial.doesAsItIs ? capacityMah < pack.capacityMah : capacityMah !== pack.capacityMah;
  const capacityMah = commonCapacitiesMah.find((mah) => isOther(mah) && trial.does(mah));
  if (capacityMah === undefined) return null;
  return offerOf(aircraft, withCapacity(aircraft, part, pack, capacityMah), part, capacityMah);
}

const dry = (aircraft: Aircraft) => balanceAt(aircraft, { fuelFraction: 0, down: LEVEL });

function offerOf(before: Aircraft, aircraft: Aircraft, part: Part, capacityMah: number): PackOffer {
  const massG = aircraft.parts.find(({ id }) => id === part.id)?.massG ?? 0;
  return {
    aircraft,
    capacityMah,
    massG,
    savedG: isMassKnown(part) ? dry(before).massG - dry(aircraft).massG : null,
    cgShiftMm: isMassKnown(part) ? cgShift(before, aircraft) : null,
  };
}

/** How far the CG moves from one aircraft to another, level, tanks full and dry, aft +, mm; null without a CG. */
function cgShift(before: Aircraft, after: Aircraft): { readonly full: number; readonly dry: number } | null {
  const at = (aircraft: Aircraft, fuelFraction: number) =>
    balanceAt(aircraft, { fuelFraction, down: LEVEL }).cgMm?.[0] ?? Number.NaN;
  const by = (fraction: number) => at(after, fraction) - at(before, fraction);
  const [full, dry] = [by(1), by(0)];
  return Number.isFinite(full) && Number.isFinite(dry) ? { full, dry } : null;
}
