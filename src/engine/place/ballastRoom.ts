import { stepsDown } from '../geometry/wholeSteps';
import { AXES, gapAlong, gapBetween } from './regions';
import { SAME_MM, WHOLE_WITHIN } from './tolerances';
import type { BallastSpot, PlaceBox, PlaceProblem } from './types';

/** The box of so much ballast at a spot; null for a spot whose ballast takes no room, and for none. */
export function ballastBox({ body, positionMm }: BallastSpot, massG: number): PlaceBox | null {
  if (!body || !(massG > 0)) return null;
  const half = [
    massG / (body.densityGPerMm3 * body.widthMm * body.heightMm) / 2,
    body.widthMm / 2,
    body.heightMm / 2,
  ];
  return {
    minMm: [positionMm[0] - half[0]!, positionMm[1] - half[1]!, positionMm[2] - half[2]!],
    maxMm: [positionMm[0] + half[0]!, positionMm[1] + half[1]!, positionMm[2] + half[2]!],
  };
}

/** What a stack grows for each step at either end, mm. */
export const growthMm = ({ body, stepG }: BallastSpot): number =>
  body ? stepG / (body.densityGPerMm3 * body.widthMm * body.heightMm) / 2 : 0;

/** What a box leaves of the length of a stack either way from its spot, mm; infinite where it is beside it. */
export function halfBeside(spot: BallastSpot, box: PlaceBox, gapMm: number): number {
  const sliver = ballastBox(spot, spot.stepG * 1e-9);
  if (!sliver) return Number.POSITIVE_INFINITY;
  const beside = AXES.slice(1).some((axis) => gapAlong(sliver, box, axis) >= gapMm - SAME_MM);
  if (beside) return Number.POSITIVE_INFINITY;
  const ahead = spot.positionMm[0] - box.maxMm[0] - gapMm;
  const behind = box.minMm[0] - spot.positionMm[0] - gapMm;
  return Math.max(ahead, behind, 0);
}

/** Whole steps of a stack that is no longer than this either way. */
export const stepsWithin = (spot: BallastSpot, halfMm: number): number =>
  spot.body ? Math.floor(halfMm / growthMm(spot) + WHOLE_WITHIN) : Number.POSITIVE_INFINITY;

/** The steps that a spot takes: what is allowed, what its room holds, and what obstacles and forbidden zones leave of that. */
export function mostSteps(problem: PlaceProblem, spot: BallastSpot): number {
  const allowed = stepsDown(spot.mostG / spot.stepG);
  if (!spot.body) return allowed;
  const gapOf = gapBetween(problem);
  const halves = [
    ...problem.obstacles.map((box) => halfBeside(spot, box, gapOf(spot.id, box.id).axisMm)),
    ...(problem.noBallast ?? []).map((box) => halfBeside(spot, box, 0)),
  ];
  return Math.min(allowed, stepsWithin(spot, Math.min(spot.body.lengthMm / 2, ...halves)));
}
