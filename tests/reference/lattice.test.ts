import { describe, expect, test } from 'vitest';
import type { Grid } from '../../src/engine/wing/lattice';
import { latticeForces, solveLattice } from '../../src/engine/wing/latticeSolution';
import { neutralPoint } from '../../src/engine/wing/neutralPoint';
import { planform } from '../../src/engine/wing/planform';
import { drelaNeutralPoint, helmboldSlope, nelsonNeutralPoint } from '../../src/engine/wing/textbook';
import type { LiftingSurface } from '../../src/engine/wing/types';
import {
  evenly,
  flatPanel,
  latticeOf,
  rectangular,
  surfaceOf,
  wingFromChords,
} from '../engine/wing/builders';

function solved(wing: LiftingSurface, grid: Grid) {
  const circulations = solveLattice(latticeOf([wing], [grid]));
  return { ...circulations, ...latticeForces(circulations, planform(wing)) };
}

/** Aspect ratio 5, untapered, all lines swept by 45°: span b = 1000 mm, chord 0.2 b. */
const SWEPT = surfaceOf([flatPanel({ spanMm: 500, rootChordMm: 200, tipChordMm: 200, sweepMm: 500 })]);

// Bertin & Smith, Aerodynamics for Engineers, example 7.2: geometry seen in a published worksheet, answers from memory.
describe('swept wing, one row of four panels a side (Bertin & Smith, example 7.2)', () => {
  const grid: Grid = { rows: 1, strips: 4, tip: 'flush' };
  const wing = solved(SWEPT, grid);

  test('panel 1: control point (0.2125 b, 0.0625 b), bound leg from (0.05 b, 0) to (0.175 b, 0.125 b)', () => {
    const { controls, nodes } = wing.lattice;
    const inSpans = (values: Float64Array, from: number) =>
      [...values.slice(from, from + 2)].map((mm) => mm / 1000);
    expect(inSpans(controls, 0)).toEqual([0.2125, 0.0625]);
    expect(inSpans(nodes, 0)).toEqual([0.05, 0]);
    expect(inSpans(nodes, 3)).toEqual([0.175, 0.125]);
  });

  test('Γ/(4π b U α) = 0.0273, 0.0287, 0.0286, 0.0250', () => {
    const printed = [0.0273, 0.0287, 0.0286, 0.025];
    expect(wing.perRadianMm).toHaveLength(4);
    printed.forEach((value, k) => {
      expect(Math.abs((wing.perRadianMm[k] ?? Number.NaN) / (4 * Math.PI * 1000) - value)).toBeLessThan(
        0.5e-4,
      );
    });
  });

  test('CL = 1.096 π sin α, 3.443 per rad', () => {
    expect(Math.abs(wing.clAlphaPerRad / Math.PI - 1.096)).toBeLessThan(0.5e-3);
    // The print is 1.096 π rounded; the exact slope differs from it by the rounding of 1.096.
    expect(Math.abs(wing.clAlphaPerRad - 3.443)).toBeLessThan(0.5e-3 * Math.PI);
  });

  test('a finer lattice does not stay there: 3.185 within 0.003 (derived with an independent lattice)', () => {
    const fine = solved(SWEPT, { rows: 8, strips: 48, tip: 'inset' });
    expect(Math.abs(fine.clAlphaPerRad - 3.185)).toBeLessThan(0.003);
  });
});

describe('flat rectangular wings', () => {
  // Derived with an independent lattice, 16 × 60 with tip inset; half of that each way is within 0.1 % of it.
  test.each([
    [2, 2.4742, 0.2096],
    [4, 3.6118, 0.232],
    [6, 4.2143, 0.2389],
    [8, 4.5857, 0.242],
  ])('aspect ratio %i: slope %f, aerodynamic centre at %f chords', (aspectRatio, slope, centre) => {
    const wing = solved(rectangular(aspectRatio), { rows: 8, strips: 30, tip: 'inset' });
    expect(Math.abs(wing.clAlphaPerRad / slope - 1)).toBeLessThan(0.001);
    expect(Math.abs(wing.neutralStationMm / 200 - centre)).toBeLessThan(0.001);
  });

  test('lifting surface lies below lifting line, and within 8 % of Helmbold from aspect ratio 6 up', () => {
    for (const aspectRatio of [6, 8, 10]) {
      const slope = solved(rectangular(aspectRatio), { rows: 4, strips: 24, tip: 'inset' }).clAlphaPerRad;
      expect(slope).toBeLessThan((2 * Math.PI) / (1 + 2 / aspectRatio));
      expect(Math.abs(slope / helmboldSlope(aspectRatio) - 1)).toBeLessThan(0.08);
    }
  });
});

