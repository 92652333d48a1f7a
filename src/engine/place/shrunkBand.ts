import type { Band } from '../balance/band';

/** The band with a margin taken off both ends; null when nothing is left. */
export function shrunkBand({ forwardMm, aftMm }: Band, marginMm: number): Band | null {
  return aftMm - forwardMm >= 2 * marginMm
    ? { forwardMm: forwardMm + marginMm, aftMm: aftMm - marginMm }
    : null;
}
