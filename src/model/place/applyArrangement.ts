import type { Vec3 } from '../../engine/geometry/types';
import { perObjects } from '../../engine/memory/memory';
import { ballastBox } from '../../engine/place/ballastRoom';
import { FORGIVEN_MM } from '../../engine/place/check';
import { sizeOf } from '../../engine/place/regions';
import type { Arrangement, BallastSpot, PlaceProblem } from '../../engine/place/types';
import { addPart, itemById, placeItem, updatePart } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { emptiedId, METAL_G_PER_MM3 } from './ballastPlaces';
import { fitRefusals, lostWaysIn, type Refusal } from './fitRefusals';
import { aircraftCases } from './loadCases';
import { partBox } from './placeOptions';
import { turned } from './turns';

/** A stack of ballast at a spot, as large as so much of it is. */
export function ballastPart(spot: BallastSpot, massG: number): Omit<Part, 'id'> {
  const box = ballastBox(spot, massG);
  const edgeMm = Math.cbrt(massG / METAL_G_PER_MM3.lead);
  const [lengthMm, widthMm, heightMm] = box ? sizeOf(box) : [edgeMm, edgeMm, edgeMm];
  return {
    name: `Ballast, ${spot.name.toLowerCase()}`,
    role: 'ballast',
    shape: { kind: 'box', lengthMm, widthMm, heightMm },
    massG,
    positionMm: spot.positionMm,
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
  };
}

/** Puts everything where an arrangement says and adds its ballast as parts: one new aircraft, one undo step. */
export function applyArrangement(
  aircraft: Aircraft,
  problem: PlaceProblem,
  { placed, ballast }: Pick<Arrangement, 'placed' | 'ballast'>,
  emptied: readonly Part[] = [],
): Aircraft {
  let after = aircraft;
  for (const { id, optionId, centreMm, moved } of placed) {
    const part = itemById(aircraft, id);
    if (!part || !moved) continue;
    const option = problem.parts.find((each) => each.id === id)?.options.find(({ id }) => id === optionId);
    const there = turned(part, option?.turnedTo);
    const from = partBox(there).centreMm;
    const [x, y, z] = part.positionMm;
    const positionMm: Vec3 = [
      tidy(x + centreMm[0] - from[0]),
      tidy(y + centreMm[1] - from[1]),
      tidy(z + centreMm[2] - from[2]),
    ];
    after = placeItem(after, id, positionMm);
    if ('role' in part && part.bayId !== undefined && optionId.startsWith('bay ')) {
      // One that was bound to a bay and goes to another is bound to that; ids have no spaces in them.
      after = updatePart(after, id, { bayId: optionId.split(' ')[1] ?? part.bayId });
    }
    if (there !== part) {
      const { yawDeg, pitchDeg, rollDeg } = there;
      after = updatePart(after, id, { yawDeg, pitchDeg, rollDeg });
    }
  }
  for (const { spotId, massG } of ballast) {
    const spot = problem.spots.find(({ id }) => id === spotId);
    const was = emptied.find(({ id }) => id === emptiedId(spotId));
    // What was there before goes back, lighter.
    if (was) after = { ...after, parts: [...after.parts, was.massG === massG ? was : { ...was, massG }] };
    else if (spot) after = addPart(after, ballastPart(spot, massG)).aircraft;
  }
  return after;
}

/** Places in the file have no more digits than the check forgives. */
const tidy = (mm: number): number => Math.round(mm / (FORGIVEN_MM / 10)) * (FORGIVEN_MM / 10);

/** An arrangement as it comes out on the aircraft. */
export interface Rechecked {
  readonly aircraft: Aircraft;
  /** Least margin over every load state and fuel state, by the aircraft's own balance, mm. */
  readonly marginMm: number;
  /** What the balance and the fit say against it. */
  readonly refusals: readonly Refusal[];
  /** The same in sentences. */
  readonly faults: readonly string[];
}

/** What a recheck may know besides. */
export interface RecheckOptions {
  /** Ballast that was taken out before the search: what was wrong with it then is not held against it. */
  readonly emptied?: readonly Part[];
  /** Also asks for the ways in, which takes long. */
  readonly waysIn?: boolean;
}

/** The aircraft with its ballast still in; the same one again. */
export const withParts = perObjects(
  (aircraft: Aircraft, emptied: readonly Part[]): Aircraft =>
    emptied.length === 0 ? aircraft : { ...aircraft, parts: [...aircraft.parts, ...emptied] },
);

/**
 * Applies an arrangement and works the aircraft out again with the balance and the fit, in every load state that flies,
 * which know nothing of how it was found. What was wrong before and is not worse is not held against it. Ways in are asked
 * for only where wanted, since they take long.
 */
export function recheckArrangement(
  aircraft: Aircraft,
  problem: PlaceProblem,
  arrangement: Pick<Arrangement, 'placed' | 'ballast'>,
  downs: Vec3 | readonly Vec3[],
  { emptied = [], waysIn = false }: RecheckOptions = {},
): Rechecked {
  const after = applyArrangement(aircraft, problem, arrangement, emptied);
  const refusals: Refusal[] = fitRefusals(withParts(aircraft, emptied), after);
  let marginMm = Number.POSITIVE_INFINITY;
  for (const { name, massG, momentGmm } of aircraftCases(after, downs)) {
    const [x, y] = [momentGmm[0] / massG, momentGmm[1] / massG];
    const margin = Math.min(x - problem.band.forwardMm, problem.band.aftMm - x);
    marginMm = Math.min(marginMm, margin);
    const tell = (sentence: string) => refusals.push({ what: 'balance', ids: [], sentence });
    if (margin < -10 * FORGIVEN_MM) tell(`The CG leaves the band ${name}.`);
    if (problem.lateralMm !== null && Math.abs(y) > problem.lateralMm + 10 * FORGIVEN_MM) {
      tell(`The CG is too far off centre ${name}.`);
    }
  }
  if (waysIn && refusals.length === 0) refusals.push(...lostWaysIn(withParts(aircraft, emptied), after));
  const faults = [...new Set(refusals.map(({ sentence }) => sentence))];
  return { aircraft: after, marginMm, refusals, faults };
}
