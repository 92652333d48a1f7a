import type { Vec3 } from '../geometry/types';
import { cross, dot } from '../geometry/vec3';
import type { Figure } from './figure';

/** A strip of a wing or tail that pushes air before it when it moves broadside. */
export interface AirStrip {
  readonly centreMm: Vec3;
  /** Unit, along the span. */
  readonly along: Vec3;
  /** Unit, square to the strip. */
  readonly normal: Vec3;
  readonly spanMm: number;
  readonly chordMm: number;
}

/** Air at sea level, g/mm³: 1.225 kg/m³ (ISO 2533). */
const AIR_G_MM3 = 1.225e-6;

/** What the estimate may be off by, one sigma as a share of it: half of it at two sigmas. Common practice, no source. */
const SHARE_UNSURE = 0.25;

/**
 * An estimate of the inertia of the air that swings along, g·mm²: each strip as a flat plate, added mass ρ·π·c²/4 for each mm of span
 * moving broadside and ρ·π·c⁴/128 turning about its own span (Lamb, Hydrodynamics, §71, from memory). Strip theory has no tips, so it
 * says rather too much. `axis` a unit direction through `aboutMm`.
 */
export function airSwungAlong(strips: readonly AirStrip[], axis: Vec3, aboutMm: Vec3): Figure {
  const value = strips.reduce((sum, { centreMm, along, normal, spanMm, chordMm }) => {
    const r: Vec3 = [centreMm[0] - aboutMm[0], centreMm[1] - aboutMm[1], centreMm[2] - aboutMm[2]];
    const broadside = dot(cross(axis, r), normal);
    const moved = ((AIR_G_MM3 * Math.PI * chordMm ** 2) / 4) * spanMm * broadside ** 2;
    const turned = ((AIR_G_MM3 * Math.PI * chordMm ** 4) / 128) * spanMm * dot(axis, along) ** 2;
    return sum + moved + turned;
  }, 0);
  return { value, sigma: SHARE_UNSURE * value };
}
