import type { Vec3 } from '../../engine/geometry/types';
import { type Checked, checkPlaced, FORGIVEN_MM } from '../../engine/place/check';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import { addPart, updatePart } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { clashesOf } from '../fit/clash';
import { aircraftCases } from './loadCases';
import { partBox, turned } from './placeOptions';

/** Lead, g/mm³; common practice, no source. */
const LEAD_G_PER_MM3 = 0.0113;

/** A cube of lead at a spot. */
function ballastPart(name: string, massG: number, positionMm: Vec3): Omit<Part, 'id'> {
  const edgeMm = Math.cbrt(massG / LEAD_G_PER_MM3);
  return {
    name,
    role: 'ballast',
    shape: { kind: 'box', lengthMm: edgeMm, widthMm: edgeMm, heightMm: edgeMm },
    massG,
    positionMm,
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
  };
}

/** Puts everything where an arrangement says and adds its ballast as parts: one new aircraft, one undo step. */
export function applyArrangement(
  aircraft: Aircraft,
  problem: PlaceProblem,
  { placed, ballast }: Arrangement,
): Aircraft {
  let after = aircraft;
  for (const { id, optionId, centreMm, moved } of placed) {
    const part = aircraft.parts.find((one) => one.id === id);
    if (!part || !moved) continue;
    const turnDeg =
      problem.parts.find((one) => one.id === id)?.options.find((option) => option.id === optionId)?.turnDeg ??
      0;
    const there = turned(part, turnDeg);
    const from = partBox(there).centreMm;
    const [x, y, z] = part.positionMm;
    const positionMm: Vec3 = [
      tidy(x + centreMm[0] - from[0]),
      tidy(y + centreMm[1] - from[1]),
      tidy(z + centreMm[2] - from[2]),
    ];
    after = updatePart(after, id, { yawDeg: there.yawDeg, positionMm });
  }
  for (const { spotId, massG } of ballast) {
    const spot = problem.spots.find(({ id }) => id === spotId);
    if (spot)
      after = addPart(
        after,
        ballastPart(`Ballast, ${spot.name.toLowerCase()}`, massG, spot.positionMm),
      ).aircraft;
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
  /** What is wrong with it, in sentences: limits, clashes that were not there before, what was asked and not kept. */
  readonly faults: readonly string[];
}

/**
 * Applies an arrangement and works the aircraft out again with the balance and the clash test, which know nothing of how
 * it was found. A clash that was there before, among things that did not move, is not held against it.
 */
export function recheckArrangement(
  aircraft: Aircraft,
  problem: PlaceProblem,
  arrangement: Arrangement,
  down: Vec3,
): Rechecked {
  const after = applyArrangement(aircraft, problem, arrangement);
  const placed: Checked = checkPlaced(problem, arrangement.placed, arrangement.ballast);
  const faults = [...placed.faults];
  let marginMm = Number.POSITIVE_INFINITY;
  for (const { name, massG, momentGmm } of aircraftCases(after, down)) {
    const [x, y] = [momentGmm[0] / massG, momentGmm[1] / massG];
    const margin = Math.min(x - problem.band.forwardMm, problem.band.aftMm - x);
    marginMm = Math.min(marginMm, margin);
    if (margin < -10 * FORGIVEN_MM) faults.push(`The CG leaves the band ${name}.`);
    if (problem.lateralMm !== null && Math.abs(y) > problem.lateralMm + 10 * FORGIVEN_MM) {
      faults.push(`The CG is too far off centre ${name}.`);
    }
  }
  const before = new Set(
    aircraft.parts.flatMap(({ id }) => clashesOf(aircraft, id).map(({ otherId }) => `${id} ${otherId}`)),
  );
  for (const { id, moved } of arrangement.placed) {
    if (!moved) continue;
    const name = after.parts.find((part) => part.id === id)?.name ?? id;
    for (const { otherId, otherName, depthMm } of clashesOf(after, id)) {
      const isNew = !before.has(`${id} ${otherId}`) && depthMm > FORGIVEN_MM;
      const isBallast =
        !aircraft.parts.some((part) => part.id === otherId) &&
        after.parts.some((part) => part.id === otherId);
      if (isNew && !isBallast) faults.push(`${name} runs into ${otherName}.`);
    }
  }
  return { aircraft: after, marginMm, faults };
}
