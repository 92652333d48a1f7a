import { type Camera, OrthographicCamera, PerspectiveCamera, type Vector3 } from 'three';

interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** How much of the model a CSS pixel covers across the picture at a point of the scene's world, mm. */
export function mmPerPixel(camera: Camera, { width, height }: PictureSize, at: Vector3): number {
  if (camera instanceof OrthographicCamera) return (camera.right - camera.left) / width;
  if (!(camera instanceof PerspectiveCamera)) return 1;
  return (2 * at.distanceTo(camera.position) * Math.tan((camera.fov * Math.PI) / 360)) / height;
}

/** How much more a pixel covers up the picture than across it: 1, but for the span of a wide wing seen from above. */
export const stretchOf = (camera: Camera, { width, height }: PictureSize): number =>
  camera instanceof OrthographicCamera
    ? (camera.top - camera.bottom) / height / ((camera.right - camera.left) / width)
    : 1;
