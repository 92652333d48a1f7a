import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cosDeg, sinDeg } from '../../../src/engine/geometry/angle';
import {
  anglesOf,
  directionFromAircraft,
  directionToAircraft,
  mirrorPose,
  pointFromAircraft,
  pointToAircraft,
  poseAtDatum,
  poseRotation,
  rotationProduct,
  turn,
  turnBack,
} from '../../../src/engine/geometry/rotation';
import type { Mat3, Pose, Vec3 } from '../../../src/engine/geometry/types';
import {
  add,
  addScaled,
  cross,
  distance,
  length,
  lerp,
  mirrorY,
  normalise,
  sub,
} from '../../../src/engine/geometry/vec3';
import { between } from '../../between';

const nose: Vec3 = [-1, 0, 0];
const rightWing: Vec3 = [0, 1, 0];
const angle = between(-360, 360);
const coordinate = between(-2000, 2000);
const poses = fc.record<Pose>({
  positionMm: fc.tuple(coordinate, coordinate, coordinate),
  yawDeg: angle,
  pitchDeg: angle,
  rollDeg: angle,
});

function expectVec(actual: Vec3, expected: Vec3, tolerance = 1e-12): void {
  for (const axis of [0, 1, 2] as const) {
    expect(Math.abs(actual[axis] - expected[axis])).toBeLessThanOrEqual(tolerance);
  }
}

describe('the signs of a pose', () => {
  test('pitch + lifts the nose', () => {
    const [x, y, z] = directionToAircraft({ ...poseAtDatum, pitchDeg: 10 }, nose);
    expectVec([x, y, z], [-Math.cos(Math.PI / 18), 0, Math.sin(Math.PI / 18)]);
  });

  test('roll + lowers the right wing', () => {
    expectVec(directionToAircraft({ ...poseAtDatum, rollDeg: 90 }, rightWing), [0, 0, -1], 0);
  });

  test('yaw + takes the nose to the right', () => {
    expectVec(directionToAircraft({ ...poseAtDatum, yawDeg: 90 }, nose), [0, 1, 0], 0);
  });

  test('order is yaw, then pitch about the yawed y, then roll about the nose', () => {
    // Nose right a quarter turn, then up 30°: the nose points right and up, the right wing aft.
    const pose: Pose = { ...poseAtDatum, yawDeg: 90, pitchDeg: 30 };
    expectVec(directionToAircraft(pose, nose), [0, Math.sqrt(3) / 2, 0.5]);
    expectVec(directionToAircraft(pose, rightWing), [1, 0, 0]);
    // Rolling about the nose does not move the nose.
    expectVec(directionToAircraft({ ...pose, rollDeg: 75 }, nose), [0, Math.sqrt(3) / 2, 0.5]);
  });

  test('it is the matrix of flight mechanics seen from axes turned half round y', () => {
    // Stevens & Lewis, Aircraft Control and Simulation, 1.3: body-to-Earth is the transpose of
    // Rx(φ)Ry(θ)Rz(ψ) (from memory); body axes x forward, y right, z down.
    const radians = Math.PI / 180;
    fc.assert(
      fc.property(poses, coordinate, coordinate, coordinate, (pose, x, y, z) => {
        const [psi, theta, phi] = [pose.yawDeg * radians, pose.pitchDeg * radians, pose.rollDeg * radians];
        const rz: Mat3 = [Math.cos(psi), -Math.sin(psi), 0, Math.sin(psi), Math.cos(psi), 0, 0, 0, 1];
        const ry: Mat3 = [Math.cos(theta), 0, Math.sin(theta), 0, 1, 0, -Math.sin(theta), 0, Math.cos(theta)];
        const rx: Mat3 = [1, 0, 0, 0, Math.cos(phi), -Math.sin(phi), 0, Math.sin(phi), Math.cos(phi)];
        const flight = rotationProduct(rz, rotationProduct(ry, rx));
        const [fx, fy, fz] = turn(flight, [-x, y, -z]);
        expectVec(turn(poseRotation(pose), [x, y, z]), [-fx, fy, -fz], 1e-10);
      }),
    );
  });
});

