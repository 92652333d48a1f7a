import type { Vec3 } from '../../engine/geometry/types';
import { addScaled, dot, normalise, sub } from '../../engine/geometry/vec3';
import { LEVEL } from '../../model/balance/balance';
import type { View } from '../../store/viewStore';
import type { TiltState } from '../frame/tilt';

/** Beyond the picture's edge, mm. */
const FAR_MM = 30_000;
/** How far the plumb line hangs where it meets no mat, mm. */
const HANGS_MM = 320;

export interface PlumbLine {
  /** Pairs of points, aircraft frame, mm. */
  readonly pairs: readonly number[];
  /** Where its bob hangs; null in an elevation of the level aircraft, where the line runs on into the beam. */
  readonly footMm: Vec3 | null;
}

/** The plumb line from the CG along apparent gravity, and on the level mat across to the rule. */
export function plumbLine(cgMm: Vec3, view: View, down: Vec3, tilt: TiltState): PlumbLine {
  const [x, y, z] = cgMm;
  const free = view === 'free';
  const held = down !== LEVEL;
  // In an elevation the line to the beam stays, so that the CG can be read there.
  const toBeam = view === 'top' ? [x, y, z, x, -FAR_MM, z] : [x, y, z, x, y, -FAR_MM];
  if (!free && !held) return { pairs: toBeam, footMm: null };
  const foot = free ? meetsMat(cgMm, down, tilt) : addScaled(cgMm, normalise(down) ?? LEVEL, HANGS_MM);
  const toRule = free && tilt.level && !held ? [...foot, x, 0, foot[2]] : [...cgMm, ...cgMm];
  return { pairs: [...cgMm, ...foot, ...(free ? toRule : toBeam)], footMm: foot };
}

/** Where a line hung from a point meets the mat, however the mat stands; no farther than the eye follows. */
function meetsMat(fromMm: Vec3, down: Vec3, { turn, aboutMm, groundMm }: TiltState): Vec3 {
  const up = upOf(turn);
  const matMm = addScaled(aboutMm, up, groundMm - aboutMm[2]);
  const along = normalise(down) ?? LEVEL;
  const closing = -dot(along, up);
  const aboveMm = dot(sub(fromMm, matMm), up);
  const reachMm = closing > 0.2 ? aboveMm / closing : HANGS_MM;
  return addScaled(fromMm, along, reachMm);
}

const upOf = ({ x, y, z, w }: TiltState['turn']): Vec3 => [
  2 * (x * z + w * y),
  2 * (y * z - w * x),
  1 - 2 * (x * x + y * y),
];
