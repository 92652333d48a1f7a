import { type Camera, OrthographicCamera, PerspectiveCamera, type Vector3 } from 'three';

/** How much of the model a CSS pixel covers at a point of the scene's world, mm. */
export function mmPerPixel(camera: Camera, heightPx: number, at: Vector3): number {
  if (camera instanceof OrthographicCamera) return (camera.top - camera.bottom) / heightPx;
  if (!(camera instanceof PerspectiveCamera)) return 1;
  return (2 * at.distanceTo(camera.position) * Math.tan((camera.fov * Math.PI) / 360)) / heightPx;
}
