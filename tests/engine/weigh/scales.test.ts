import { describe, expect, test } from 'vitest';
import { type Scale, type ScalesSetup, weighOnScales } from '../../../src/engine';
import { poseRotation, turn } from '../../../src/engine/geometry/rotation';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const scale = (grossG: number, x: number, y = 0, z = 0): Scale => ({
  name: 'Scale',
  grossG,
  tareG: 0,
  resolutionG: 0,
  supportMm: [x, y, z],
  supportSigmaMm: 0,
});

function weighed(setup: ScalesSetup) {
  const answer = weighOnScales(setup);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer;
}

// The sums are homogeneous in the units, so pounds and inches serve as well as grams and millimetres.
describe('published weighings', () => {
  test('nosewheel, datum ahead of the mains: 114.8 in (FAA-H-8083-1B, chapter 3)', () => {
    const { stationMm } = weighed({ scales: [scale(340, 128 - 78), scale(2006 - 340, 128)] });
    expect(stationMm.value).toBeCloseTo(114.8, 1);
  });

  test('nosewheel, datum 75 in aft of the mains: 88.2 in ahead of it (same)', () => {
    const { stationMm } = weighed({ scales: [scale(340, -75 - 78), scale(2006 - 340, -75)] });
    expect(stationMm.value).toBeCloseTo(-88.2, 1);
  });

  test('tailwheel, datum 7.5 in ahead of the mains: 19.7 in (same, from memory)', () => {
    const { stationMm } = weighed({ scales: [scale(1218 - 67, 7.5), scale(67, 7.5 + 222)] });
    expect(stationMm.value).toBeCloseTo(19.7, 1);
  });

  test('tailwheel, datum 80 in aft of the mains: −67.8 in (same, from memory)', () => {
    const { stationMm } = weighed({ scales: [scale(1218 - 67, -80), scale(67, -80 + 222)] });
    expect(stationMm.value).toBeCloseTo(-67.8, 1);
  });

  const sfte = (nose: number, mains: number) => [
    scale(320, nose),
    scale(816, mains, 70),
    scale(810, mains, -70),
  ];
  test('three scales: 1946 lb, 12.33 in ahead of the mains, 0.216 in right (SFTE handbook 2013, 7.2)', () => {
    const { massG, stationMm, buttlineMm } = weighed({ scales: sfte(-75, 0) });
    expect(massG.value).toBe(1946);
    expect(stationMm.value).toBeCloseTo(-12.33, 2);
    expect(buttlineMm?.value).toBeCloseTo(0.216, 3);
  });

  test('the same from the spinner: 102.67 in', () => {
    expect(weighed({ scales: sfte(40, 115) }).stationMm.value).toBeCloseTo(102.67, 2);
  });

  test('the same with the mains as the point that was measured from', () => {
    expect(weighed({ scales: sfte(-75, 0), fromMm: [115, 0, 0] }).stationMm.value).toBeCloseTo(102.67, 2);
  });

  test('92 in wheelbase: 83.7 in aft of the nose wheel (question bank, mass and balance 18)', () => {
    const { stationMm } = weighed({ scales: [scale(285, 0), scale(1465 + 1395, 92)] });
    expect(stationMm.value).toBeCloseTo(83.7, 1);
  });
});

const supports: readonly Vec3[] = [
  [146, 0, -245],
  [842, 240, -240],
  [842, -240, -240],
];

