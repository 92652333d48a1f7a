import { type PerspectiveCamera, Vector3 } from 'three';
import type { Gaze } from '../../store/eye';
import { toAircraft, toWorld } from './frame';
import { FARTHEST_MM, NEAREST_MM } from './freeCamera';

const tangentOf = (camera: PerspectiveCamera): number => Math.tan((camera.fov * Math.PI) / 360);

/** What a free camera looks at, and from where, for a picture of any size. */
export function gazeOfFree(camera: PerspectiveCamera, target: Vector3, aspect: number): Gaze {
  const highMm = 2 * tangentOf(camera) * camera.position.distanceTo(target);
  return { atMm: toAircraft(target), fromMm: toAircraft(camera.position), wideMm: highMm * aspect, highMm };
}

/** Stands a free camera so that all of that is in its picture; `target` becomes what it looks at. */
export function standForGaze(camera: PerspectiveCamera, target: Vector3, gaze: Gaze, aspect: number): void {
  toWorld(gaze.atMm, target);
  const way = gaze.fromMm
    ? toWorld(gaze.fromMm, new Vector3()).sub(target)
    : camera.position.clone().sub(target);
  const highMm = Math.max(gaze.highMm, gaze.wideMm / aspect);
  const awayMm = Math.min(FARTHEST_MM, Math.max(NEAREST_MM, highMm / 2 / tangentOf(camera)));
  if (way.lengthSq() < 1) way.set(0, 1, 1);
  camera.position.copy(target).add(way.setLength(awayMm));
  camera.lookAt(target);
}
