import { describe, expect, test } from 'vitest';
import { fuselageMomentMm3PerRad } from '../../../src/engine/wing/fuselage';
import { inducedVelocity } from '../../../src/engine/wing/influence';
import { unknownsOf } from '../../../src/engine/wing/latticeLevel';
import { latticeForces, solveLattice } from '../../../src/engine/wing/latticeSolution';
import { mainSurface } from '../../../src/engine/wing/mainSurface';
import { neutralPoint } from '../../../src/engine/wing/neutralPoint';
import { planform, stationToPctMac } from '../../../src/engine/wing/planform';
import {
  downwashSlope,
  textbookNeutralPoint,
  USUAL_DIFFERENCE_PCT_MAC,
} from '../../../src/engine/wing/textbook';
import type { LiftingSurface } from '../../../src/engine/wing/types';
import { evenly, flatPanel, latticeOf, levelGrids, rectangular, surfaceOf, wingFromChords } from './builders';

const wing = surfaceOf(
  [
    flatPanel({ spanMm: 400, rootChordMm: 240, tipChordMm: 220, sweepMm: 10, dihedralDeg: 3 }),
    flatPanel({
      spanMm: 350,
      rootChordMm: 220,
      tipChordMm: 150,
      sweepMm: 40,
      dihedralDeg: 6,
      tipTwistDeg: -2,
    }),
  ],
  { rootMm: [300, 0, 40], incidenceDeg: 1 },
);

function tailAt(rootMm: LiftingSurface['rootMm'], spanMm = 280): LiftingSurface {
  return surfaceOf([flatPanel({ spanMm, rootChordMm: 150, tipChordMm: 110, sweepMm: 30 })], {
    id: 'tail',
    rootMm,
  });
}

const tail = tailAt([1000, 0, 20]);

function solve(surfaces: readonly LiftingSurface[], detail: 'coarse' | 'fine' = 'fine') {
  const found = neutralPoint(surfaces, { detail });
  if (found === null) throw new Error('expected a neutral point');
  return found;
}

describe('neutral point', () => {
  test('has settled to less than 0.1 % MAC, and says what it used', () => {
    const fine = solve([wing, tail]);
    expect(fine.converged).toBe(true);
    expect(fine.refinedBy).toBeLessThan(0.1);
    expect(fine.unknowns).toBeLessThanOrEqual(450);
    // a finer lattice, outside the function
    const grids = levelGrids([wing, tail], fine.rows + 2);
    const finer = latticeForces(solveLattice(latticeOf([wing, tail], grids)), planform(wing));
    expect(Math.abs(stationToPctMac(fine.wing, finer.neutralStationMm) - fine.pctMac)).toBeLessThan(0.15);
  });

  test('the coarse lattice has at most 120 unknowns and lies within 1 % MAC of the fine one', () => {
    for (const surfaces of [
      [wing, tail],
      [rectangular(3)],
      [tailAt([100, 0, 0]), rectangular(8, { rootMm: [700, 0, 0] })],
    ]) {
      const coarse = solve(surfaces, 'coarse');
      expect(coarse.unknowns).toBeLessThanOrEqual(120);
      expect(Math.abs(coarse.pctMac - solve(surfaces).pctMac)).toBeLessThan(1);
    }
  });

  test('a cap that stops refinement is reported as not converged', () => {
    const found = neutralPoint([rectangular(2)], { detail: 'fine', maxUnknowns: 60 });
    expect(found?.unknowns).toBeLessThanOrEqual(60);
    expect(found?.refinedBy).toBeGreaterThan(0.1);
    expect(found?.converged).toBe(false);
    expect(() => neutralPoint([wing], { detail: 'fine', maxUnknowns: Number.POSITIVE_INFINITY })).toThrow(
      /cap/,
    );
  });

  test('a tail moves it aft, a foreplane forward, a fin in the plane of symmetry not at all', () => {
    const alone = solve([wing]);
    expect(solve([wing, tail]).pctMac).toBeGreaterThan(alone.pctMac + 10);
    expect(solve([wing, tailAt([-300, 0, 40])]).pctMac).toBeLessThan(alone.pctMac - 10);
    const fin = surfaceOf([flatPanel({ spanMm: 200 })], {
      id: 'fin',
      rootMm: [1000, 0, 40],
      cantDeg: 90,
      sides: 'centre',
    });
    expect(solve([fin, wing])).toEqual(alone);
  });

  test('the largest paired surface is the wing, wherever it stands in the list', () => {
    expect(mainSurface([tail, wing])?.id).toBe('wing');
    expect(solve([tail, wing]).pctMac).toBeCloseTo(solve([wing, tail]).pctMac, 8);
  });

  test('without a paired surface there is none', () => {
    expect(neutralPoint([], { detail: 'fine' })).toBeNull();
    const fin = surfaceOf([flatPanel({})], { cantDeg: 90, sides: 'centre' });
    expect(neutralPoint([fin], { detail: 'fine' })).toBeNull();
  });

  test('the result is plain data', () => {
    const found = solve([wing, tail], 'coarse');
    expect(structuredClone(found)).toEqual(found);
  });

  test('lattice and textbook formula agree as well as is usual for a plain wing and tail', () => {
    const quick = textbookNeutralPoint([wing, tail]);
    expect(quick?.method).toBe('wing and tail');
    expect(Math.abs((quick?.pctMac ?? 0) - solve([wing, tail]).pctMac)).toBeLessThan(
      USUAL_DIFFERENCE_PCT_MAC,
    );
  });
});

