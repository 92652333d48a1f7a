import type { Vec3 } from '../../engine/geometry/types';
import type { Arrangement, LoadCase, PlaceProblem } from '../../engine/place/types';
import type { Aircraft } from '../document/types';
import { applyArrangement } from './applyArrangement';
import { aircraftCases } from './loadCases';

/**
 * The problem with the moments that an arrangement really leaves: leads lie otherwise when their ends have moved, which no
 * program that is linear in the places can know. Searching again from here comes out right where it comes out the same.
 */
export function correctedProblem(
  aircraft: Aircraft,
  problem: PlaceProblem,
  arrangement: Arrangement,
  down: Vec3,
): PlaceProblem {
  const real = aircraftCases(applyArrangement(aircraft, problem, arrangement), down);
  return {
    ...problem,
    cases: problem.cases.map((one, s) => {
      const seen = real.find(({ id }) => id === one.id);
      if (!seen) return one;
      const thought = totals(problem, one, s, arrangement);
      const [x, y, z] = one.momentGmm.map(
        (gmm, axis) => gmm + seen.momentGmm[axis]! - thought.momentGmm[axis]!,
      );
      return { ...one, massG: one.massG + seen.massG - thought.massG, momentGmm: [x!, y!, z!] };
    }),
  };
}

/** A load case with everything placed, as the program has it. */
function totals(problem: PlaceProblem, one: LoadCase, s: number, { placed, ballast }: Arrangement) {
  let { massG } = one;
  const momentGmm: [number, number, number] = [...one.momentGmm];
  const add = (grams: number, atMm: Vec3) => {
    massG += grams;
    for (const axis of [0, 1, 2] as const) momentGmm[axis] += grams * atMm[axis];
  };
  for (const { id, cgMm } of placed) add(problem.parts.find((part) => part.id === id)?.massesG[s] ?? 0, cgMm);
  for (const { spotId, massG: grams } of ballast) {
    const spot = problem.spots.find(({ id }) => id === spotId);
    if (spot) add(grams, spot.positionMm);
  }
  return { massG, momentGmm };
}
