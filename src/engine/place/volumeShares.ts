import { AXES } from './regions';
import { optionOf, type Room } from './rooms';
import type { PlaceProblem } from './types';

/**
 * The share of a room's volume that each choice takes at least; what fits together has shares of no more than 1 in sum.
 * A box that leaves too little beside it for even the smallest other one takes the whole breadth (a dual feasible
 * function: S. P. Fekete, J. Schepers, A general framework for bounds for higher-dimensional orthogonal packing problems,
 * Mathematical Methods of Operations Research 60, 2004), so in a narrow bay it is the lengths that count.
 */
export function volumeShares(problem: PlaceProblem, room: Room): number[] {
  const options = room.map((choice) => optionOf(problem, choice));
  const shares = options.map(() => 1);
  for (const axis of AXES) {
    // With the clearance given to each box and once to the room, boxes may touch.
    const gap = problem.clearanceMm;
    const breadth =
      Math.max(...options.map(({ region }) => region.maxMm[axis])) -
      Math.min(...options.map(({ region }) => region.minMm[axis])) +
      gap;
    const sizes = options.map(({ sizeMm }) => sizeMm[axis] + gap);
    const smallest = Math.min(...sizes);
    sizes.forEach((size, i) => {
      shares[i]! *= size + smallest > breadth + 1e-6 ? 1 : size / breadth;
    });
  }
  return shares;
}
