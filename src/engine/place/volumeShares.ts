import { AXES, type Axis } from './regions';
import { optionOf, type Room } from './rooms';
import { SAME_MM } from './tolerances';
import type { PlaceProblem } from './types';

/** Two things of a room that may overlap: one of each such pair is left out of account. */
function leftOut(problem: PlaceProblem, room: Room): ReadonlySet<number> {
  const mostOf = (part: number) =>
    Math.max(
      ...room.flatMap((choice) =>
        choice.part === part ? [optionOf(problem, choice).sizeMm.reduce((volume, mm) => volume * mm, 1)] : [],
      ),
    );
  const parts = new Set(room.map(({ part }) => part));
  const out = new Set<number>();
  for (const { a, b, gapMm, by } of problem.apart) {
    if (by === 'straight' || gapMm >= 0) continue;
    const pair = [a, b].map((id) => problem.parts.findIndex((part) => part.id === id));
    const [first, second] = pair as [number, number];
    if (!pair.every((part) => parts.has(part) && !out.has(part))) continue;
    out.add(mostOf(first) < mostOf(second) ? first : second);
  }
  return out;
}

/** The least gap that any two of a room keep which may not overlap, mm. */
export function leastGapMm(problem: PlaceProblem, room: Room): number {
  const ids = new Set(room.map(({ part }) => problem.parts[part]!.id));
  return Math.min(
    problem.clearanceMm,
    ...problem.apart.flatMap(({ a, b, gapMm, by }) =>
      by !== 'straight' && gapMm >= 0 && ids.has(a) && ids.has(b) ? [gapMm] : [],
    ),
  );
}

/**
 * The share of a room's volume, or of its breadths along some axes, that each choice takes at least; what fits together has shares of no more than 1 in sum.
 * A box that leaves too little beside it for even the smallest other one takes the whole breadth (a dual feasible
 * function: S. P. Fekete, J. Schepers, A general framework for bounds for higher-dimensional orthogonal packing problems,
 * Mathematical Methods of Operations Research 60, 2004), so in a narrow bay it is the lengths that count. Of two that may
 * overlap one takes nothing.
 */
export function volumeShares(problem: PlaceProblem, room: Room, axes: readonly Axis[] = AXES): number[] {
  const options = room.map((choice) => optionOf(problem, choice));
  const out = leftOut(problem, room);
  const shares = room.map(({ part }) => (out.has(part) ? 0 : 1));
  const gap = leastGapMm(problem, room);
  for (const axis of axes) {
    // With the least gap that any two keep given to each box and once to the room, boxes may touch.
    const breadth =
      Math.max(...options.map(({ region }) => region.maxMm[axis])) -
      Math.min(...options.map(({ region }) => region.minMm[axis])) +
      gap;
    const sizes = options.map(({ sizeMm }) => sizeMm[axis] + gap);
    const smallest = Math.min(...sizes);
    sizes.forEach((size, i) => {
      shares[i]! *= size + smallest > breadth + SAME_MM ? 1 : size / breadth;
    });
  }
  return shares;
}
