import { carryThrough } from '../../engine/wing/carryThrough';
import { checkSurface } from '../../engine/wing/checkSurface';
import type { FuselageStation } from '../../engine/wing/fuselage';
import { neutralPoint } from '../../engine/wing/neutralPoint';
import { planform, stationToPctMac } from '../../engine/wing/planform';
import { textbookNeutralPoint, USUAL_DIFFERENCE_PCT_MAC } from '../../engine/wing/textbook';
import type { LiftingSurface } from '../../engine/wing/types';
import type { StabilityAnswer, StabilityDetail, StabilityInput } from './stability';

/** Roots may stand this much farther out than the hull is half wide and still end at its side: fillets. */
const FILLET = 1.25;

/**
 * Estimates the neutral point and what goes with it. Takes tens of milliseconds when fine, so it is run in
 * a worker or by a command, never by the page. Null when nothing lifts; impossible geometry gives a sentence.
 */
export function estimateStability(input: StabilityInput, detail: StabilityDetail): StabilityAnswer {
  try {
    return solve(input, detail);
  } catch (error) {
    // The engine refuses geometry with a plain Error; any other kind is a fault of its own.
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    return { fault: `The neutral point cannot be estimated: ${error.message}.` };
  }
}

function solve(input: StabilityInput, detail: StabilityDetail): StabilityAnswer {
  for (const surface of input.surfaces) checkSurface(surface);
  const surfaces = input.surfaces.map((surface) => carryThrough(surface, besideHullMm(surface, input.hull)));
  const found = neutralPoint(surfaces, {
    detail,
    ...(input.hull && input.countFuselage ? { fuselage: input.hull } : {}),
  });
  if (!found) return null;
  const named = input.surfaces.find(({ id }) => id === (input.macSurfaceId ?? found.wingId));
  const { macMm, lemacMm, macButtlineMm } = named ? planform(named) : found.wing;
  const textbook = textbookNeutralPoint(surfaces);
  const partMm = textbook ? Math.abs(textbook.stationMm - found.surfacesStationMm) : 0;
  return {
    neutralPointMm: found.stationMm,
    macMm,
    lemacMm,
    macButtlineMm,
    pctMac: stationToPctMac({ macMm, lemacMm }, found.stationMm),
    clAlphaPerRad: found.clAlphaPerRad,
    fuselageShiftMm: found.stationMm - found.surfacesStationMm,
    refinedBy: found.refinedBy,
    unknowns: found.unknowns,
    converged: found.converged,
    detail,
    textbookMm: textbook?.stationMm ?? null,
    textbookDiffers: partMm > (USUAL_DIFFERENCE_PCT_MAC / 100) * found.wing.macMm,
    strips: found.strips,
    leavesOut: leavesOut(input),
  };
}

/** How far out a surface's root may lie and still end at the hull's side, mm; 0 where there is no hull. */
function besideHullMm(surface: LiftingSurface, hull: readonly FuselageStation[] | null): number {
  const fromMm = surface.rootMm[0];
  const toMm = fromMm + (surface.panels[0]?.rootChordMm ?? 0);
  let widestMm = 0;
  hull?.forEach((rear, index) => {
    const front = hull[index - 1];
    if (!front || rear.stationMm < fromMm || front.stationMm > toMm) return;
    for (const stationMm of [Math.max(fromMm, front.stationMm), Math.min(toMm, rear.stationMm)]) {
      const lengthMm = rear.stationMm - front.stationMm;
      const share = lengthMm > 0 ? (stationMm - front.stationMm) / lengthMm : 1;
      widestMm = Math.max(widestMm, front.widthMm + (rear.widthMm - front.widthMm) * share);
    }
  });
  return (widestMm / 2) * FILLET;
}

function leavesOut({ hull, countFuselage, otherHulls }: StabilityInput): readonly string[] {
  const sentences = [
    'What a running propeller or jet does to the flow.',
    'Surfaces and pushrods that give under load.',
    'Low Reynolds numbers: bubbles and stalls at model speeds.',
  ];
  if (hull && !countFuselage) sentences.push('The fuselage, which is switched off here.');
  if (otherHulls > 0) sentences.push('Pods, nacelles and hulls besides the main one.');
  return sentences;
}
