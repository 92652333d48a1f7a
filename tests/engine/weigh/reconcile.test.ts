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

test('two places and a balance stand: each coordinate by its own variance, by hand', () => {
  const pair = [body('a', 100, [0, 0, 0], 0, 3), body('b', 100, [100, 40, -60], 0, 4)];
  const quantities = ['station', 'buttline', 'waterline'] as const;
  quantities.forEach((quantity, axis) => {
    const listed = pair[1]!.mass.cgMm![axis]! / 2;
    const { updated, before, after, differences, chiSquare } = reconciled(pair, [
      { id: 'stand', quantities: [quantity], values: [listed + 1], covariance: [[2.75]] },
    ]);
    // The CG is half of each place, so its variance is (9 + 16)/4 = 6.25, and with the stand's 2.75 it is 9.
    expect(updated[0]!.movedMm[axis]).toBeCloseTo((9 / 2) * (1 / 9), 9);
    expect(updated[1]!.movedMm[axis]).toBeCloseTo((16 / 2) * (1 / 9), 9);
    for (const other of [0, 1, 2].filter((each) => each !== axis)) {
      expect(updated[0]!.movedMm[other]).toBe(0);
      expect(after.cgMm[other]).toEqual(before.cgMm[other]);
    }
    expect(updated[0]!.positionMm[axis]!.value).toBeCloseTo(0.5, 9);
    expect(updated[0]!.positionMm[axis]!.sigma ** 2).toBeCloseTo(9 - 4.5 ** 2 / 9, 9);
    expect(before.cgMm[axis]!.sigma ** 2).toBeCloseTo(6.25, 9);
    expect(after.cgMm[axis]!.value).toBeCloseTo(listed + 6.25 / 9, 9);
    expect(after.cgMm[axis]!.sigma ** 2).toBeCloseTo((6.25 * 2.75) / 9, 9);
    expect(chiSquare).toBeCloseTo(1 / 9, 9);
    const [difference] = differences;
    expect(difference).toMatchObject({ measurementId: 'stand', quantity });
    expect(difference!.predicted.value).toBeCloseTo(listed, 9);
    expect(difference!.measured.value).toBeCloseTo(listed + 1, 9);
    expect(difference!.measured.sigma ** 2).toBeCloseTo(2.75, 9);
    expect(difference!.difference.value).toBeCloseTo(1, 9);
    expect(difference!.difference.sigma).toBeCloseTo(3, 9);
  });
});

test('a weighing of some items says nothing of the others, and the figures may be of some items only', () => {
  const pair = [body('a', 100, [0, 0, 0], 3, 0), body('b', 200, [60, 0, 0], 4, 0)];
  const alone: WholeMeasurement = {
    id: 'kitchen',
    quantities: ['mass'],
    values: [105],
    covariance: [[16]],
    aboard: new Set(['a']),
  };
  const { updated, after, differences } = reconciled(pair, [alone]);
  // 5 g shared between the list's 9 and the scale's 16.
  expect(updated.map(({ movedG }) => movedG)).toEqual([expect.closeTo((5 * 9) / 25, 9), 0]);
  expect(differences[0]!.predicted).toEqual({ value: 100, sigma: 3 });
  expect(after.massG.sigma ** 2).toBeCloseTo((9 * 16) / 25 + 16, 9);
  const ofB = reconcile(pair, [alone], { ofWhole: new Set(['b']) });
  expect(ofB.ok && ofB.after.massG).toEqual({ value: 200, sigma: 4 });
  expect(ofB.ok && ofB.after.cgMm[0]).toEqual({ value: 60, sigma: 0 });
});

