import type { Vec3 } from '../../engine/geometry/types';
import { checkPlaced } from '../../engine/place/check';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Aircraft, Part } from '../document/types';
import { applyArrangement } from './applyArrangement';
import { aircraftCases } from './loadCases';

/**
 * The problem with the moments that an arrangement really leaves: foam is cut where a part goes in and left where it came
 * out, leads by the wall lie otherwise, which no program that is linear in the places can know. Searching again from here
 * comes out right where it comes out the same.
 */
export function correctedProblem(
  aircraft: Aircraft,
  problem: PlaceProblem,
  arrangement: Pick<Arrangement, 'placed' | 'ballast'>,
  downs: Vec3 | readonly Vec3[],
  emptied: readonly Part[] = [],
): PlaceProblem {
  const real = aircraftCases(applyArrangement(aircraft, problem, arrangement, emptied), downs);
  const thought = checkPlaced(problem, arrangement.placed, arrangement.ballast).cases;
  return {
    ...problem,
    cases: problem.cases.map((load, s) => {
      const { massG, cgMm } = thought[s]!;
      const seen = real.find(({ id }) => id === load.id);
      if (!seen) return load;
      const [x, y, z] = load.momentGmm;
      return {
        ...load,
        massG: load.massG + seen.massG - massG,
        momentGmm: [x + seen.momentGmm[0] - massG * cgMm[0], y + seen.momentGmm[1] - massG * cgMm[1], z],
      };
    }),
  };
}
