import { type TipBallast, tipBallast } from '../../engine/balance/ballast';
import type { TravelPoint } from '../../engine/balance/travel';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import { pieces } from '../airframe/pieces';
import type { Aircraft } from '../document/types';

/** The pair of figures that levels an aircraft: the mass at a tip, and the station shift that it brings. */
export interface LevelTip extends TipBallast {
  /** The light side, where it goes. */
  readonly side: 'left' | 'right';
  /** Where it would sit: the middle of the tip chord, aircraft frame. */
  readonly tipMm: Vec3;
}

/** A mass and where its CG is, aircraft frame. */
export type MassAt = Pick<TravelPoint, 'massG' | 'cgMm'>;

/**
 * What it takes at the light wing tip to level an aircraft of this mass and CG, and how far that moves the CG along (aft +,
 * as with a tip that is swept back). Null where the CG is on the plane of symmetry, and where no flying surface reaches out
 * to the light side.
 */
export function levelTip(aircraft: Aircraft, { massG, cgMm }: MassAt): LevelTip | null {
  const side = cgMm[1] > 0 ? 'left' : 'right';
  const tipMm = wingTip(aircraft, side);
  const ballast = tipMm && tipBallast(massG, cgMm, tipMm);
  return tipMm && ballast && ballast.massG > 0 ? { ...ballast, side, tipMm } : null;
}

/** The middle of the chord at the flying surfaces' outermost tip on one side, aircraft frame; null without one. */
export function wingTip(aircraft: Aircraft, side: 'left' | 'right'): Vec3 | null {
  const out = side === 'left' ? -1 : 1;
  let outermost: Vec3 | null = null;
  for (const { shape, pose, mirrored } of pieces(aircraft)) {
    if (shape.kind !== 'panel') continue;
    const posed = pointToAircraft(pose, [shape.sweepMm + shape.tipChordMm / 2, shape.spanMm, shape.riseMm]);
    const tip = mirrored ? mirrorY(posed) : posed;
    if (out * tip[1] > Math.max(0, outermost ? out * outermost[1] : 0)) outermost = tip;
  }
  return outermost;
}
