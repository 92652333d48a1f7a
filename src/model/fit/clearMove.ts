import type { Vec3 } from '../../engine/geometry/types';
import { add, length, scale, sub } from '../../engine/geometry/vec3';
import { itemSolid } from '../airframe/solids';
import { itemById, placeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { type PlaceFit, placeFit } from './placeFit';
import { type FitProblem, newProblems, wholeFit } from './wholeFit';

/** Left free beyond the shortest move, so that what was cleared does not touch, mm. */
const gapMm = 0.1;
/** Steps inwards from a wall before it is given up. */
const steps = 12;
/** How far along an axis a place is looked for, mm, nearest first. */
const reachesMm = [1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144];
const waysSquare: readonly Vec3[] = [
  [-1, 0, 0],
  [1, 0, 0],
  [0, -1, 0],
  [0, 1, 0],
  [0, 0, -1],
  [0, 0, 1],
];

/**
 * The move of an item that ends one of its problems and makes nothing worse, by the fit of the whole aircraft in every
 * load state, mm: the shortest way clear where that will do, else the shortest along an axis, to a tenth of a
 * millimetre and at most 144 mm. Null when none was found.
 */
export function clearMove(aircraft: Aircraft, itemId: string, problem: FitProblem): Vec3 | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  const before = wholeFit(aircraft);
  const serves = (by: Vec3) => {
    const after = wholeFit(placeItem(aircraft, itemId, add(item.positionMm, by)));
    return !after.problems.some(({ key }) => key === problem.key) && newProblems(before, after).length === 0;
  };
  const direct = directMove(aircraft, itemId, problem);
  if (direct && serves(direct)) return direct;
  return alongAxes(serves);
}

function directMove(
  aircraft: Aircraft,
  itemId: string,
  { kind, parties, clearByMm }: FitProblem,
): Vec3 | null {
  if (kind === 'through') return moveIn(aircraft, itemId);
  const longMm = clearByMm ? length(clearByMm) : 0;
  if (!clearByMm || longMm === 0) return null;
  return scale(clearByMm, ((parties[0].id === itemId ? 1 : -1) * (longMm + gapMm)) / longMm);
}

/** The shortest of six straight moves that serves, brought back to a tenth of a millimetre. */
function alongAxes(serves: (by: Vec3) => boolean): Vec3 | null {
  for (const [i, reachMm] of reachesMm.entries()) {
    const way = waysSquare.find((direction) => serves(scale(direction, reachMm)));
    if (!way) continue;
    let [low, high] = [reachesMm[i - 1] ?? 0, reachMm];
    while (high - low > gapMm + 1e-9) {
      const middle = Math.round((5 * (low + high)) / (10 * gapMm)) * gapMm;
      if (middle <= low || middle >= high) break;
      if (serves(scale(way, middle))) high = middle;
      else low = middle;
    }
    return scale(way, high);
  }
  return null;
}

const nudges: readonly Vec3[] = waysSquare.map((way) => scale(way, gapMm));

/** Goes in from the wall where it pokes through most, again and again, until it pokes through nowhere. */
function moveIn(aircraft: Aircraft, itemId: string): Vec3 | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  const fitAt = (by: Vec3): PlaceFit | null => {
    const there = itemById(placeItem(aircraft, itemId, add(item.positionMm, by)), itemId);
    return there ? placeFit(aircraft.structure, itemSolid(there)) : null;
  };
  let by: Vec3 = [0, 0, 0];
  for (let step = 0; step < steps; step += 1) {
    const fit = fitAt(by);
    if (fit?.where !== 'hull') return null;
    if (fit.outMm === 0) return by;
    const inward: Vec3 = fit.atMm ? sub(fit.atMm[1], fit.atMm[0]) : [0, 0, 0];
    const longMm = length(inward);
    // What only just touches the surface from inside has no way out of its own: the best of six small steps gives one.
    by = longMm > 0 ? add(by, scale(inward, (gapMm + fit.outMm) / longMm)) : bestOf(by, fitAt);
  }
  return null;
}

/** The one of six small steps further that reaches out of the hull least. */
function bestOf(fromMm: Vec3, fitAt: (by: Vec3) => PlaceFit | null): Vec3 {
  const out = (by: Vec3) => {
    const fit = fitAt(by);
    return fit?.where === 'hull' ? fit.outMm : Number.POSITIVE_INFINITY;
  };
  return nudges
    .map((nudge) => add(fromMm, nudge))
    .reduce((best, place) => (out(place) < out(best) ? place : best));
}
