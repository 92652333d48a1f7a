import { expect, test } from 'vitest';
import { latticeForces, solveLattice } from '../../../src/engine/wing/latticeSolution';
import {
  type DoubtInput,
  doubtSigmaMm,
  neutralPointDoubts,
} from '../../../src/engine/wing/neutralPointDoubt';
import { planform } from '../../../src/engine/wing/planform';
import { tailPartMm } from '../../../src/engine/wing/tailPart';
import { flatPanel, latticeOf, levelGrids, surfaceOf } from './builders';

const input: DoubtInput = {
  macMm: 250,
  refinedByMm: 0.2,
  seamsMm: 0,
  fuselageShiftMm: -6,
  fuselageCounted: true,
  otherHulls: 0,
  power: 'propeller',
  tailPartMm: 60,
};
const causes = (given: Partial<DoubtInput>) =>
  neutralPointDoubts({ ...input, ...given }).map(({ cause }) => cause);

test('the whole ± is the root of the sum of squares, and no cause is above it', () => {
  const doubts = neutralPointDoubts(input);
  const whole = doubtSigmaMm(doubts);
  expect(whole ** 2).toBeCloseTo(
    doubts.reduce((sum, { sigmaMm }) => sum + sigmaMm ** 2, 0),
    9,
  );
  for (const { sigmaMm } of doubts) {
    expect(sigmaMm).toBeGreaterThan(0);
    expect(sigmaMm).toBeLessThanOrEqual(whole);
  }
});

test('each thing that is there or not has its line or not', () => {
  expect(causes({})).toContain('propeller');
  expect(causes({ power: 'turbine' })).toContain('intake');
  expect(causes({ power: 'none' })).not.toContain('propeller');
  expect(causes({ otherHulls: 2 })).toContain('otherHulls');
  expect(causes({ tailPartMm: 0 })).not.toContain('tailEfficiency');
  expect(causes({ seamsMm: 1 })).toContain('seams');
  expect(causes({ refinedByMm: null })).not.toContain('refinement');
});

test('a fuselage that is not counted weighs more than the doubt in one that is, and says which way', () => {
  const counted = neutralPointDoubts(input).find(({ cause }) => cause === 'fuselage');
  const missing = neutralPointDoubts({ ...input, fuselageCounted: false }).find(
    ({ cause }) => cause === 'fuselageNotCounted',
  );
  expect(counted?.moves).toBe('either');
  expect(missing?.moves).toBe('forward');
  expect(missing?.sigmaMm).toBeGreaterThan(6);
  expect(counted?.sigmaMm).toBeLessThan(6);
});

// The shares are common practice without a source, on the large side; here by hand, for a MAC of 250 mm.
test('each share is of what it says', () => {
  const doubtOf = (cause: string, given: Partial<DoubtInput> = {}) =>
    neutralPointDoubts({ ...input, ...given }).find((doubt) => doubt.cause === cause);
  expect(doubtOf('method')).toMatchObject({ sigmaMm: 2.5, moves: 'either' });
  expect(doubtOf('lowReynolds')).toMatchObject({ sigmaMm: 1.25, moves: 'either' });
  expect(doubtOf('refinement', { refinedByMm: -0.3 })).toMatchObject({ sigmaMm: 0.3, basis: 'computed' });
  expect(doubtOf('seams', { seamsMm: 0.7 })).toMatchObject({ sigmaMm: 0.7, basis: 'computed' });
  expect(doubtOf('otherHulls', { otherHulls: 3 })).toMatchObject({ sigmaMm: 3.75, moves: 'forward' });
  expect(doubtOf('propeller')).toMatchObject({ sigmaMm: 5, moves: 'either' });
  expect(doubtOf('intake', { power: 'turbine' })).toMatchObject({ sigmaMm: 2.5, moves: 'forward' });
  // The airspeed's pressure at a tail is 0.85 to 1 of the whole: half of the difference, of 60 mm.
  expect(doubtOf('tailEfficiency')).toMatchObject({ sigmaMm: 4.5, moves: 'forward' });
  expect(doubtOf('flexibility')).toMatchObject({ sigmaMm: 0.04 * 60 + 0.005 * 250, moves: 'forward' });
  // A method that parts from the published curve by 0.4 of the shift; not counted, the shift itself is missing too.
  expect(doubtOf('fuselage')).toMatchObject({ sigmaMm: 0.4 * 6, basis: 'published comparison' });
  expect(doubtOf('fuselageNotCounted', { fuselageCounted: false })?.sigmaMm).toBeCloseTo(1.4 * 6, 12);
  expect(doubtOf('fuselageNotCounted', { fuselageCounted: false, fuselageShiftMm: 6 })).toMatchObject({
    moves: 'aft',
  });
});

test('what the surfaces behind hold the point aft by: the shares of all chains add up to the point', () => {
  const wing = surfaceOf([flatPanel({ spanMm: 600, sweepMm: 50 })], { rootMm: [300, 0, 0] });
  const tail = surfaceOf([flatPanel({ spanMm: 250, rootChordMm: 125, tipChordMm: 100 })], {
    id: 'tail',
    rootMm: [900, 0, 30],
  });
  const surfaces = [wing, tail];
  const circulations = solveLattice(latticeOf(surfaces, levelGrids(surfaces, 2)));
  const { neutralStationMm } = latticeForces(circulations, planform(wing));
  const part = (main: number, stationMm: number) => tailPartMm(circulations, main, stationMm);
  // About a station ahead of all: each chain's share of the lift times its arm, so together the point's own arm.
  expect(part(0, 100) + part(1, 100)).toBeCloseTo(neutralStationMm - 100, 6);
  // Moved back by 100 mm each loses its share of the lift of it; the shares make up the whole.
  expect(part(0, 100) - part(0, 200) + (part(1, 100) - part(1, 200))).toBeCloseTo(100, 6);
  // About the point itself the wing, ahead of it, holds nothing aft.
  expect(part(1, neutralStationMm)).toBe(0);
  expect(part(0, neutralStationMm)).toBeGreaterThan(0);
  // Far behind a small tail's centre is its quarter chord: arm times share of the lift, within a few millimetres.
  const shareOfTail = (part(0, 100) - part(0, 200)) / 100;
  const quarterMm = 900 + 125 / 4;
  expect(Math.abs(part(0, neutralStationMm) / shareOfTail - (quarterMm - neutralStationMm))).toBeLessThan(6);
});
