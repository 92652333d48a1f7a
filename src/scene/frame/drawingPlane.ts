import { Matrix4, Vector3 } from 'three';
import type { View } from '../../store/viewStore';

/** Behind the model in side and front elevation, mm. */
const BACKDROP_MM = 8000;

/**
 * The plane that the mat lies in, as a frame of its own: u across the picture, v up it, both through the
 * datum so that the grid is registered, w towards the eye.
 */
export function drawingPlane(view: View, groundMm: number): Matrix4 {
  const at = (u: Vector3, v: Vector3, origin: Vector3) =>
    new Matrix4().makeBasis(u, v, u.clone().cross(v)).setPosition(origin);
  const x = new Vector3(1, 0, 0);
  const y = new Vector3(0, 1, 0);
  const z = new Vector3(0, 0, 1);
  switch (view) {
    case 'side':
      return at(x, z, new Vector3(0, BACKDROP_MM, 0));
    case 'front':
      return at(y.negate(), z, new Vector3(BACKDROP_MM, 0, 0));
    case 'top':
    case 'free':
      return at(x, y, new Vector3(0, 0, groundMm));
  }
}
