import { onePiecePair } from './onePiece';
import { planform } from './planform';
import type { LiftingSurface } from './types';

/**
 * The surfaces that take part in the longitudinal problem, all as pairs: a one-piece surface as the pair it
 * amounts to. A fin in the plane of symmetry, where a symmetric flow has no component across it, carries
 * nothing and is left out.
 */
export function pairedSurfaces(surfaces: readonly LiftingSurface[]): LiftingSurface[] {
  return surfaces.flatMap((surface) => {
    const pair = surface.sides === 'both' ? surface : onePiecePair(surface);
    return pair ? [pair] : [];
  });
}

/**
 * The main wing, whose area and MAC are the reference: of these paired surfaces the one with the largest area
 * seen from above, the first of equals. Null when there is none.
 */
export function mainSurface(paired: readonly LiftingSurface[]): LiftingSurface | null {
  let largest: LiftingSurface | null = null;
  let largestArea = 0;
  for (const surface of paired) {
    if (surface.sides !== 'both') continue;
    const area = Math.abs(surface.cantDeg) < 89 ? planform(surface, 'xy').areaMm2 : 0;
    // Equal areas worked out from different numbers differ by rounding; that must not choose the wing.
    if (area > largestArea * (1 + 1e-9)) {
      largest = surface;
      largestArea = area;
    }
  }
  return largest;
}
