import { cosDeg, sinDeg } from '../geometry/angle';
import type { Vec3 } from '../geometry/types';

/** How the aircraft is held and how hard it is pulled about, apart from gravity. */
export interface Attitude {
  /** Nose up +. */
  readonly pitchDeg: number;
  /** Right wing down +. */
  readonly rollDeg: number;
  /** Acceleration of the aircraft along its own nose, in g, forward + (a launch, a take-off run). */
  readonly forwardG: number;
  /** Acceleration of the aircraft towards its own right wing, in g, right +. */
  readonly sideG: number;
}

/** Level and at rest: down is −z. */
export const LEVEL: Attitude = { pitchDeg: 0, rollDeg: 0, forwardG: 0, sideG: 0 };

/**
 * The direction in which liquid settles (apparent gravity, gravity less acceleration), a unit vector in the
 * aircraft's frame (x aft, y right, z up). Level at rest gives [0, 0, −1]. Nose up gives +x: liquid runs aft,
 * and so does acceleration forward. Right wing down gives +y; acceleration to the right gives −y.
 * Heading does not matter. Throws when gravity and acceleration cancel, for then nothing is down.
 */
export function downFromAttitude(attitude: Attitude): Vec3 {
  const { pitchDeg, rollDeg, forwardG, sideG } = attitude;
  const x = sinDeg(pitchDeg) + forwardG;
  const y = sinDeg(rollDeg) * cosDeg(pitchDeg) - sideG;
  const z = -cosDeg(rollDeg) * cosDeg(pitchDeg);
  const size = Math.hypot(x, y, z);
  if (!(size > 1e-9) || !Number.isFinite(size)) {
    throw new RangeError(
      `attitude: expected a direction of down, but pitch ${pitchDeg}°, roll ${rollDeg}°, ` +
        `${forwardG} g forward and ${sideG} g to the right leave none`,
    );
  }
  return [x / size, y / size, z / size];
}
