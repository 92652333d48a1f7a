import { AXES, gapAlong, gapBetween, NO_LENGTH_MM } from './regions';
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

/** The steps that a spot takes: what is allowed, what its room holds, and what obstacles and forbidden zones leave of that. */
export function mostSteps(problem: PlaceProblem, spot: BallastSpot): number {
  const allowed = Math.floor(spot.mostG / spot.stepG + 1e-9);
  const { body, positionMm } = spot;
  if (!body) return allowed;
  const grows = growthMm(spot);
  const gapOf = gapBetween(problem);
  let halfMm = body.lengthMm / 2;
  const sliver = ballastBox(spot, spot.stepG * 1e-9);
  if (!sliver) return 0;
  const inTheWay = [
    ...problem.obstacles.map((box) => ({ box, gapMm: gapOf(spot.id, box.id).axisMm })),
    ...(problem.noBallast ?? []).map((box) => ({ box, gapMm: 0 })),
  ];
  for (const { box, gapMm } of inTheWay) {
    const beside = AXES.slice(1).some((axis) => gapAlong(sliver, box, axis) >= gapMm - NO_LENGTH_MM);
    if (beside) continue;
    const ahead = positionMm[0] - box.maxMm[0] - gapMm;
    const behind = box.minMm[0] - positionMm[0] - gapMm;
    halfMm = Math.min(halfMm, Math.max(ahead, behind, 0));
  }
  return Math.min(allowed, Math.floor(halfMm / grows + 1e-6));
}
