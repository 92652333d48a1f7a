import { expect, test } from 'vitest';
import { gyroFault } from '../../../src/model/fit/gyro';
import { box, partAt } from './fitAircraft';

const gyro = (over: object = {}) => partAt('gyro', box(40, 30, 15), [400, 0, 0], { gyro: true, ...over });
const cgMm = [400, 0, 0] as const;

// Near the CG and square to the axes: common practice, no source.
test('at the CG and square, whichever way round, nothing is said; nor of what is no gyro', () => {
  expect(gyroFault(gyro(), cgMm)).toBeNull();
  expect(gyroFault(gyro({ yawDeg: 90, pitchDeg: 180, rollDeg: -90 }), cgMm)).toBeNull();
  expect(gyroFault(partAt('pack', box(40, 30, 15), [4000, 0, 0], { yawDeg: 30 }), cgMm)).toBeNull();
});

test('turned about one axis it is off square by as much, from a right angle counted back', () => {
  expect(gyroFault(gyro({ pitchDeg: 10 }), cgMm)).toMatchObject({ askew: true, tooFar: false });
  expect(gyroFault(gyro({ pitchDeg: 10 }), cgMm)?.offSquareDeg).toBeCloseTo(10, 9);
  expect(gyroFault(gyro({ yawDeg: 85 }), cgMm)?.offSquareDeg).toBeCloseTo(5, 9);
});

test('too far from the CG by the straight distance', () => {
  const fault = gyroFault(gyro({ positionMm: [700, 400, 0] }), cgMm);
  expect(fault).toMatchObject({ tooFar: true, askew: false });
  expect(fault?.fromCgMm).toBeCloseTo(500, 9);
  expect(gyroFault(gyro({ positionMm: [700, 400, 0] }), null)).toBeNull();
});
