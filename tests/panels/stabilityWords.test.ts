import { describe, expect, test } from 'vitest';
import type { StabilityEstimate } from '../../src/model/stability/stability';
import { ofMac, panelWords, shiftWords } from '../../src/panels/stability/words';

const estimate: StabilityEstimate = {
  neutralPointMm: 550,
  macMm: 200,
  lemacMm: 500,
  macButtlineMm: 300,
  pctMac: 25,
  clAlphaPerRad: 5,
  fuselageShiftMm: 0,
  refinedBy: -0.064,
  unknowns: 424,
  converged: true,
  detail: 'fine',
  textbookMm: null,
  textbookDiffers: false,
  strips: [],
  neutralPointSigmaMm: 4,
  doubts: [],
  notes: [],
};

describe('how fine the lattice is', () => {
  test('says how many panels and what the last refinement moved', () => {
    expect(panelWords(estimate)).toBe('424 panels; the last refinement moved it 0.06 % MAC.');
  });
  test('never passes over a coarse lattice or one that has not settled', () => {
    expect(panelWords({ ...estimate, detail: 'coarse', refinedBy: null })).toContain('coarse');
    expect(panelWords({ ...estimate, converged: false })).toContain('not settled');
    expect(panelWords({ ...estimate, refinedBy: null })).toContain('not refined');
  });
});

test('the fuselage moves it forward or aft, by so much', () => {
  const length = (mm: number) => `${mm} mm`;
  expect(shiftWords(-12, length)).toBe('It moves the neutral point 12 mm forward.');
  expect(shiftWords(3, length)).toBe('It moves the neutral point 3 mm aft.');
  expect(shiftWords(0, length)).toBe('It hardly moves the neutral point.');
});

test('a margin below 0 has a true minus sign', () => {
  expect(ofMac(-3.26)).toBe('−3.3 % MAC');
});
