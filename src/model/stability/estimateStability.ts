import { checkSurface } from '../../engine/wing/checkSurface';
import { type NeutralPoint, neutralPoint } from '../../engine/wing/neutralPoint';
import { doubtSigmaMm, neutralPointDoubts } from '../../engine/wing/neutralPointDoubt';
import { stationToPctMac } from '../../engine/wing/planform';
import { textbookNeutralPoint, USUAL_DIFFERENCE_PCT_MAC } from '../../engine/wing/textbook';
import { geometryNotes } from './geometryNotes';
import type { StabilityAnswer, StabilityDetail, StabilityInput } from './stability';

/**
 * Estimates the neutral point and what goes with it. Takes some hundred milliseconds when fine, so it is run
 * in a worker or by a command, never by the page. Null when nothing lifts; impossible geometry gives a sentence.
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
  const { surfaces, carries, hull, countFuselage } = input;
  for (const surface of surfaces) checkSurface(surface);
  const found = neutralPoint(surfaces, { detail, carries, ...(hull ? { fuselage: hull } : {}) });
  if (!found) return null;
  const { macMm, lemacMm, macButtlineMm } = input.mac ?? found.wing;
  const neutralPointMm = countFuselage ? found.stationMm : found.surfacesStationMm;
  const doubts = doubtsOf(input, found, macMm);
  const textbook = textbookNeutralPoint(surfaces, carries);
  const partMm = textbook ? Math.abs(textbook.stationMm - found.surfacesStationMm) : 0;
  return {
    neutralPointMm,
    neutralPointSigmaMm: doubtSigmaMm(doubts),
    doubts,
    macMm,
    lemacMm,
    macButtlineMm,
    pctMac: stationToPctMac({ macMm, lemacMm }, neutralPointMm),
    clAlphaPerRad: found.clAlphaPerRad,
    fuselageShiftMm: neutralPointMm - found.surfacesStationMm,
    refinedBy: found.refinedBy,
    unknowns: found.unknowns,
    converged: found.converged,
    detail,
    textbookMm: textbook?.stationMm ?? null,
    textbookDiffers: partMm > (USUAL_DIFFERENCE_PCT_MAC / 100) * macMm,
    strips: found.strips,
    notes: geometryNotes(surfaces, found.seams),
  };
}

function doubtsOf({ countFuselage, otherHulls, power }: StabilityInput, found: NeutralPoint, macMm: number) {
  return neutralPointDoubts({
    macMm,
    refinedByMm: found.refinedBy && (found.refinedBy / 100) * found.wing.macMm,
    seamsMm: found.seamsSigmaMm,
    fuselageShiftMm: found.stationMm - found.surfacesStationMm,
    fuselageCounted: countFuselage,
    otherHulls,
    power,
    tailPartMm: found.tailPartMm,
  });
}
