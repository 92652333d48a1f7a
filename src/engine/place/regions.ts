import type { Vec3 } from '../geometry/types';
import type { PlaceBox, PlaceProblem } from './types';

/** Lengths below this are nothing, mm. */
export const NO_LENGTH_MM = 1e-6;

export const AXES = [0, 1, 2] as const;
export type Axis = (typeof AXES)[number];

/** A thing that takes up room: a region its box must stay in, and the box's size. An obstacle's region is its box. */
export interface Occupant {
  readonly region: PlaceBox;
  readonly sizeMm: Vec3;
}

export const sizeOf = ({ minMm, maxMm }: PlaceBox): Vec3 => [
  maxMm[0] - minMm[0],
  maxMm[1] - minMm[1],
  maxMm[2] - minMm[2],
];

export const obstacleOccupant = (box: PlaceBox): Occupant => ({ region: box, sizeMm: sizeOf(box) });

/** The least and the greatest that the middle of the box may be along an axis, mm. */
export function centreRange({ region, sizeMm }: Occupant, axis: Axis): { lowMm: number; highMm: number } {
  const lowMm = region.minMm[axis] + sizeMm[axis] / 2;
  const highMm = region.maxMm[axis] - sizeMm[axis] / 2;
  // A box that fits to rounding is held in the middle.
  return highMm < lowMm && highMm > lowMm - NO_LENGTH_MM
    ? { lowMm: (lowMm + highMm) / 2, highMm: (lowMm + highMm) / 2 }
    : { lowMm, highMm };
}

export const fitsRegion = (occupant: Occupant): boolean =>
  AXES.every((axis) => {
    const { lowMm, highMm } = centreRange(occupant, axis);
    return lowMm <= highMm;
  });

/** Whether two things may come closer than the gap in some of their places. */
export const mayMeet = (a: Occupant, b: Occupant, gapMm: number): boolean =>
  AXES.every(
    (axis) =>
      a.region.minMm[axis] < b.region.maxMm[axis] + gapMm - NO_LENGTH_MM &&
      b.region.minMm[axis] < a.region.maxMm[axis] + gapMm - NO_LENGTH_MM,
  );

/** Whether the first can stand before the second along an axis with the gap between. */
export const canPrecede = (a: Occupant, b: Occupant, gapMm: number, axis: Axis): boolean =>
  a.region.minMm[axis] + a.sizeMm[axis] + gapMm <= b.region.maxMm[axis] - b.sizeMm[axis] + NO_LENGTH_MM;

/**
 * The gap that two things must keep: the clearance, or what a rule says, the last rule for a pair. A rule with less than
 * the clearance lets them be closer, and with a negative gap overlap by so much along an axis. Ids of parts or obstacles.
 */
export function gapBetween({ clearanceMm, apart }: PlaceProblem): (a: string, b: string) => number {
  const gaps = new Map<string, number>();
  for (const { a, b, gapMm } of apart) {
    const key = a < b ? `${a}|${b}` : `${b}|${a}`;
    const known = gaps.get(key);
    gaps.set(key, known === undefined || gapMm < clearanceMm ? gapMm : Math.max(known, gapMm));
  }
  return (a, b) => gaps.get(a < b ? `${a}|${b}` : `${b}|${a}`) ?? clearanceMm;
}
