import type { Aircraft } from '../document/types';

/** The CG limits as a manual prints them. */
export interface ManualBand {
  /** The reference point that they are measured behind. */
  readonly fromId: string;
  /** Behind it, mm. */
  readonly forwardMm: number;
  readonly aftMm: number;
  /** Usable fuel that they hold for, %; null where they hold for the whole flight. */
  readonly fuelPct: number | null;
}

/** Why limits cannot be so, in a sentence; null when they can. */
export const manualBandFault = ({
  forwardMm,
  aftMm,
}: Pick<ManualBand, 'forwardMm' | 'aftMm'>): string | null =>
  forwardMm < aftMm ? null : 'The first figure must lie ahead of the second.';

/** The aircraft with its manual's limits; as it was without any, or where the point is not one of its own. */
export function withManualBand(aircraft: Aircraft, band: ManualBand | null): Aircraft {
  const from = aircraft.referencePoints.find(({ id }) => id === band?.fromId);
  if (!band || !from) return aircraft;
  const [fromMm] = from.positionMm;
  return {
    ...aircraft,
    targetBand: {
      by: 'station',
      forwardMm: fromMm + band.forwardMm,
      aftMm: fromMm + band.aftMm,
      statedFrom: from.id,
      ...(band.fuelPct !== null &&
        aircraft.tanks.length > 0 && { statedFor: { fuelPct: band.fuelPct, switches: [] } }),
    },
  };
}