describe('one surface in the wake of another', () => {
  const level = (surfaces: readonly LiftingSurface[]) => {
    const forces = latticeForces(
      solveLattice(latticeOf(surfaces, levelGrids(surfaces, 4))),
      planform(surfaces[0] as LiftingSurface),
    );
    return stationToPctMac(planform(surfaces[0] as LiftingSurface), forces.neutralStationMm);
  };
  const flat = surfaceOf([flatPanel({ spanMm: 750, rootChordMm: 240, tipChordMm: 150, sweepMm: 50 })]);

  test('dragging a tail up through the wake is continuous, and mirrored above and below', () => {
    const heights = Array.from({ length: 81 }, (_, k) => (k - 40) * 2);
    const points = heights.map((z) => level([flat, tailAt([700, 0, z])]));
    points.forEach((point, k) => {
      expect(point).toBeCloseTo(points[points.length - 1 - k] ?? Number.NaN, 8);
      const next = points[k + 1];
      // 2 mm of height: the whole way out of the wake over 80 mm is worth about 2 % MAC
      if (next !== undefined) expect(Math.abs(next - point)).toBeLessThan(0.1);
    });
  });

  test('in the wake plane it does not matter how strips line up', () => {
    // Growing the tail by 1 mm moves its strips across the wing's trailing legs; second differences are noise.
    const points = Array.from({ length: 41 }, (_, k) => level([flat, tailAt([700, 0, 0], 240 + k)]));
    for (let k = 2; k < points.length; k++) {
      const bend = (points[k] ?? 0) - 2 * (points[k - 1] ?? 0) + (points[k - 2] ?? 0);
      expect(Math.abs(bend)).toBeLessThan(0.15);
    }
  });

  test('a tail dragged along through the wing itself stays finite and moves smoothly', () => {
    const points = Array.from({ length: 60 }, (_, k) => level([flat, tailAt([k * 10, 0, 0])]));
    points.forEach((point, k) => {
      expect(Number.isFinite(point)).toBe(true);
      if (k > 0) expect(Math.abs(point - (points[k - 1] ?? 0))).toBeLessThan(3);
    });
  });

  test('far behind an elliptic wing the downwash is 2CL/(π AR) (Prandtl), in the wake and beside it', () => {
    const ellipse = wingFromChords(2000, (t) => 200 * Math.sqrt(Math.max(0, 1 - t * t)), evenly(60), 0.25);
    const lattice = latticeOf([ellipse], [{ rows: 2, strips: ellipse.panels.length, tip: 'inset' }]);
    const circulations = solveLattice(lattice);
    const plan = planform(ellipse);
    const expected = downwashSlope(latticeForces(circulations, plan).clAlphaPerRad, plan.aspectRatio);
    for (const y of [13, 405, 1010, 1395]) {
      for (const z of [0, 5]) {
        const [, , up] = inducedVelocity(lattice, circulations.perRadianMm, [1e6, y, z]);
        expect(Math.abs(-up / expected - 1)).toBeLessThan(0.03);
      }
    }
  });

  test('a small tail far behind adds its slope × area in that downwash', () => {
    const ellipse = wingFromChords(2000, (t) => 200 * Math.sqrt(Math.max(0, 1 - t * t)), evenly(30), 0.25);
    const small = surfaceOf([flatPanel({ spanMm: 100, rootChordMm: 40, tipChordMm: 40 })], {
      id: 'tail',
      rootMm: [20000, 0, 0],
    });
    const slopeOf = (surfaces: readonly LiftingSurface[], base = surfaces[0] as LiftingSurface) =>
      latticeForces(
        solveLattice(
          latticeOf(
            surfaces,
            surfaces.map((s) => ({
              rows: 2,
              strips: s.panels.length === 1 ? 8 : s.panels.length,
              tip: 'inset',
            })),
          ),
        ),
        planform(base),
      ).clAlphaPerRad * planform(base).areaMm2;
    const [wingOnly, tailOnly] = [slopeOf([ellipse]), slopeOf([small])];
    const plan = planform(ellipse);
    const downwash = downwashSlope(wingOnly / plan.areaMm2, plan.aspectRatio);
    expect((slopeOf([ellipse, small]) - wingOnly) / tailOnly).toBeCloseTo(1 - downwash, 2);
  });
});

