import type { Vec3 } from '../../engine/geometry/types';
import { balanceAt } from '../balance/balance';
import { travelSigmasMm } from '../balance/certainty';
import type { Aircraft } from '../document/types';
import { flyingPositions } from './loadCases';

/** The standard uncertainty of the CG's station, the largest over all load states and the whole burn, mm. */
export const largestSigmaMm = (aircraft: Aircraft, down: Vec3): number =>
  Math.max(
    0,
    ...flyingPositions(aircraft).flatMap((positions) =>
      travelSigmasMm(aircraft, balanceAt(aircraft, { fuelFraction: 1, down, positions })),
    ),
  );