test('whether it agrees is asked at the confidence that is wanted', () => {
  // Abramowitz & Stegun, table 26.8, one degree of freedom: 2.70554 is passed by 10 %, 3.84146 by 5 %.
  const agrees = (chiSquare: number, confidence?: number) => {
    const values = [100 + Math.sqrt(chiSquare) * 5];
    const answer = reconcile(
      [body('a', 100, [0, 0, 0], 3, 0)],
      [{ id: 'one', quantities: ['mass'], values, covariance: [[16]] }],
      confidence === undefined ? {} : { confidence },
    );
    return answer.ok && answer.degrees === 1 && answer.agrees;
  };
  expect([agrees(2.7, 0.9), agrees(2.71, 0.9)]).toEqual([true, false]);
  expect([agrees(3.84), agrees(3.85)]).toEqual([true, false]);
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

  test('something listed that is missing is less than nothing, and stands where it was listed', () => {
    const { massG, placeMm, momentGmm } = unaccountedFor(
      { massG: exact(5000), cgMm: [exact(700), null, exact(10)] },
      { massG: exact(4000), cgMm: [exact(750), null, exact(10)] },
    );
    // 5000·700 − 4000·750 = 500 000 g·mm of a thousand grams.
    expect(massG.value).toBe(-1000);
    expect(placeMm).toEqual([{ value: 500, sigma: 0 }, null, { value: 10, sigma: 0 }]);
    expect(momentGmm).toEqual([4000 * 50, 0, 0]);
  });

  test('a mass has a place from three sigmas of it on, with the error of all four figures', () => {
    const placed = (gone: number) =>
      unaccountedFor(
        { massG: { value: 5000, sigma: 3 }, cgMm: [{ value: 700, sigma: 0.6 }] },
        { massG: { value: 5000 + gone, sigma: 4 }, cgMm: [{ value: 710, sigma: 0.8 }] },
      );
    expect(placed(14.9).placeMm[0]).toBeNull();
    expect(placed(-15.1).placeMm[0]).not.toBeNull();
    const { massG, placeMm } = placed(1000);
    expect(massG).toEqual({ value: 1000, sigma: 5 });
    // r = c + w·(v − c)/(w − m): slopes by hand, at c 700, v 710, m 5000, w 6000.
    expect(placeMm[0]!.value).toBeCloseTo(760, 9);
    const [byC, byV, byW, byM] = [1 - 6, 6, (10 * -5000) / 1000 ** 2, (6000 * 10) / 1000 ** 2];
    const sigma = Math.hypot(byC * 0.6, byV * 0.8, byW * 4, byM * 3);
    expect(placeMm[0]!.sigma).toBeCloseTo(sigma, 5);
    expect(
      unaccountedFor({ massG: exact(5), cgMm: [exact(1)] }, { massG: exact(5), cgMm: [exact(2)] }),
    ).toEqual({
      massG: { value: 0, sigma: 0 },
      placeMm: [null, null, null],
      momentGmm: [5, 0, 0],
    });
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
  const may: WholeMeasurement = { id: 'may', quantities: ['mass'], values: [5780], covariance: [[1]] };
  expect(refused(bodies, [may])).toBe('');
  expect(refused(bodies, [{ ...may, values: [Number.NaN] }])).toMatch(
    /Weigh-in may: a measured figure is missing/,
  );
  expect(refused(bodies, [{ ...may, values: [5780, 676] }])).toMatch(/may: expected as many figures/);
  expect(refused(bodies, [{ ...may, covariance: [] }])).toMatch(/may: expected as many figures/);
  expect(refused(bodies, [{ ...may, aboard: new Set(['kite']) }])).toMatch(/may: nothing was aboard/);
  // One empty among others is passed over; an item without a mass has no say.
  expect(refused(bodies, [{ ...may, quantities: [], values: [], covariance: [] }, may])).toBe('');
  const without: MeasuredBody = { ...bodies[0]!, mass: massPoint(0, [0, 0, 0]) };
  expect(refused([without], [may])).toMatch(/Nothing aboard has a mass/);
  // Twice the same without any error: there is no weighing the two.
  const exact = { ...may, covariance: [[0]] };
  expect(refused(bodies, [exact, exact])).toMatch(/the same without any error/);
});
