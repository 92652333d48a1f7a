import { type PerspectiveCamera, Spherical, Vector3 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { toWorld } from './frame';

/**
 * From the left, ahead and above, so that the nose is on the left and stations run away to the right; the
 * more span for its length, the more from ahead, so that the picture is filled.
 */
function standpoint(pointsMm: readonly Vec3[]): Vector3 {
  const size = (axis: 0 | 1) => {
    const values = pointsMm.map((point) => point[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  const spread = size(1) / Math.max(size(0), 1);
  const aheadDeg = Math.min(52, Math.max(24, 30 + (spread - 1.3) * 20));
  const ahead = (aheadDeg * Math.PI) / 180;
  return toWorld([-Math.sin(ahead), -Math.cos(ahead), 0.5], new Vector3()).normalize();
}

/** The picture on the page, CSS px. */
export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

export const aspectOf = ({ widthPx, heightPx }: PictureSize): number => widthPx / heightPx;

/** How much of the picture's half width, and of its half height below the middle, the aircraft may fill. */
const FILL_X = 0.92;
const FILL_DOWN = 0.88;
/** What lies over the picture's upper edge takes so much of it, px; in a low picture no more than this share. */
const OVER_PX = 66;
const OVER_SHARE = 0.22;

/**
 * Stands a camera off so that every given point is in the picture, below what lies over its upper edge, and what they
 * fill is in the middle of that. Returns what it looks at.
 */
export function frameAircraft(
  camera: PerspectiveCamera,
  pointsMm: readonly Vec3[],
  picture: PictureSize,
): Vector3 {
  const aspect = aspectOf(picture);
  const highest = 1 - 2 * Math.min(OVER_SHARE, OVER_PX / picture.heightPx);
  camera.aspect = aspect;
  camera.near = 20;
  camera.far = 40_000;
  const from = standpoint(pointsMm);
  const points = pointsMm.map((point) => toWorld(point, new Vector3()));
  const look = points.reduce((sum, point) => sum.add(point), new Vector3()).divideScalar(points.length);
  const seen = new Vector3();
  let distance = 4000;
  // Each round centres what is seen and takes up the room that is left; a few rounds settle it.
  for (let round = 0; round < 12; round += 1) {
    camera.position.copy(look).addScaledVector(from, distance);
    camera.lookAt(look);
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const point of points) {
      const { x, y } = seen.copy(point).project(camera);
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
    const halfHeight = distance * Math.tan((camera.fov * Math.PI) / 360);
    const across = new Vector3().setFromMatrixColumn(camera.matrixWorld, 0);
    const upright = new Vector3().setFromMatrixColumn(camera.matrixWorld, 1);
    look.addScaledVector(across, ((left + right) / 2) * halfHeight * aspect);
    look.addScaledVector(upright, ((low + high) / 2 - (highest - FILL_DOWN) / 2) * halfHeight);
    distance *= Math.max((right - left) / (2 * FILL_X), (high - low) / (highest + FILL_DOWN));
  }
  return look;
}

/** How near the horizon the eye may come, rad from upright. */
export const LOWEST_EYE = (87 * Math.PI) / 180;
/** How near and how far the eye may stand, mm; the orbit's own limits. */
export const NEAREST_MM = 250;
export const FARTHEST_MM = 12_000;

/** Brings the eye nearer to a point, or away from it (more than 1), which keeps its place in the picture. */
export function zoomBy(camera: PerspectiveCamera, target: Vector3, factor: number, about: Vector3): void {
  const away = camera.position.distanceTo(target);
  const by = Math.min(FARTHEST_MM, Math.max(NEAREST_MM, away * factor)) / away;
  const at = about.clone();
  camera.position.sub(at).multiplyScalar(by).add(at);
  target.sub(at).multiplyScalar(by).add(at);
}

/** Turns the eye about what it looks at, degrees, no lower than an angle from upright, rad. */
export function orbitBy(
  camera: PerspectiveCamera,
  target: Vector3,
  rightDeg: number,
  upDeg: number,
  lowest: number,
): void {
  const place = new Spherical().setFromVector3(camera.position.clone().sub(target));
  place.theta += (rightDeg * Math.PI) / 180;
  place.phi = Math.min(lowest, Math.max(0.05, place.phi - (upDeg * Math.PI) / 180));
  camera.position.setFromSpherical(place).add(target);
  camera.lookAt(target);
}
