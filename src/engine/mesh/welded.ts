import type { Triple } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';

/** Corners nearer than this become one, and a corner's place is kept to it, mm. */
export const cornerStepMm = 1e-3;

/** What a file's loose triangles come to once corners at one place are one corner. */
export interface Welded {
  readonly verticesMm: readonly Vec3[];
  readonly triangles: readonly Triple[];
  /** Triangles left out because two of their corners are one. */
  readonly shrunk: number;
  /** Triangles left out because another has the very same corners, the same way round. */
  readonly doubled: number;
}

const steps = (mm: number): number => Math.round(mm / cornerStepMm);

/** A whole number of thousandths, as the decimal that a file would have. */
const decimal = (whole: number): number => (whole === 0 ? 0 : whole / Math.round(1 / cornerStepMm));

/**
 * Joins loose triangles, nine figures each in mm, at their corners. Every corner is moved to whole thousandths of a
 * millimetre, by at most 0.0009 mm, so that what is kept in a file reads back exactly.
 */
export function welded(figuresMm: ArrayLike<number>): Welded {
  const index = new Map<string, number>();
  const verticesMm: Vec3[] = [];
  const corner = (at: number): number => {
    const [x, y, z] = [steps(figuresMm[at]!), steps(figuresMm[at + 1]!), steps(figuresMm[at + 2]!)];
    const key = `${x},${y},${z}`;
    const before = index.get(key);
    if (before !== undefined) return before;
    index.set(key, verticesMm.length);
    return verticesMm.push([decimal(x), decimal(y), decimal(z)]) - 1;
  };
  const triangles: Triple[] = [];
  const seen = new Set<string>();
  let [shrunk, doubled] = [0, 0];
  for (let at = 0; at + 8 < figuresMm.length; at += 9) {
    const [a, b, c] = [corner(at), corner(at + 3), corner(at + 6)];
    if (a === b || b === c || c === a) {
      shrunk += 1;
      continue;
    }
    const key = a < b && a < c ? `${a},${b},${c}` : b < c ? `${b},${c},${a}` : `${c},${a},${b}`;
    if (seen.has(key)) doubled += 1;
    else triangles.push([a, b, c]);
    seen.add(key);
  }
  return { verticesMm, triangles, shrunk, doubled };
}
