import { pointSolid } from '../../engine/fit/outline';
import { shapeDistance } from '../../engine/fit/shapeDistance';
import { boxGap } from '../../engine/fit/solid';
import { add, mirrorY } from '../../engine/geometry/vec3';
import { bothStates } from '../airframe/aboard';
import type { Aircraft } from '../document/types';
import type { FitProblem } from './fitProblem';
import { partiesKey } from './fitProblem';
import { type FitThing, fitThings, statesOf } from './fitThings';
import { meetingPairs } from './meetings';
import { solidOverlap } from './overlaps';

/** Every two items that stand in one place in some load state. */
export const overlapProblems = (aircraft: Aircraft): FitProblem[] =>
  meetingPairs(fitThings(aircraft)).flatMap(([a, b]) => ofPair(aircraft, a, b));

/** The same of one of them among some others. */
export const itemOverlaps = (
  aircraft: Aircraft,
  thing: FitThing,
  others: readonly FitThing[],
): FitProblem[] =>
  others
    .filter(({ solid }) => boxGap(solid, thing.solid) === 0)
    .flatMap((other) => ofPair(aircraft, thing, other));

function ofPair(aircraft: Aircraft, a: FitThing, b: FitThing): FitProblem[] {
  const [first, second] = inOrder(a, b);
  const problem = mayClash(first, second) ? overlapProblem(aircraft, first, second) : null;
  return problem ? [problem] : [];
}

/** The one that a person would move comes first: parts, then tanks, then legs, then what is built in. */
const rank = ({ what, item, leg }: FitThing): number =>
  (what === 'part' ? 0 : what === 'tank' ? 2 : leg ? 4 : 5) + (item?.locked ? 1 : 0);

const inOrder = (a: FitThing, b: FitThing): readonly [FitThing, FitThing] => {
  const by = rank(a) - rank(b);
  return by < 0 || (by === 0 && a.pieceId < b.pieceId) ? [a, b] : [b, a];
};

/**
 * Whether two items are ever to be kept out of one place. What is built in runs through what is built in. A leg
 * stands in its mount, and is one piece with its own wheel; all else of it must go free, let down and swung up.
 */
function mayClash(a: FitThing, b: FitThing): boolean {
  if (a.item || b.item) return true;
  if (!a.leg && !b.leg) return false;
  if (a.leg && b.leg) return a.id !== b.id || sideOf(a) !== sideOf(b);
  const [leg, other] = a.leg ? [a, b] : [b, a];
  return leg.isWheel || !isMount(leg, other);
}

const sideOf = ({ pieceId }: FitThing): string => pieceId.slice(0, pieceId.lastIndexOf('.'));

/** Touches or holds the leg's top. */
function isMount({ leg, pieceId }: FitThing, other: FitThing): boolean {
  if (!leg) return false;
  const top = pieceId.includes('.left.') ? mirrorY(leg.topMm) : leg.topMm;
  return shapeDistance(pointSolid(top), other.solid).distanceMm <= leg.strutDiameterMm;
}

function overlapProblem(aircraft: Aircraft, a: FitThing, b: FitThing): FitProblem | null {
  const [statesA, statesB] = [statesOf(aircraft, a), statesOf(aircraft, b)];
  const states = statesA && statesB && bothStates(statesA, statesB);
  const overlap = states && solidOverlap(a.solid, b.solid);
  if (!overlap) return null;
  const { minMm, maxMm } = a.solid;
  const middle = [0, 1, 2].map((axis) => (minMm[axis]! + maxMm[axis]!) / 2) as [number, number, number];
  const kind = overlap.within && a.item && b.item ? 'within' : 'overlap';
  return {
    key: partiesKey('overlap', [a.id, b.id]),
    kind,
    severity: 'bad',
    parties: [partyOf(a), partyOf(b)],
    byMm: overlap.depthMm,
    states,
    atMm: [middle, add(middle, overlap.clearByMm)],
    clearByMm: overlap.clearByMm,
    rule: null,
  };
}

export const partyOf = ({ id, name, what, pieceId }: FitThing) => ({ id, name, what, pieceId });
