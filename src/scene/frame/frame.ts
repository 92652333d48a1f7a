import { Euler, Matrix4, Quaternion, type Vector3 } from 'three';
import { poseRotation } from '../../engine/geometry/rotation';
import type { Pose, Vec3 } from '../../engine/geometry/types';
import type { Ray } from '../../interaction/dragPlane';

/** The one rotation at the root of the scene: aircraft (x, y, z) stands at (x, z, −y). Scene units are mm. */
export const ROOT_ROTATION = [-Math.PI / 2, 0, 0] as const;
export const ROOT_TURN = new Quaternion().setFromEuler(new Euler(...ROOT_ROTATION));

/** A point or direction of the scene's world in the aircraft's frame. */
export const toAircraft = ({ x, y, z }: { x: number; y: number; z: number }): Vec3 => [x, -z, y];

/** A point or direction of the aircraft's frame in the scene's world. */
export const toWorld = ([x, y, z]: Vec3, into: Vector3): Vector3 => into.set(x, z, -y);

/** A ray of the scene's world in the aircraft's frame. */
export const rayToAircraft = (ray: { origin: Vector3; direction: Vector3 }): Ray => ({
  originMm: toAircraft(ray.origin),
  direction: toAircraft(ray.direction),
});

const turned = new Matrix4();

/** Writes the turn of a pose, aircraft frame. */
export function writePoseTurn(pose: Omit<Pose, 'positionMm'>, into: Quaternion): Quaternion {
  const r = poseRotation({ ...pose, positionMm: [0, 0, 0] });
  turned.set(r[0], r[1], r[2], 0, r[3], r[4], r[5], 0, r[6], r[7], r[8], 0, 0, 0, 0, 1);
  return into.setFromRotationMatrix(turned);
}
