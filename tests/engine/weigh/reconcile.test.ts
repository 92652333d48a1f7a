import { describe, expect, test } from 'vitest';
import { massPoint, propagate, reconcile, unaccountedFor, type WholeMeasurement } from '../../../src/engine';
import type { MeasuredBody } from '../../../src/engine/balance/uncertainty';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { chiSquareAbove } from '../../../src/engine/weigh/chiSquare';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const body = (id: string, massG: number, at: Vec3, sigmaG: number, sigmaMm: number): MeasuredBody => ({
  id,
  mass: massPoint(massG, at),
  sigmaG,
  sigmaMm: [sigmaMm, sigmaMm, sigmaMm],
});

const bodies: readonly MeasuredBody[] = [
  body('pod', 1800, [620, 0, 0], 45, 4),
  body('wing', 1700, [790, 0, 90], 20, 3),
  body('engine', 1100, [1100, 0, 60], 3, 2),
  body('camera', 640, [152, 20, -20], 1, 1),
  body('pack', 480, [283, -30, -30], 24, 2),
  body('ballast', 60, [46, 0, -27], 0.5, 1),
];

const diagonal = (...sigmas: number[]) =>
  sigmas.map((sigma, row) => sigmas.map((_, column) => (row === column ? sigma ** 2 : 0)));

const whole = (list: readonly MeasuredBody[]) => propagate(list)!.mass;

function reconciled(list: readonly MeasuredBody[], measurements: readonly WholeMeasurement[]) {
  const answer = reconcile(list, measurements);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer;
}

const shaken = (list: readonly MeasuredBody[], random: () => number): readonly MeasuredBody[] =>
  list.map(({ id, mass, sigmaG, sigmaMm }) => ({
    id,
    sigmaG,
    sigmaMm,
    mass: massPoint(
      mass.massG + sigmaG * gaussian(random),
      mass.cgMm!.map((at, axis) => at + sigmaMm[axis]! * gaussian(random)) as unknown as Vec3,
    ),
  }));

test('the chi-square tail: the 5 % points of Abramowitz & Stegun table 26.8', () => {
  for (const [degrees, point] of [
    [1, 3.84146],
    [2, 5.99147],
    [3, 7.81473],
    [4, 9.48773],
    [5, 11.0705],
    [10, 18.307],
  ] as const) {
    expect(chiSquareAbove(point, degrees)).toBeCloseTo(0.05, 5);
  }
});

test('before the update mass and CG have the errors that propagation gives', () => {
  const known = propagate(bodies)!;
  const { before } = reconciled(bodies, [
    { id: 'one', quantities: ['mass'], values: [5780], covariance: [[4]] },
  ]);
  expect(before.massG.sigma).toBeCloseTo(known.massSigmaG, 9);
  before.cgMm.forEach(({ sigma }, axis) => {
    expect(sigma).toBeCloseTo(known.cgSigmaMm[axis]!, 9);
  });
});

test('two masses on one scale: the textbook weighted mean, by hand', () => {
  const pair = [body('a', 100, [0, 0, 0], 3, 0), body('b', 200, [0, 0, 0], 4, 0)];
  const { updated, chiSquare, after } = reconciled(pair, [
    { id: 'one', quantities: ['mass'], values: [310], covariance: [[11]] },
  ]);
  // The difference of 10 g is shared out by variance: 9, 16 and the scale's 11 of 36.
  expect(updated[0]!.movedG).toBeCloseTo((10 * 9) / 36, 6);
  expect(updated[1]!.movedG).toBeCloseTo((10 * 16) / 36, 6);
  expect(chiSquare).toBeCloseTo(100 / 36, 6);
  expect(updated[0]!.massG.sigma ** 2).toBeCloseTo(9 - 81 / 36, 6);
  expect(after.massG.sigma ** 2).toBeCloseTo((25 * 11) / 36, 6);
});

test('the least sum of squares, found by brute force descent, is where the update stands', () => {
  const measurement: WholeMeasurement = {
    id: 'one',
    quantities: ['mass', 'station'],
    values: [5840, 676],
    covariance: diagonal(5, 0.7),
  };
  const { updated } = reconciled(bodies, [measurement]);
  const at = (masses: readonly number[], stations: readonly number[]) => {
    const m = masses.reduce((sum, value) => sum + value, 0);
    const x = masses.reduce((sum, value, i) => sum + value * stations[i]!, 0) / m;
    const own = bodies.reduce(
      (sum, { mass, sigmaG, sigmaMm }, i) =>
        sum + ((masses[i]! - mass.massG) / sigmaG) ** 2 + ((stations[i]! - mass.cgMm![0]) / sigmaMm[0]) ** 2,
      0,
    );
    return own + ((m - 5840) / 5) ** 2 + ((x - 676) / 0.7) ** 2;
  };
  const [masses, stations] = [
    updated.map(({ massG }) => massG.value),
    updated.map(({ positionMm }) => positionMm[0].value),
  ];
  const best = at(masses, stations);
  const random = randomFrom(41);
  for (let trial = 0; trial < 2000; trial += 1) {
    const size = 10 ** (-3 * random());
    const near = at(
      masses.map((value, i) => value + size * bodies[i]!.sigmaG * gaussian(random)),
      stations.map((value, i) => value + size * bodies[i]!.sigmaMm[0] * gaussian(random)),
    );
    expect(near).toBeGreaterThan(best - 1e-3);
  }
});

