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

/** A whole number of thousandths, as the decimal that a file would have. */
const decimal = (whole: number): number => (whole === 0 ? 0 : whole / Math.round(1 / cornerStepMm));

/** What a corner is known by: its place in whole thousandths of a millimetre. */
const keyOf = (x: number, y: number, z: number): string => `${x},${y},${z}`;

/**
 * Gives each corner of the figures its number in a list that it fills. A corner that rounds to where there is none yet, but
 * lies within half a step of one that rounded to the next thousandth, is that one: figures that differ in their last digit
 * only must not tear the skin.
 */
function joiner(figuresMm: ArrayLike<number>, verticesMm: Vec3[]): (at: number) => number {
  const index = new Map<string, number>();
  /** Where each corner in the list was before it was rounded, in thousandths. */
  const places: Vec3[] = [];
  const near = (place: Vec3, [x, y, z]: Vec3): number | null => {
    const ways = ([0, 1, 2] as const).map((axis) => nextTo(place[axis]));
    for (const dx of ways[0]!)
      for (const dy of ways[1]!)
        for (const dz of ways[2]!) {
          const found = index.get(keyOf(x + dx, y + dy, z + dz));
          if (found !== undefined && apart(places[found]!, place) <= HALF_STEP) return found;
        }
    return null;
  };
  return (at) => {
    const [x, y, z] = [steps(figuresMm[at]!), steps(figuresMm[at + 1]!), steps(figuresMm[at + 2]!)];
    const rounded: Vec3 = [Math.round(x), Math.round(y), Math.round(z)];
    const key = keyOf(...rounded);
    const before = index.get(key);
    if (before !== undefined) return before;
    const found = near([x, y, z], rounded);
    const number = found ?? verticesMm.length;
    // What is said once of a place holds for it ever after.
    index.set(key, number);
    if (found === null) {
      places.push([x, y, z]);
      verticesMm.push([decimal(rounded[0]), decimal(rounded[1]), decimal(rounded[2])]);
    }
    return number;
  };
}

const steps = (mm: number): number => mm / cornerStepMm;

const HALF_STEP = 0.5;

const apart = (p: Vec3, q: Vec3): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);

/** The neighbouring thousandths that can hold a corner within half a step of this one along an axis: itself, and the nearer. */
const nextTo = (place: number): readonly number[] => (place < Math.round(place) ? [0, -1] : [0, 1]);

/**
 * Joins loose triangles, nine figures each in mm, at their corners. Every corner is moved to whole thousandths of a
 * millimetre, by at most 0.0009 mm, or 0.0032 mm where it joins another, so that what is kept in a file reads back exactly.
 */
export function welded(figuresMm: ArrayLike<number>): Welded {
  const verticesMm: Vec3[] = [];
  const corner = joiner(figuresMm, verticesMm);
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
