import type { Vec3 } from '../geometry/types';
import { ballastBox, mostSteps } from './ballastRoom';
import { endsAt, leadMoment, leadRunMm } from './leadRun';
import { AXES, centreRange, gapAlong, gapBetween, straightGap } from './regions';
import { WHOLE_WITHIN } from './tolerances';
import type { BallastPlaced, Lead, PlaceBox, Placed, PlaceProblem } from './types';

/** How one load case lies against its limits with everything in place, mm; positive inside. */
export interface CaseBalance {
  readonly caseId: string;
  readonly massG: number;
  readonly cgMm: readonly [number, number];
  readonly forwardMarginMm: number;
  readonly aftMarginMm: number;
  /** Null where the lateral balance does not matter. */
  readonly lateralMarginMm: number | null;
}

/** An arrangement worked out again from nothing but the places and the grams. */
export interface Checked {
  readonly cases: readonly CaseBalance[];
  readonly marginMm: number;
  /** Everything that is wrong with it, in sentences; none for a sound one. */
  readonly faults: readonly string[];
}

/** What is forgiven, mm: nobody cuts or weighs to a ten-thousandth. */
export const FORGIVEN_MM = 1e-4;

/** Checks places and ballast against everything that was asked, without any solver. */
export function checkPlaced(
  problem: PlaceProblem,
  placed: readonly Placed[],
  ballast: readonly BallastPlaced[],
  leastMarginMm = 0,
): Checked {
  const faults: string[] = [];
  const pulls = problem.leads.flatMap((lead) => {
    const ends = lead.mass && endsOf(problem, lead, placed);
    return ends ? [{ lead, ...leadMoment(lead, ...ends) }] : [];
  });
  const cases = problem.cases.map((state, s): CaseBalance => {
    let massG = state.massG;
    let [x, y] = [state.momentGmm[0], state.momentGmm[1]];
    placed.forEach(({ id, cgMm }) => {
      const partG = problem.parts.find((part) => part.id === id)?.massesG[s] ?? 0;
      massG += partG;
      x += partG * cgMm[0];
      y += partG * cgMm[1];
    });
    for (const { lead, massG: leadG, momentGmm } of pulls) {
      if (!lead.mass?.aboard[s]) continue;
      massG += leadG;
      x += momentGmm[0];
      y += momentGmm[1];
    }
    for (const { spotId, massG: pieceG } of ballast) {
      const spot = problem.spots.find(({ id }) => id === spotId);
      if (!spot) continue;
      massG += pieceG;
      x += pieceG * spot.positionMm[0];
      y += pieceG * spot.positionMm[1];
    }
    const cgMm = [x / massG, y / massG] as const;
    const lateral = problem.lateralMm === null ? null : problem.lateralMm - Math.abs(cgMm[1]);
    const balance: CaseBalance = {
      caseId: state.id,
      massG,
      cgMm,
      forwardMarginMm: cgMm[0] - problem.band.forwardMm,
      aftMarginMm: problem.band.aftMm - cgMm[0],
      lateralMarginMm: lateral,
    };
    const least = Math.min(balance.forwardMarginMm, balance.aftMarginMm) - leastMarginMm;
    if (!(least >= -FORGIVEN_MM)) faults.push(`${state.name}: the CG is ${(-least).toFixed(3)} mm outside.`);
    if (lateral !== null && !(lateral >= -FORGIVEN_MM)) {
      faults.push(`${state.name}: the CG is ${(-lateral).toFixed(3)} mm too far off centre.`);
    }
    return balance;
  });
  faults.push(
    ...placeFaults(problem, placed, ballast),
    ...leadFaults(problem, placed),
    ...ballastFaults(problem, ballast),
  );
  const margins = cases.map((load) => Math.min(load.forwardMarginMm, load.aftMarginMm));
  return { cases, marginMm: Math.min(...margins), faults };
}