describe('levels', () => {
  test('each level has more unknowns than the one before', () => {
    const counts = [1, 2, 3, 4, 6, 9].map((k) => unknownsOf(levelGrids([wing, tail], k)));
    for (let k = 1; k < counts.length; k++) expect(counts[k]).toBeGreaterThan(counts[k - 1] ?? 0);
  });
});

describe('with a fuselage', () => {
  const fuselage = [
    { stationMm: 0, widthMm: 40 },
    { stationMm: 150, widthMm: 110 },
    { stationMm: 500, widthMm: 120 },
    { stationMm: 1150, widthMm: 30 },
  ];

  test('the point moves forward by Cmα/CLα, and only when it is given', () => {
    const without = solve([wing, tail]);
    const found = neutralPoint([wing, tail], { detail: 'fine', fuselage });
    expect(without.fuselageShiftPctMac).toBe(0);
    expect(found?.surfacesStationMm).toBe(without.stationMm);
    expect(found?.fuselageShiftPctMac).toBeLessThan(-0.5);
    expect(found?.pctMac).toBeCloseTo(without.pctMac + (found?.fuselageShiftPctMac ?? 0), 9);
  });

  test('a nose ahead of the wing counts more than in free flow, by the upwash', () => {
    const nose = fuselage.slice(0, 2);
    const found = neutralPoint([wing], { detail: 'fine', fuselage: nose });
    const plan = planform(wing);
    const cmAlpha = fuselageMomentMm3PerRad(nose) / (plan.areaMm2 * plan.macMm);
    const inFreeFlow = (-100 * cmAlpha) / (found?.clAlphaPerRad ?? 1);
    // From 150 mm ahead of a 240 mm chord on, a plane flow would add √(1 + c/x) − 1: 0.3 to 0.6 along this nose.
    expect(found?.fuselageShiftPctMac).toBeLessThan(1.1 * inFreeFlow);
    expect(found?.fuselageShiftPctMac).toBeGreaterThan(1.6 * inFreeFlow);
  });

  test('a boom behind the wing counts, but less than without downwash', () => {
    const trailingEdge = wing.rootMm[0] + 240;
    const boom = [trailingEdge, 1150].map((stationMm) => ({ stationMm, widthMm: 60, waterlineMm: 40 }));
    const found = neutralPoint([wing], { detail: 'fine', fuselage: boom });
    // flow from 0 at the trailing edge to 1 at the rear end: half the boom's moment in free flow
    const plan = planform(wing);
    const cmAlpha = fuselageMomentMm3PerRad(boom) / 2 / (plan.areaMm2 * plan.macMm);
    const withoutDownwash = (-100 * cmAlpha) / (found?.clAlphaPerRad ?? 1);
    expect(found?.fuselageShiftPctMac).toBeLessThan(0.3 * withoutDownwash);
    expect(found?.fuselageShiftPctMac).toBeGreaterThan(0.9 * withoutDownwash);
  });
});
