import type { StabilityEstimate } from '../../../src/model/stability/stability';

/** An estimate with the neutral point where a test wants it, on a MAC of 200 mm from station 500. */
export const estimateAt = (neutralPointMm: number): StabilityEstimate => ({
  neutralPointMm,
  macMm: 200,
  lemacMm: 500,
  macButtlineMm: 300,
  pctMac: (neutralPointMm - 500) / 2,
  clAlphaPerRad: 5,
  fuselageShiftMm: 0,
  refinedBy: 0.05,
  unknowns: 200,
  converged: true,
  detail: 'fine',
  textbookMm: null,
  textbookDiffers: false,
  strips: [],
  neutralPointSigmaMm: 0,
  doubts: [],
  notes: [],
});
