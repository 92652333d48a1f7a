import type { Aircraft } from '../document/types';
import { usualMargins } from '../stability/marginKind';

/** A static margin below this is bad whatever was asked for, % MAC. Common practice, no source. */
export const TINY_MARGIN_PCT = 2;

/** Beside a margin that is asked for by less than this is on it: rounding, % MAC. */
export const TOUCH_PCT = 1e-9;

/** A band that reaches less than this behind the neutral point is within what the estimate is good for, mm. */
export const BAND_BEHIND_MM = 0.5;

/** Nose-heavy by up to this share of the band's width is a caution, by more it is bad. Common practice, no source. */
export const SLIGHTLY_SHARE = 0.25;

/** A CG off centre by more than this many times the limit is bad. Common practice, no source. */
export const FAR_OFF_CENTRE = 5;

/** The static margins that an aircraft is held to, % MAC. */
export interface MarginWish {
  readonly leastPct: number;
  readonly mostPct: number | null;
  /** True when the person asked for them, false when they are what is usual for the kind. */
  readonly wanted: boolean;
}

/** What was asked for, beside stated limits too; or else the least that is usual for the kind of aircraft. */
export function marginWish(aircraft: Aircraft): MarginWish {
  const range = aircraft.stability?.marginRange;
  return range
    ? { leastPct: range.minPct, mostPct: range.maxPct, wanted: true }
    : { leastPct: usualMargins(aircraft).minPct, mostPct: null, wanted: false };
}

/** How far off centre the CG may be, mm; null where the file says 0: it does not matter then. */
export const lateralLimitMm = ({ lateralToleranceMm }: Aircraft): number | null =>
  lateralToleranceMm > 0 ? lateralToleranceMm : null;
