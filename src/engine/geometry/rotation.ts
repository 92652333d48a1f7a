import { cosDeg, sinDeg } from './angle';
import type { Mat3, Pose, Vec3 } from './types';

/** A body whose own frame is the aircraft's. */
export const poseAtDatum: Pose = { positionMm: [0, 0, 0], yawDeg: 0, pitchDeg: 0, rollDeg: 0 };

/**
 * The rotation of a pose: it takes directions in the body's own frame to the aircraft's.
 *
 * The one place where flight mechanics meets this frame. Its body axes are x forward, y right,
 * z down (yaw nose right +, pitch nose up +, roll right wing down +; R = Rz(yaw)·Ry(pitch)·Rx(roll)).
 * Ours are x aft, y right, z up: the same axes turned half a turn about y. Conjugating by that half
 * turn keeps the sense about y and reverses it about x and z:
 *
 *     R = Rz(−yaw) · Ry(+pitch) · Rx(−roll)     column vectors, right-handed turns
 */
export function poseRotation({ yawDeg, pitchDeg, rollDeg }: Pose): Mat3 {
  const cy = cosDeg(yawDeg);
  const sy = sinDeg(yawDeg);
  const cp = cosDeg(pitchDeg);
  const sp = sinDeg(pitchDeg);
  const cr = cosDeg(rollDeg);
  const sr = sinDeg(rollDeg);
  return [
    cy * cp,
    sy * cr - cy * sp * sr,
    cy * sp * cr + sy * sr,
    -sy * cp,
    cy * cr + sy * sp * sr,
    cy * sr - sy * sp * cr,
    -sp,
    -cp * sr,
    cp * cr,
  ];
}

/** The angles whose pose turns so, degrees: the pitch within ±90°, and no yaw where it stands on end. */
export function anglesOf(r: Mat3): Pick<Pose, 'yawDeg' | 'pitchDeg' | 'rollDeg'> {
  const onEnd = Math.hypot(r[0], r[3]) < 1e-9;
  return {
    yawDeg: onEnd ? 0 : Math.atan2(-r[3], r[0]) * DEG,
    pitchDeg: Math.asin(Math.max(-1, Math.min(1, -r[6]))) * DEG,
    rollDeg: (onEnd ? Math.atan2(r[5], r[4]) : Math.atan2(-r[7], r[8])) * DEG,
  };
}

const DEG = 180 / Math.PI;

/** R v. */
export const turn = (r: Mat3, v: Vec3): Vec3 => [
  r[0] * v[0] + r[1] * v[1] + r[2] * v[2],
  r[3] * v[0] + r[4] * v[1] + r[5] * v[2],
  r[6] * v[0] + r[7] * v[1] + r[8] * v[2],
];

/** Rᵀ v: undoes `turn`. */
export const turnBack = (r: Mat3, v: Vec3): Vec3 => [
  r[0] * v[0] + r[3] * v[1] + r[6] * v[2],
  r[1] * v[0] + r[4] * v[1] + r[7] * v[2],
  r[2] * v[0] + r[5] * v[1] + r[8] * v[2],
];

/** The rotation that turns by `b` first and then by `a`: a·b. */
export function rotationProduct(a: Mat3, b: Mat3): Mat3 {
  const [x0, x1, x2] = turn(a, [b[0], b[3], b[6]]);
  const [y0, y1, y2] = turn(a, [b[1], b[4], b[7]]);
  const [z0, z1, z2] = turn(a, [b[2], b[5], b[8]]);
  return [x0, y0, z0, x1, y1, z1, x2, y2, z2];
}

/** A direction in the body's own frame, seen in the aircraft's. */
export const directionToAircraft = (pose: Pose, v: Vec3): Vec3 => turn(poseRotation(pose), v);

/** A direction in the aircraft's frame, seen in the body's own. */
export const directionFromAircraft = (pose: Pose, v: Vec3): Vec3 => turnBack(poseRotation(pose), v);

/** A point of the body, mm in its own frame, to mm in the aircraft's. */
export function pointToAircraft(pose: Pose, pointMm: Vec3): Vec3 {
  const turned = directionToAircraft(pose, pointMm);
  const [x, y, z] = pose.positionMm;
  return [turned[0] + x, turned[1] + y, turned[2] + z];
}

/** A point in the aircraft's frame, mm, to mm in the body's own. */
export function pointFromAircraft(pose: Pose, pointMm: Vec3): Vec3 {
  const [x, y, z] = pose.positionMm;
  return directionFromAircraft(pose, [pointMm[0] - x, pointMm[1] - y, pointMm[2] - z]);
}

/**
 * The pose of the mirror image (y → −y) of a posed body. The body itself has to be mirrored too:
 * mirror(place(body, pose)) = place(mirror(body), mirrorPose(pose)).
 */
export function mirrorPose({ positionMm: [x, y, z], yawDeg, pitchDeg, rollDeg }: Pose): Pose {
  return { positionMm: [x, -y, z], yawDeg: -yawDeg, pitchDeg, rollDeg: -rollDeg };
}
