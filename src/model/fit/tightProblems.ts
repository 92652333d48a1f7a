import { boxGap } from '../../engine/fit/solid';
import type { Aircraft } from '../document/types';
import type { FitProblem } from './fitProblem';
import { type FitThing, fitThings } from './fitThings';
import { meetingPairs } from './meetings';
import { tooNear } from './ruleProblems';

/** Parts and tanks that do not overlap but are nearer to each other than asked, mm; none when nothing is asked. */
export function tightProblems(aircraft: Aircraft, clearanceMm: number): FitProblem[] {
  if (clearanceMm <= 0) return [];
  const things = fitThings(aircraft).filter(({ item }) => item !== null);
  return meetingPairs(things, clearanceMm).flatMap(([a, b]) => tight(aircraft, a, b, clearanceMm));
}

/** The same of one item. */
export const itemTightProblems = (
  aircraft: Aircraft,
  thing: FitThing,
  others: readonly FitThing[],
  clearanceMm: number,
): FitProblem[] =>
  clearanceMm <= 0
    ? []
    : others
        .filter(({ item, solid }) => item !== null && boxGap(solid, thing.solid) < clearanceMm)
        .flatMap((other) => tight(aircraft, thing, other, clearanceMm));

function tight(aircraft: Aircraft, a: FitThing, b: FitThing, clearanceMm: number): FitProblem[] {
  const rule = { atLeastMm: clearanceMm, why: 'the clearance asked for' };
  const problem = tooNear(aircraft, a, b, rule);
  // What overlaps is reported as an overlap.
  return problem && problem.byMm < clearanceMm ? [problem] : [];
}
