import type { Mat3, Vec3 } from '../geometry/types';

/** A box standing anyhow: its centre, the rotation from its own axes to the aircraft's, and half its size, mm. */
export interface OrientedBox {
  readonly centreMm: Vec3;
  readonly rotation: Mat3;
  readonly halfMm: Vec3;
}
