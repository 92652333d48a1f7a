/** Kinds of aircraft that differ in the margin people fly. */
export type AircraftKind =
  | 'trainer'
  | 'sport'
  | 'aerobatic'
  | 'glider'
  | 'flyingWing'
  | 'canard'
  | 'jet'
  | 'scale';

/** Static margins in % MAC; the least belongs to the aft limit, the most to the forward one. */
export interface MarginRange {
  readonly minPct: number;
  readonly maxPct: number;
}

/** Usual static margins by kind of aircraft: common practice, no source. Always to be shown as such. */
export const COMMON_MARGINS: Readonly<Record<AircraftKind, MarginRange>> = {
  trainer: { minPct: 10, maxPct: 18 },
  sport: { minPct: 8, maxPct: 15 },
  aerobatic: { minPct: 3, maxPct: 10 },
  glider: { minPct: 5, maxPct: 12 },
  flyingWing: { minPct: 3, maxPct: 8 },
  canard: { minPct: 8, maxPct: 18 },
  jet: { minPct: 5, maxPct: 12 },
  scale: { minPct: 8, maxPct: 15 },
};

/** Static margin in % MAC: + when the CG is ahead of the neutral point. Stations in mm. */
export function staticMarginPct(neutralPointMm: number, cgStationMm: number, macMm: number): number {
  return (100 * (neutralPointMm - cgStationMm)) / macMm;
}

/** A range of CG stations, mm. */
export interface CgBand {
  readonly forwardMm: number;
  readonly aftMm: number;
}

/**
 * The CG stations that keep the static margin between `minPct` and `maxPct` of the MAC.
 * Throws if the range is upside down or not a number.
 */
export function bandFromMargins(
  neutralPointMm: number,
  macMm: number,
  { minPct, maxPct }: MarginRange,
): CgBand {
  if (!(minPct <= maxPct))
    throw new Error(`margin range: expected least ≤ most, got ${minPct} to ${maxPct} % MAC`);
  return {
    forwardMm: neutralPointMm - (maxPct / 100) * macMm,
    aftMm: neutralPointMm - (minPct / 100) * macMm,
  };
}

/** The margins a stated band amounts to: the inverse of `bandFromMargins`, % MAC. */
export function marginsOfBand(neutralPointMm: number, macMm: number, band: CgBand): MarginRange {
  return {
    minPct: staticMarginPct(neutralPointMm, band.aftMm, macMm),
    maxPct: staticMarginPct(neutralPointMm, band.forwardMm, macMm),
  };
}
