import type { Vec3 } from '../geometry/types';
import type { Convex } from './convex';
import { reduceSimplex, simplex } from './simplex';

/** Two convex cores: how far apart, and where. The radii are not counted in. */
export interface CoreSeparation {
  /** Distance of the cores, mm; 0 when no plane was found that parts them. */
  readonly distanceMm: number;
  /** Nearest points on the cores, mm. The same point when they meet. */
  readonly onA: Vec3;
  readonly onB: Vec3;
}

/** Distances are right to this share of themselves. */
const close = 1e-9;
const mostSteps = 200;

/**
 * Runs the search; returns the distance of the cores in mm, 0 when they meet. Stops early once they are
 * known to be more than `enoughMm` apart, and then returns a distance more than `enoughMm` but too small.
 * Every distance above 0 rests on a plane found between the two, so a clash is never taken for a gap.
 *
 * E. G. Gilbert, D. W. Johnson, S. S. Keerthi, IEEE J. Robotics and Automation 4(2):193–203, 1988;
 * G. van den Bergen, Collision Detection in Interactive 3D Environments, Morgan Kaufmann 2003, ch. 4.
 */
export function coreDistance(a: Convex, b: Convex, enoughMm = Number.POSITIVE_INFINITY): number {
  const { w } = simplex;
  simplex.size = 0;
  simplex.squared = Number.POSITIVE_INFINITY;
  simplex.x = a.minMm[0] + a.maxMm[0] - b.minMm[0] - b.maxMm[0] || 1;
  simplex.y = a.minMm[1] + a.maxMm[1] - b.minMm[1] - b.maxMm[1];
  simplex.z = a.minMm[2] + a.maxMm[2] - b.minMm[2] - b.maxMm[2];
  let atLeast = 0;
  for (let step = 0; step < mostSteps; step += 1) {
    const { x, y, z, squared } = simplex;
    const at = 3 * simplex.size;
    newcomer(a, b, x, y, z, at);
    const [wx, wy, wz] = [w[at]!, w[at + 1]!, w[at + 2]!];
    const along = x * wx + y * wy + z * wz;
    if (along > 0) atLeast = Math.max(atLeast, along / Math.sqrt(x * x + y * y + z * z));
    if (atLeast > enoughMm) return atLeast;
    if (step > 0 && (squared - along <= close * squared || isCorner(wx, wy, wz))) break;
    simplex.size += 1;
    reduceSimplex();
    if (simplex.encloses) return 0;
    if (simplex.squared >= squared) break;
    if (simplex.squared <= 1e-24 * (wx * wx + wy * wy + wz * wz)) return 0;
  }
  return atLeast > 0 ? Math.sqrt(simplex.squared) : 0;
}

/** The corner of a − b furthest against (x, y, z). */
function newcomer(a: Convex, b: Convex, x: number, y: number, z: number, at: number): void {
  const { w, a: onA } = simplex;
  b.support(x, y, z, w, at);
  a.support(-x, -y, -z, onA, at);
  w[at] = onA[at]! - w[at]!;
  w[at + 1] = onA[at + 1]! - w[at + 1]!;
  w[at + 2] = onA[at + 2]! - w[at + 2]!;
}

function isCorner(x: number, y: number, z: number): boolean {
  const { w } = simplex;
  for (let i = 0; i < 3 * simplex.size; i += 3) {
    if (w[i] === x && w[i + 1] === y && w[i + 2] === z) return true;
  }
  return false;
}

/** Distance and nearest points of two convex cores. */
export function coreSeparation(a: Convex, b: Convex): CoreSeparation {
  const distanceMm = coreDistance(a, b);
  let [px, py, pz] = [0, 0, 0];
  for (let n = 0; n < simplex.size; n += 1) {
    const share = simplex.share[n]!;
    px += share * simplex.a[3 * n]!;
    py += share * simplex.a[3 * n + 1]!;
    pz += share * simplex.a[3 * n + 2]!;
  }
  const { x, y, z } = simplex;
  const onA: Vec3 = [px, py, pz];
  return { distanceMm, onA, onB: distanceMm === 0 ? onA : [px - x, py - y, pz - z] };
}
