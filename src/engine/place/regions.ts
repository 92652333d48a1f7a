import type { Vec3 } from '../geometry/types';
import { SAME_MM } from './tolerances';
import type { PlaceBox, PlaceProblem } from './types';

export const AXES = [0, 1, 2] as const;
export type Axis = (typeof AXES)[number];

/** An item that takes up room: a region its box must stay in, and the box's size. An obstacle's region is its box. */
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
  return highMm < lowMm && highMm > lowMm - SAME_MM
    ? { lowMm: (lowMm + highMm) / 2, highMm: (lowMm + highMm) / 2 }
    : { lowMm, highMm };
}

export const fitsRegion = (occupant: Occupant): boolean =>
  AXES.every((axis) => {
    const { lowMm, highMm } = centreRange(occupant, axis);
    return lowMm <= highMm;
  });

/** Whether two items may come closer than the gap in some of their places. */
export const mayMeet = (a: Occupant, b: Occupant, gapMm: number): boolean =>
  AXES.every(
    (axis) =>
      a.region.minMm[axis] < b.region.maxMm[axis] + gapMm - SAME_MM &&
      b.region.minMm[axis] < a.region.maxMm[axis] + gapMm - SAME_MM,
  );

/** Whether the first can stand before the second along an axis with the gap between. */
export const canPrecede = (a: Occupant, b: Occupant, gapMm: number, axis: Axis): boolean =>
  a.region.minMm[axis] + a.sizeMm[axis] + gapMm <= b.region.maxMm[axis] - b.sizeMm[axis] + SAME_MM;

/** How far two boxes are apart along an axis, mm; negative where they overlap. */
export const gapAlong = (a: PlaceBox, b: PlaceBox, axis: Axis): number =>
  Math.max(a.minMm[axis] - b.maxMm[axis], b.minMm[axis] - a.maxMm[axis]);

/** The straight distance between two boxes, mm; 0 where they touch or overlap. */
export const straightGap = (a: PlaceBox, b: PlaceBox): number =>
  Math.hypot(...AXES.map((axis) => Math.max(0, gapAlong(a, b, axis))));

/** What two items must keep: so far apart along some axis, and so far in a straight line, mm. */
export interface Gap {
  readonly axisMm: number;
  readonly straightMm: number;
}

/**
 * The gaps that two items must keep: the clearance, or the most that rules along an axis say, and the most that any
 * straight rule says. A rule with less than the clearance lets them be closer, whatever the rules before it say, and with
 * a negative gap overlap by so much along an axis. Ids of parts, obstacles or ballast spots.
 */
export function gapBetween({ clearanceMm, apart }: PlaceProblem): (a: string, b: string) => Gap {
  const gaps = new Map<string, Gap>();
  const keyOf = (a: string, b: string) => (a < b ? `${a}|${b}` : `${b}|${a}`);
  const free: Gap = { axisMm: clearanceMm, straightMm: 0 };
  for (const { a, b, gapMm, by = 'axis' } of apart) {
    const key = keyOf(a, b);
    const before = gaps.get(key);
    if (by === 'straight') {
      const { axisMm, straightMm } = before ?? free;
      gaps.set(key, { axisMm, straightMm: Math.max(straightMm, gapMm) });
      continue;
    }
    const first = before === undefined || before.axisMm === clearanceMm;
    gaps.set(key, {
      axisMm: first || gapMm < clearanceMm ? gapMm : Math.max(before.axisMm, gapMm),
      straightMm: before?.straightMm ?? 0,
    });
  }
  return (a, b) => gaps.get(keyOf(a, b)) ?? free;
}

/** The most of both: nearer than this along every axis, two items may break one of them. */
export const widest = ({ axisMm, straightMm }: Gap): number => Math.max(axisMm, straightMm);

/** Whether two things can pass each other along two axes at once, so that they may stand corner to corner. */
export const mayStandDiagonally = (a: Occupant, b: Occupant): boolean =>
  AXES.filter((axis) => canPrecede(a, b, 0, axis) || canPrecede(b, a, 0, axis)).length > 1;

/**
 * A gap that the two keep along at least one axis wherever they keep what is asked: corner to corner in three directions
 * each is a √3rd of a straight distance.
 */
export const surelyAlongAxis = ({ axisMm, straightMm }: Gap, diagonally: boolean): number =>
  Math.max(axisMm, straightMm > 0 ? (diagonally ? straightMm / Math.sqrt(3) : straightMm) : -Infinity);