test('flat circular wing: 1.7900 per rad (Jordan 1971, from memory)', () => {
  const radius = 500;
  const wing = wingFromChords(radius, (t) => 2 * radius * Math.sqrt(Math.max(0, 1 - t * t)), evenly(40));
  const { clAlphaPerRad } = solved(wing, { rows: 6, strips: wing.panels.length, tip: 'inset' });
  // The outline is a polygon of 80 corners a side short of the circle: lift on the circle's own area, within 0.3 %.
  const onCircle = (clAlphaPerRad * planform(wing).areaMm2) / (Math.PI * radius * radius);
  expect(Math.abs(onCircle / 1.79 - 1)).toBeLessThan(0.003);
});

describe('what the bench shows, carried on to the limit of two lattices', () => {
  const shown = (wing: LiftingSurface, detail: 'coarse' | 'fine') => {
    const found = neutralPoint([wing], { detail });
    if (!found) throw new Error('expected a neutral point');
    return found;
  };

  // The values of the independent lattice, 16 × 60 with tip inset, are themselves a few 0.01 % from its limit.
  test.each([
    [2, 2.4742, 0.2096],
    [4, 3.6118, 0.232],
    [6, 4.2143, 0.2389],
    [8, 4.5857, 0.242],
  ])(
    'rectangle of aspect ratio %i: slope %f, aerodynamic centre at %f chords',
    (aspectRatio, slope, centre) => {
      const { clAlphaPerRad, stationMm } = shown(rectangular(aspectRatio), 'fine');
      expect(Math.abs(clAlphaPerRad / slope - 1)).toBeLessThan(0.001);
      // Without sweep the error falls faster than it is carried on: what is over errs forward, the safe side.
      expect(stationMm / 200 - centre).toBeLessThan(0.0005);
      expect(stationMm / 200 - centre).toBeGreaterThan(-0.0015);
      // while it is dragged: the mark must not jump by more than 1 % of the MAC at the end of a drag
      expect(Math.abs(shown(rectangular(aspectRatio), 'coarse').stationMm / 200 - centre)).toBeLessThan(0.01);
    },
  );

  test('all lines swept by 45°: 3.185 within 0.003, fine or coarse within 0.5 %', () => {
    expect(Math.abs(shown(SWEPT, 'fine').clAlphaPerRad - 3.185)).toBeLessThan(0.003);
    expect(Math.abs(shown(SWEPT, 'coarse').clAlphaPerRad / 3.185 - 1)).toBeLessThan(0.005);
  });

  test('a circle, however many panels it is entered with: 1.7900 (Jordan 1971, from memory)', () => {
    for (const panels of [24, 40]) {
      const outline = (t: number) => 1000 * Math.sqrt(Math.max(0, 1 - t * t));
      const found = shown(wingFromChords(500, outline, evenly(panels)), 'fine');
      const onCircle = (found.clAlphaPerRad * found.wing.areaMm2) / (Math.PI * 500 * 500);
      expect(Math.abs(onCircle / 1.79 - 1)).toBeLessThan(0.005);
    }
  });
});

describe('quick formulas', () => {
  test.each([
    [4, 3.8832],
    [6, 4.5287],
    [8, 4.9058],
    [10, 5.151],
  ])('Helmbold slope at aspect ratio %i is %f', (aspectRatio, slope) => {
    expect(Math.abs(helmboldSlope(aspectRatio) - slope)).toBeLessThan(5e-5);
  });

  test('NAVION, Nelson example 2.2 (partly from memory): 0.55 of the chord. A check of the algebra only', () => {
    const share = nelsonNeutralPoint({
      aerodynamicCentre: 0.25,
      fuselageCmAlpha: 0.12,
      wingSlope: 4.3,
      tailSlope: 3.91,
      tailVolume: 0.66,
      tailEfficiency: 1,
      downwash: 0.45,
    });
    expect(Math.abs(share - 0.55)).toBeLessThan(0.005);
  });

  test('Drela, Basic Aircraft Design Rules (from memory): AR 8, AR_h 4, V_h 0.45 gives 0.475', () => {
    expect(Math.abs(drelaNeutralPoint(8, 4, 0.45) - 0.475)).toBeLessThan(5e-4);
  });
});