test('a pose keeps lengths and handedness', () => {
  fc.assert(
    fc.property(poses, (pose) => {
      const [x, y, z] = [
        directionToAircraft(pose, [1, 0, 0]),
        directionToAircraft(pose, [0, 1, 0]),
        directionToAircraft(pose, [0, 0, 1]),
      ];
      expect(length(x)).toBeCloseTo(1, 12);
      expectVec(cross(x, y), z);
    }),
  );
});

test('there and back again', () => {
  fc.assert(
    fc.property(poses, coordinate, coordinate, coordinate, (pose, x, y, z) => {
      const p: Vec3 = [x, y, z];
      expectVec(pointFromAircraft(pose, pointToAircraft(pose, p)), p, 1e-9);
      expectVec(directionFromAircraft(pose, directionToAircraft(pose, p)), p, 1e-9);
      expectVec(turnBack(poseRotation(pose), turn(poseRotation(pose), p)), p, 1e-9);
    }),
  );
});

test('a point is the position plus the turned offset', () => {
  const pose: Pose = { positionMm: [100, 20, 5], yawDeg: 0, pitchDeg: 90, rollDeg: 0 };
  expect(pointToAircraft(pose, [-10, 0, 0])).toEqual([100, 20, 15]);
});

test('mirroring the body and its pose mirrors the result', () => {
  fc.assert(
    fc.property(poses, coordinate, coordinate, coordinate, (pose, x, y, z) => {
      const there = pointToAircraft(mirrorPose(pose), mirrorY([x, y, z]));
      expectVec(there, mirrorY(pointToAircraft(pose, [x, y, z])), 1e-9);
    }),
  );
});

test('quarter turns are exact', () => {
  for (const turns of [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5]) {
    expect(sinDeg(90 * turns)).toBe(Math.round(Math.sin((Math.PI / 2) * turns)) + 0);
    expect(cosDeg(90 * turns)).toBe(Math.round(Math.cos((Math.PI / 2) * turns)) + 0);
  }
  expect(sinDeg(30)).toBeCloseTo(0.5, 15);
});

test('what has no direction has no unit vector', () => {
  expect(normalise([0, 0, 0])).toBeNull();
  expect(normalise([Number.NaN, 1, 0])).toBeNull();
  expect(normalise([Number.POSITIVE_INFINITY, 1, 0])).toBeNull();
  expect(normalise([0, 3, 4])).toEqual([0, 0.6000000000000001, 0.8]);
  expect(sub([3, 2, 1], [1, 1, 1])).toEqual([2, 1, 0]);
});

describe('the angles of a rotation', () => {
  test('turn as it does, whatever pose it came from, with the pitch within ±90°', () => {
    fc.assert(
      fc.property(poses, (pose) => {
        const r = poseRotation(pose);
        const angles = anglesOf(r);
        expect(Math.abs(angles.pitchDeg)).toBeLessThanOrEqual(90);
        const again = poseRotation({ ...poseAtDatum, ...angles });
        again.forEach((entry, k) => {
          expect(entry).toBeCloseTo(r[k]!, 6);
        });
      }),
    );
  });

  test('where it stands on end all of the turn about the upright is roll', () => {
    for (const pitchDeg of [90, -90]) {
      for (const rollDeg of [-170, -30, 0, 45, 120]) {
        const angles = anglesOf(poseRotation({ ...poseAtDatum, pitchDeg, rollDeg }));
        expect(angles.yawDeg).toBe(0);
        expect(angles.pitchDeg).toBeCloseTo(pitchDeg, 5);
        expect(angles.rollDeg).toBeCloseTo(rollDeg, 9);
      }
    }
  });

  test('rounding beyond a whole sine is no fault', () => {
    const slightly = 1 + 1e-15;
    expect(anglesOf([0, 0, slightly, 0, 1, 0, -slightly, 0, 0]).pitchDeg).toBe(90);
    expect(anglesOf([0, 0, -slightly, 0, 1, 0, slightly, 0, 0]).pitchDeg).toBe(-90);
  });
});

test('between and beyond two points', () => {
  const [a, b]: [Vec3, Vec3] = [
    [1, 2, 3],
    [5, 0, 11],
  ];
  expect(lerp(a, b, 0.25)).toEqual([2, 1.5, 5]);
  expect(addScaled(a, b, -2)).toEqual([-9, 2, -19]);
  expect(add(a, b)).toEqual([6, 2, 14]);
  expect(distance(a, [3, 5, 9])).toBe(7);
});