test('an exact weigh-in of what is listed agrees, moves nothing, and takes the error of mass and CG away', () => {
  const { massG, cgMm } = whole(bodies);
  const answer = reconciled(bodies, [
    {
      id: 'one',
      quantities: ['mass', 'station', 'buttline'],
      values: [massG, cgMm![0], cgMm![1]],
      covariance: diagonal(0, 0, 0),
    },
  ]);
  expect(answer.agrees).toBe(true);
  expect(answer.chiSquare).toBeCloseTo(0, 9);
  for (const { movedG } of answer.updated) expect(movedG).toBeCloseTo(0, 6);
  expect(answer.after.massG.sigma).toBeLessThan(1e-3);
  expect(answer.after.cgMm[0].sigma).toBeLessThan(1e-3);
});

describe('over thousands of weigh-ins', () => {
  const errors = { mass: 4, station: 0.8, buttline: 0.6 };
  const weigh = (truth: readonly MeasuredBody[], random: () => number): WholeMeasurement => {
    const { massG, cgMm } = whole(truth);
    return {
      id: 'one',
      quantities: ['mass', 'station', 'buttline'],
      values: [
        massG + errors.mass * gaussian(random),
        cgMm![0] + errors.station * gaussian(random),
        cgMm![1] + errors.buttline * gaussian(random),
      ],
      covariance: diagonal(errors.mass, errors.station, errors.buttline),
    };
  };

  test('agreement at 95 % is said in 95 of 100, and the updated ± covers the truth as often', () => {
    const random = randomFrom(42);
    const trials = 2500;
    const count = { agrees: 0, mass: 0, station: 0, pod: 0, narrower: 0 };
    for (let trial = 0; trial < trials; trial += 1) {
      const truth = shaken(bodies, random);
      const answer = reconciled(bodies, [weigh(truth, random)]);
      const { massG, cgMm } = whole(truth);
      const within = ({ value, sigma }: { value: number; sigma: number }, is: number) =>
        Math.abs(value - is) <= 1.96 * sigma ? 1 : 0;
      count.agrees += answer.agrees ? 1 : 0;
      count.mass += within(answer.after.massG, massG);
      count.station += within(answer.after.cgMm[0], cgMm![0]);
      count.pod += within(answer.updated[0]!.massG, truth[0]!.mass.massG);
      count.narrower += answer.after.cgMm[0].sigma < answer.before.cgMm[0].sigma ? 1 : 0;
    }
    // 95 % with a standard error of 0.44 %.
    for (const key of ['agrees', 'mass', 'station', 'pod'] as const) {
      expect(count[key] / trials).toBeGreaterThan(0.935);
      expect(count[key] / trials).toBeLessThan(0.965);
    }
    expect(count.narrower).toBe(trials);
  });
});

describe('something unaccounted for', () => {
  const exact = (value: number) => ({ value, sigma: 0 });
  test('a thing left out of the list comes back with its mass and place', () => {
    const all = whole(bodies);
    const without = whole(bodies.filter(({ id }) => id !== 'camera'));
    const seen = (of: typeof all) => ({ massG: exact(of.massG), cgMm: of.cgMm!.map(exact) });
    const { massG, placeMm } = unaccountedFor(seen(without), seen(all));
    expect(massG.value).toBeCloseTo(640, 9);
    expect(placeMm.map((place) => place?.value)).toEqual([
      expect.closeTo(152, 8),
      expect.closeTo(20, 8),
      expect.closeTo(-20, 8),
    ]);
  });

  test('a mass within its error has no place', () => {
    const answer = unaccountedFor(
      { massG: { value: 5000, sigma: 10 }, cgMm: [exact(700), null, null] },
      { massG: { value: 5012, sigma: 2 }, cgMm: [exact(702), null, null] },
    );
    expect(answer.placeMm).toEqual([null, null, null]);
    expect(answer.momentGmm[0]).toBeCloseTo(5012 * 2, 6);
  });
});

test('what cannot be held against each other says why', () => {
  const refused = (list: readonly MeasuredBody[], measurements: readonly WholeMeasurement[]) => {
    const answer = reconcile(list, measurements);
    return answer.ok ? '' : answer.sentence;
  };
  expect(refused([], [])).toMatch(/Nothing aboard has a mass/);
  expect(refused(bodies, [])).toMatch(/Nothing has been measured/);
  expect(
    refused(bodies, [{ id: 'may', quantities: ['mass'], values: [Number.NaN], covariance: [[1]] }]),
  ).toMatch(/Weigh-in may: a measured figure is missing/);
});
