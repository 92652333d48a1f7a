import type { Vec3 } from '../geometry/types';
import type { VolumeProperties } from '../mass/types';

/** How much lies below a level plane, and how large the free surface is. */
export interface WetCut {
  readonly volumeMm3: number;
  readonly surfaceAreaMm2: number;
}

/**
 * A vessel held at one attitude. Planes are given by their offset along down: a point p is wet when
 * down · p ≥ offset, so a larger offset is a lower surface. All in the vessel's own frame.
 */
export interface TiltedVessel {
  /** No point of the vessel has a smaller down · p than this, mm. */
  readonly topMm: number;
  /** No point of the vessel has a greater down · p than this, mm. */
  readonly bottomMm: number;
  /** Wet volume and free-surface area; the area is −d(volume)/d(offset). */
  cut(offsetMm: number): WetCut;
  /** The wet region as a solid of unit density. */
  wetted(offsetMm: number): VolumeProperties;
}

/** The inside of a tank, ready to be held at any attitude. */
export interface Vessel {
  readonly full: VolumeProperties;
  /** `down` is a unit vector in the vessel's own frame. */
  tilt(down: Vec3): TiltedVessel;
}
