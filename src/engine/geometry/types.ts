/**
 * One frame everywhere: x = station (aft +), y = buttline (right +), z = waterline (up +).
 * Origin: the datum, on the plane of symmetry. Right-handed. Lengths in mm, angles in degrees.
 */

/** A point or direction, [x, y, z]. Points are in mm. */
export type Vec3 = readonly [x: number, y: number, z: number];

/** A stretch along one axis, from the lower end to the higher, mm. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A 3 × 3 matrix in row-major order; it turns column vectors. */
export type Mat3 = readonly [
  xx: number,
  xy: number,
  xz: number,
  yx: number,
  yy: number,
  yz: number,
  zx: number,
  zy: number,
  zz: number,
];

/**
 * Where a body's own frame stands in the aircraft's: first turned, then set down at `positionMm`.
 * Yaw nose right +, pitch nose up +, roll right wing down +; applied yaw, pitch, roll (intrinsic z-y'-x'').
 */
export interface Pose {
  readonly positionMm: Vec3;
  readonly yawDeg: number;
  readonly pitchDeg: number;
  readonly rollDeg: number;
}
