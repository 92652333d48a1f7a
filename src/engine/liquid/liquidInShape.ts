import type { Vec3 } from '../geometry/types';
import { normalise } from '../geometry/vec3';
import type { Shape } from '../mass/shapes';
import { tensorScale, zeroTensor } from '../mass/tensor';
import type { VolumeProperties } from '../mass/types';
import { surfaceLevel } from './surfaceLevel';
import { vesselOf } from './vesselOf';

/** Liquid at rest in a shape, in the shape's own frame. */
export interface ShapeLiquid {
  /** The wet region as a solid of unit density. */
  readonly volumeProperties: VolumeProperties;
  /** The free surface is where down · p = this, mm; null when the shape is empty or brim-full. */
  readonly surfaceOffsetMm: number | null;
}

/** More than full by this share is rounding in the figures, and counts as full. */
const ROUNDING = 1e-9;

/** Whether a volume is more than a shape holds, both in the same unit. */
export const isOverfull = (volume: number, holds: number): boolean => volume > holds * (1 + ROUNDING);

/** A share of full too small for a level of its own: within it of empty is empty, within it of full is brim-full. */
const DROP = 1e-12;

const EMPTY: ShapeLiquid = {
  volumeProperties: { volumeMm3: 0, centroidMm: null, inertiaAboutCentroidMm5: zeroTensor },
  surfaceOffsetMm: null,
};

/**
 * Lets `volumeMm3` of liquid find its level in a shape. `down` is the direction of apparent gravity in the shape's own
 * frame (any length). The volume is met, and centroid and inertia are those of the shape itself, not of its facets:
 * closed forms for polyhedra, spheres and ellipsoids, closed-form sections integrated to about 1e-10 for cylinders,
 * cones, capsules and lofts.
 *
 * Throws when the shape cannot be a tank, the volume is negative or more than the shape holds, or down has no direction.
 */
export function liquidInShape(shape: Shape, volumeMm3: number, down: Vec3): ShapeLiquid {
  const vessel = vesselOf(shape);
  const fullMm3 = vessel.full.volumeMm3;
  if (!(volumeMm3 >= 0))
    throw new RangeError(`Liquid: expected a volume of 0 mm³ or more, got ${volumeMm3}.`);
  if (isOverfull(volumeMm3, fullMm3)) {
    throw new RangeError(
      `Liquid: ${volumeMm3} mm³ is more than the ${fullMm3} mm³ that the ${shape.kind} holds.`,
    );
  }
  if (volumeMm3 <= fullMm3 * DROP) return EMPTY;
  if (volumeMm3 >= fullMm3 * (1 - DROP)) return { volumeProperties: vessel.full, surfaceOffsetMm: null };
  const tilted = vessel.tilt(unitDown(down));
  const surfaceOffsetMm = surfaceLevel(tilted, fullMm3, volumeMm3);
  return { volumeProperties: ofVolume(tilted.wetted(surfaceOffsetMm), volumeMm3), surfaceOffsetMm };
}

/** A body of the very volume asked for; the level's last digit can be worth more than that in a nearly empty tank. */
function ofVolume(found: VolumeProperties, volumeMm3: number): VolumeProperties {
  return {
    volumeMm3,
    centroidMm: found.centroidMm,
    inertiaAboutCentroidMm5: tensorScale(found.inertiaAboutCentroidMm5, volumeMm3 / found.volumeMm3),
  };
}

/** `down` as a unit vector; throws when it has no direction. */
export function unitDown(down: Vec3): Vec3 {
  const unit = normalise(down);
  if (!unit) throw new RangeError(`Liquid: expected a direction of down, got [${down.join(', ')}].`);
  return unit;
}
