import type { TiltedVessel } from './vessel';

/** Newton meets the volume to this fraction of what is asked for, well inside what a caller may rely on (1e-9). */
const RELATIVE_TOLERANCE = 1e-11;
/** And the level to this share of the vessel's depth, which is the closer of the two where the surface is small. */
const LEVEL_TOLERANCE = 1e-11;
const MOST_STEPS = 80;

/**
 * The offset of the free surface that has `volumeMm3` below it, for 0 < volume < full.
 *
 * Newton's method on the logarithms of volume and depth, so that it is exact for every power law
 * V = c·depthᵏ (a wedge, a trough, a cone's tip) and quick near an empty or a full vessel. The slope is
 * the free-surface area. Above half full it works on the air instead. A bracket guards every step.
 */
export function surfaceLevel(
  vessel: Pick<TiltedVessel, 'topMm' | 'bottomMm' | 'cut'>,
  fullMm3: number,
  volumeMm3: number,
): number {
  const ofAir = volumeMm3 > fullMm3 / 2;
  const goal = ofAir ? fullMm3 - volumeMm3 : volumeMm3;
  const depth = vessel.bottomMm - vessel.topMm;
  const offsetAt = (s: number) => (ofAir ? vessel.topMm + s : vessel.bottomMm - s);
  const grain = 2 * Number.EPSILON * Math.max(Math.abs(vessel.topMm), Math.abs(vessel.bottomMm));
  let low = 0;
  let high = depth;
  let s = (depth / 2) * ((2 * goal) / fullMm3) ** (1 / 1.5);
  let best = s;
  let bestError = Number.POSITIVE_INFINITY;
  for (let step = 0; step < MOST_STEPS; step++) {
    const wet = vessel.cut(offsetAt(s));
    const volume = ofAir ? fullMm3 - wet.volumeMm3 : wet.volumeMm3;
    const error = volume - goal;
    if (Math.abs(error) < bestError) {
      best = s;
      bestError = Math.abs(error);
    }
    const tolerance = Math.min(RELATIVE_TOLERANCE * volumeMm3, LEVEL_TOLERANCE * depth * wet.surfaceAreaMm2);
    // The second term is what the last digit of the offset is worth.
    if (bestError <= tolerance + grain * wet.surfaceAreaMm2) break;
    if (error < 0) low = s;
    else high = s;
    const slope = (s * wet.surfaceAreaMm2) / volume;
    let next = s * (goal / volume) ** (1 / slope);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === s || next === low || next === high) break;
    s = next;
  }
  return offsetAt(best);
}
