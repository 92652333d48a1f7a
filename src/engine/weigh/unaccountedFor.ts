import type { Vec3 } from '../geometry/types';
import { carriedFigure, carryOver, type Figure } from './figure';

/** What the whole is, as thought and as weighed: mass in g, then the CG along the axes that were measured, mm. */
export interface WholeSeen {
  readonly massG: Figure;
  readonly cgMm: readonly (Figure | null)[];
}

/** An item that would explain the difference by itself. */
export interface UnaccountedFor {
  /** Less than 0 where something listed is missing or listed too heavy. */
  readonly massG: Figure;
  /** Along each axis; null where that was not measured, or where the mass is too small against its error to have a place. */
  readonly placeMm: readonly [Figure | null, Figure | null, Figure | null];
  /** What the weighed moment exceeds the thought one by, about the CG as thought, along each axis, g·mm. */
  readonly momentGmm: Vec3;
}

/** A mass less sure than this, in its own sigmas, has no place. */
const PLACED_FROM = 3;

/**
 * The mass and place of "something unaccounted for": what the weighed whole has over the thought one,
 *
 *     m = M′ − M     r = c + M′·(c′ − c)/m
 *
 * with the errors of both carried over, first order. With next to no mass left over the difference is one of place.
 */
export function unaccountedFor(thought: WholeSeen, weighed: WholeSeen): UnaccountedFor {
  const massG = {
    value: weighed.massG.value - thought.massG.value,
    sigma: Math.hypot(weighed.massG.sigma, thought.massG.sigma),
  };
  const placed = Math.abs(massG.value) >= PLACED_FROM * massG.sigma && massG.value !== 0;
  const both = [0, 1, 2].map((axis) => ({ from: thought.cgMm[axis], to: weighed.cgMm[axis] }));
  const place = (axis: number): Figure | null => {
    const { from, to } = both[axis]!;
    if (!placed || !from || !to) return null;
    const carried = carryOver([thought.massG, weighed.massG, from, to], ([m = 0, w = 0, c = 0, seen = 0]) => [
      c + (w * (seen - c)) / (w - m),
    ]);
    return carriedFigure(carried, 0);
  };
  const moment = (axis: number) => {
    const { from, to } = both[axis]!;
    return from && to ? weighed.massG.value * (to.value - from.value) : 0;
  };
  return { massG, placeMm: [place(0), place(1), place(2)], momentGmm: [moment(0), moment(1), moment(2)] };
}
