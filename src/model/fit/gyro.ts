import { poseRotation } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { distance } from '../../engine/geometry/vec3';
import { poseOf } from '../airframe/poses';
import type { Part } from '../document/types';

/** How a gyro should stand. Common practice, no source: what its maker says goes first. */
export const gyroPractice = { withinMm: 150, squareWithinDeg: 2 } as const;

/** What is wrong with a gyro's place. */
export interface GyroFault {
  /** How far its middle lies from the CG, mm. */
  readonly fromCgMm: number;
  readonly tooFar: boolean;
  /** How far its axes are off the aircraft's, whichever way round it is mounted, degrees. */
  readonly offSquareDeg: number;
  readonly askew: boolean;
}

/** Null for a part that is no gyro, and for a gyro near the CG and square to the axes. Aircraft frame, mm. */
export function gyroFault(part: Part, cgMm: Vec3 | null): GyroFault | null {
  if (!part.gyro) return null;
  const fromCgMm = cgMm ? distance(part.positionMm, cgMm) : 0;
  const offSquareDeg = offSquare(part);
  const tooFar = fromCgMm > gyroPractice.withinMm;
  const askew = offSquareDeg > gyroPractice.squareWithinDeg;
  return tooFar || askew ? { fromCgMm, tooFar, offSquareDeg, askew } : null;
}

/** The greatest angle between one of its axes and the aircraft's axis next to it, degrees. */
function offSquare(part: Part): number {
  const r = poseRotation(poseOf(part));
  const nearest = ([0, 1, 2] as const).map((column) =>
    Math.max(...([0, 1, 2] as const).map((row) => Math.abs(r[(3 * row + column) as 0]))),
  );
  return (Math.acos(Math.min(1, ...nearest)) * 180) / Math.PI;
}