/** What three free wheels carry at a pitch, by solving force and moments in the earth's frame. */
function loads(massG: number, cgMm: Vec3, pitchDeg: number): number[] {
  const toEarth = poseRotation({ positionMm: [0, 0, 0], yawDeg: 0, pitchDeg, rollDeg: 0 });
  const [a, b, c, g] = [...supports, cgMm].map((point) => turn(toEarth, point)) as [Vec3, Vec3, Vec3, Vec3];
  const area = (p: Vec3, q: Vec3, r: Vec3) => (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
  const all = area(a, b, c);
  return [area(g, b, c), area(a, g, c), area(a, b, g)].map((part) => (massG * part) / all);
}

const setupOf = (readings: readonly number[], resolutionG: number, tape: number): Scale[] =>
  readings.map((grossG, at) => ({
    name: `Scale ${at + 1}`,
    grossG,
    tareG: 0,
    resolutionG,
    supportMm: supports[at]!,
    supportSigmaMm: tape,
  }));

test('an aircraft put on its scales comes back, level and pitched', () => {
  const random = randomFrom(11);
  for (let trial = 0; trial < 200; trial += 1) {
    const cg: Vec3 = [600 + 200 * random(), 40 * (random() - 0.5), 100 * (random() - 0.5)];
    const pitch = 20 * (random() - 0.5);
    const answer = weighed({
      scales: setupOf(loads(6800, cg, pitch), 0, 0),
      pitchDeg: { value: pitch, sigma: 0 },
      cgWaterlineMm: { value: cg[2], sigma: 0 },
    });
    expect(answer.massG.value).toBeCloseTo(6800, 8);
    expect(answer.stationMm.value).toBeCloseTo(cg[0], 8);
    expect(answer.buttlineMm?.value).toBeCloseTo(cg[1], 8);
  }
});

test('the stated ± covers the truth in about 95 of 100 weighings', () => {
  const random = randomFrom(12);
  const inside = { mass: 0, station: 0, buttline: 0 };
  const trials = 4000;
  for (let trial = 0; trial < trials; trial += 1) {
    const pitch = 3 * (random() - 0.5);
    const cg: Vec3 = [730 + 20 * random(), 8 * random(), 20];
    const massG = 6700 + 200 * random();
    const scales = setupOf(loads(massG, cg, pitch), 5, 1).map((one) => ({
      ...one,
      // A tare of its own, so that two readings are rounded.
      tareG: Math.round((300 + 50 * random()) / 5) * 5,
      supportMm: one.supportMm.map((at) => at + gaussian(random)) as unknown as Vec3,
    }));
    const read = scales.map((one) => {
      const tareTruth = one.tareG + 5 * (random() - 0.5);
      return { ...one, grossG: Math.round((one.grossG + tareTruth) / 5) * 5 };
    });
    const answer = weighed({
      scales: read,
      pitchDeg: { value: pitch + 0.2 * gaussian(random), sigma: 0.2 },
      cgWaterlineMm: { value: 20 + 15 * gaussian(random), sigma: 15 },
    });
    const within = ({ value, sigma }: { value: number; sigma: number }, truth: number) =>
      Math.abs(value - truth) <= 1.96 * sigma ? 1 : 0;
    inside.mass += within(answer.massG, massG);
    inside.station += within(answer.stationMm, cg[0]);
    inside.buttline += within(answer.buttlineMm!, cg[1]);
  }
  // 95 % with a standard error of 0.35 %; six sums of flat errors are near enough to normal.
  for (const count of Object.values(inside)) {
    expect(count / trials).toBeGreaterThan(0.935);
    expect(count / trials).toBeLessThan(0.968);
  }
});

describe('what gives no answer says why', () => {
  const refused = (setup: ScalesSetup) => {
    const answer = weighOnScales(setup);
    return answer.ok ? 'an answer' : answer.sentence;
  };
  test('one scale', () => expect(refused({ scales: [scale(1, 0)] })).toMatch(/two scales or more, not 1/));
  test('supports at one station', () =>
    expect(refused({ scales: [scale(1, 5, 1), scale(1, 5, 9)] })).toMatch(/at one station/));
  test('a reading under its tare', () =>
    expect(refused({ scales: [{ ...scale(10, 0), tareG: 20 }, scale(1, 5)] })).toMatch(/10 g, is less/));
  test('pitched without a height', () =>
    expect(refused({ scales: [scale(1, 0), scale(1, 9)], pitchDeg: { value: 3, sigma: 0 } })).toMatch(
      /height of its CG/,
    ));
  test('nothing on them', () =>
    expect(refused({ scales: [scale(0, 0), scale(0, 9)] })).toMatch(/read nothing/));
  test('one that carries nothing is no fault, nor is one that reads its tare', () => {
    expect(weighed({ scales: [scale(0, 0), scale(8, 9)] }).stationMm.value).toBe(9);
    const { massG, stationMm } = weighed({ scales: [{ ...scale(20, 0), tareG: 20 }, scale(8, 9)] });
    expect([massG.value, stationMm.value]).toEqual([8, 9]);
  });
  test('a missing figure, by the name of its scale', () => {
    const nose = { ...scale(1, 0), name: 'Nose' };
    for (const spoilt of [
      { grossG: Number.NaN },
      { tareG: Number.NaN },
      { resolutionG: Number.NaN },
      { supportSigmaMm: Number.NaN },
      { supportMm: [0, Number.NaN, 0] as const },
    ]) {
      expect(refused({ scales: [scale(1, 9), { ...nose, ...spoilt }] })).toMatch(/^Nose: expected figures/);
    }
  });
  test('steeper than 60°, or at no pitch that can be read', () => {
    const scales = [scale(1, 0), scale(1, 9)];
    const pitched = (value: number) =>
      refused({ scales, pitchDeg: { value, sigma: 0 }, cgWaterlineMm: { value: 0, sigma: 0 } });
    expect([pitched(60), pitched(-60)]).toEqual(['an answer', 'an answer']);
    expect(pitched(60.1)).toMatch(/within ±60°, not 60.1°/);
    expect(pitched(-61)).toMatch(/not -61°/);
    expect(pitched(Number.NaN)).toMatch(/within ±60°/);
  });
  test('stations are told apart from a millimetre on, and so are buttlines', () => {
    expect(refused({ scales: [scale(1, 0), scale(1, 0.9)] })).toMatch(/at one station/);
    expect(weighed({ scales: [scale(1, 1, 0), scale(1, 0, 1)] }).buttlineMm).toBeNull();
    expect(weighed({ scales: [scale(1, 1, 0), scale(3, 0, -1.1)] }).buttlineMm?.value).toBeCloseTo(-0.825, 9);
  });
});

test('what a scale may be off by: the display once, twice with a tare of its own, and its sigma besides', () => {
  // A step of s read off flatly is s/√12 of one sigma (GUM, 4.3.7, from memory).
  const sigmaOf = (change: Partial<Scale>) =>
    weighed({ scales: [{ ...scale(100, 0), ...change }, scale(100, 9)] }).massG.sigma;
  expect(sigmaOf({ resolutionG: 6 })).toBeCloseTo(6 / Math.sqrt(12), 6);
  expect(sigmaOf({ resolutionG: 6, tareG: 4 })).toBeCloseTo(6 / Math.sqrt(6), 6);
  expect(sigmaOf({ resolutionG: 6, sigmaG: 4 })).toBeCloseTo(Math.sqrt(3 + 16), 6);
});

test('supports in one line along the aircraft say nothing of the buttline', () => {
  expect(weighed({ scales: [scale(340, 50), scale(1666, 128)] }).buttlineMm).toBeNull();
});
