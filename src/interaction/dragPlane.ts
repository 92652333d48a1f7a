import type { Vec3 } from '../engine/geometry/types';
import type { View } from '../store/viewStore';

/** A pointer's ray in the aircraft's frame. */
export interface Ray {
  readonly originMm: Vec3;
  readonly direction: Vec3;
}

/**
 * The plane that a drag slides in, by its normal. The elevations drag in their own plane. The free view
 * drags level, or, with `upright`, in the vertical fore-and-aft plane.
 */
export function dragNormal(view: View, upright: boolean): Vec3 {
  switch (view) {
    case 'side':
      return [0, 1, 0];
    case 'top':
      return [0, 0, 1];
    case 'front':
      return [1, 0, 0];
    case 'free':
      return upright ? [0, 1, 0] : [0, 0, 1];
  }
}

/** Where a ray meets the plane through a point, mm; null where it runs along the plane or away from it. */
export function rayOnPlane(ray: Ray, throughMm: Vec3, normal: Vec3): Vec3 | null {
  const [ox, oy, oz] = ray.originMm;
  const [dx, dy, dz] = ray.direction;
  const [nx, ny, nz] = normal;
  const towards = dx * nx + dy * ny + dz * nz;
  if (Math.abs(towards) < 1e-6) return null;
  const t = ((throughMm[0] - ox) * nx + (throughMm[1] - oy) * ny + (throughMm[2] - oz) * nz) / towards;
  return t < 0 ? null : [ox + t * dx, oy + t * dy, oz + t * dz];
}

/** Where the item's origin goes when the point that was grabbed follows the pointer. */
export function followPointer(itemMm: Vec3, grabbedMm: Vec3, pointerMm: Vec3): Vec3 {
  return [
    itemMm[0] + pointerMm[0] - grabbedMm[0],
    itemMm[1] + pointerMm[1] - grabbedMm[1],
    itemMm[2] + pointerMm[2] - grabbedMm[2],
  ];
}
