import { cosDeg, sinDeg } from '../../engine/geometry/angle';
import type { Pose, Vec3 } from '../../engine/geometry/types';
import type { Surface } from '../document/types';

const DEG = 180 / Math.PI;

/** The pose of anything in the file that carries one (a part, a tank, a block). */
export function poseOf({ positionMm, yawDeg, pitchDeg, rollDeg }: Pose): Pose {
  return { positionMm, yawDeg, pitchDeg, rollDeg };
}

/** The pose that lays a body's x axis, origin at its middle, from one point to another; aircraft frame, mm. */
export function poseBetween(frontMm: Vec3, rearMm: Vec3): { readonly pose: Pose; readonly lengthMm: number } {
  const x = rearMm[0] - frontMm[0];
  const y = rearMm[1] - frontMm[1];
  const z = rearMm[2] - frontMm[2];
  const pose: Pose = {
    positionMm: [(frontMm[0] + rearMm[0]) / 2, (frontMm[1] + rearMm[1]) / 2, (frontMm[2] + rearMm[2]) / 2],
    // The nose is the body's −x end: aft and to the left is nose right, aft and down is nose up.
    yawDeg: Math.atan2(-y, x) * DEG,
    pitchDeg: Math.atan2(-z, Math.hypot(x, y)) * DEG,
    rollDeg: 0,
  };
  return { pose, lengthMm: Math.hypot(x, y, z) };
}

/**
 * Where a surface's own frame stands (origin at the root leading edge, span along y), or the same frame
 * moved to a point of it, `atMm`. The surface is turned nose up by its incidence about its own y axis,
 * then canted about the fore-and-aft line through the root: the matrix Rx(cant)·Ry(incidence), written
 * here as yaw, pitch and roll.
 */
export function surfacePose(surface: Surface, atMm: Vec3 = [0, 0, 0]): Pose {
  const sinC = sinDeg(surface.cantDeg);
  const cosC = cosDeg(surface.cantDeg);
  const sinI = sinDeg(surface.incidenceDeg);
  const cosI = cosDeg(surface.incidenceDeg);
  const [rootX, rootY, rootZ] = surface.rootMm;
  const [x, y, z] = atMm;
  const upMm = z * cosI - x * sinI;
  return {
    positionMm: [rootX + x * cosI + z * sinI, rootY + y * cosC - upMm * sinC, rootZ + y * sinC + upMm * cosC],
    yawDeg: Math.atan2(-sinC * sinI, cosI) * DEG,
    pitchDeg: Math.asin(cosC * sinI) * DEG,
    rollDeg: -Math.atan2(sinC, cosC * cosI) * DEG,
  };
}