function placeFaults(
  problem: PlaceProblem,
  placed: readonly Placed[],
  ballast: readonly BallastPlaced[],
): string[] {
  const faults: string[] = [];
  const gapOf = gapBetween(problem);
  const boxes: { id: string; name: string; box: PlaceBox; fixed: boolean }[] = problem.obstacles.map(
    ({ id, name, minMm, maxMm }) => ({ id, name, box: { minMm, maxMm }, fixed: true }),
  );
  for (const { spotId, massG } of ballast) {
    const spot = problem.spots.find(({ id }) => id === spotId);
    const box = spot && ballastBox(spot, massG);
    if (box) boxes.push({ id: spotId, name: `Ballast at ${spot.name}`, box, fixed: false });
  }
  for (const part of problem.parts) {
    const place = placed.find(({ id }) => id === part.id);
    const option = part.options.find(({ id }) => id === place?.optionId);
    if (!place || !option) {
      faults.push(`${part.name} has no place.`);
      continue;
    }
    for (const axis of AXES) {
      const { lowMm, highMm } = centreRange(option, axis);
      const out = Math.max(lowMm - place.centreMm[axis], place.centreMm[axis] - highMm);
      if (out > FORGIVEN_MM)
        faults.push(`${part.name} sticks out of ${option.name} by ${out.toFixed(3)} mm.`);
    }
    const half = option.sizeMm.map((size) => size / 2);
    const corner = (side: 1 | -1) =>
      [
        place.centreMm[0] + side * half[0]!,
        place.centreMm[1] + side * half[1]!,
        place.centreMm[2] + side * half[2]!,
      ] as const;
    boxes.push({ id: part.id, name: part.name, box: { minMm: corner(-1), maxMm: corner(1) }, fixed: false });
  }
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(0, i)) {
      if (a.fixed && b.fixed) continue;
      const { axisMm, straightMm } = gapOf(a.id, b.id);
      const apartMm = Math.max(...AXES.map((axis) => gapAlong(a.box, b.box, axis)));
      const short = Math.max(axisMm - apartMm, straightMm > 0 ? straightMm - straightGap(a.box, b.box) : 0);
      if (short > FORGIVEN_MM) faults.push(`${a.name} and ${b.name} are ${short.toFixed(3)} mm too close.`);
    }
  });
  return faults;
}

function leadFaults(problem: PlaceProblem, placed: readonly Placed[]): string[] {
  return problem.leads.flatMap((lead) => {
    const ends = endsOf(problem, lead, placed);
    // That an end has no place is told already.
    if (!ends) return [];
    const short = leadRunMm(lead, ...ends) - lead.lengthMm;
    return short > FORGIVEN_MM ? [`${lead.name} is ${short.toFixed(1)} mm short.`] : [];
  });
}

/** A lead's ends with everything placed; null where an end has no place. */
function endsOf(problem: PlaceProblem, lead: Lead, placed: readonly Placed[]): readonly [Vec3, Vec3] | null {
  const places = problem.parts.map(({ id, options }) => {
    const found = placed.find((place) => place.id === id);
    const option = options.findIndex((option) => option.id === found?.optionId);
    return found && option >= 0 ? { option, centreMm: found.centreMm } : null;
  });
  if ([lead.from, lead.to].some((end) => places[problem.parts.findIndex(({ id }) => id === end)] === null))
    return null;
  return endsAt(problem, lead, (part) => places[part]!);
}

function ballastFaults(problem: PlaceProblem, ballast: readonly BallastPlaced[]): string[] {
  return ballast.flatMap(({ spotId, massG }) => {
    const spot = problem.spots.find(({ id }) => id === spotId);
    if (!spot) return [`There is no ballast spot ${spotId}.`];
    const steps = massG / spot.stepG;
    const whole = Math.abs(steps - Math.round(steps)) < WHOLE_WITHIN;
    return whole && massG >= 0 && steps <= mostSteps(problem, spot) + WHOLE_WITHIN
      ? []
      : [`${spot.name} cannot take ${massG} g in steps of ${spot.stepG} g.`];
  });
}
