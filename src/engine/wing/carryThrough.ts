import { checkSurface } from './checkSurface';
import type { LiftingSurface } from './types';

/**
 * Carries a surface whose roots end at the fuselage's sides straight through to the plane of symmetry
 * with its root chord and root twist, if its root buttline lies between 0 and `withinMm` (half the
 * fuselage's width, say). The lift of a wing carries over the body; a gap there would be wrong.
 * Common practice for the reference area too. Other surfaces are returned as they are.
 */
export function carryThrough(surface: LiftingSurface, withinMm: number): LiftingSurface {
  const [x, gap, z] = surface.rootMm;
  if (surface.sides !== 'both' || !(gap > 0 && gap <= withinMm) || Math.abs(surface.cantDeg) >= 75)
    return surface;
  checkSurface(surface);
  const root = surface.panels[0];
  if (root === undefined) return surface;
  const centre = {
    // level in the aircraft frame, so down by the cant in the surface's own
    spanMm: gap * Math.cos((surface.cantDeg * Math.PI) / 180),
    dihedralDeg: -surface.cantDeg,
    rootChordMm: root.rootChordMm,
    tipChordMm: root.rootChordMm,
    sweepMm: 0,
    rootTwistDeg: root.rootTwistDeg,
    tipTwistDeg: root.rootTwistDeg,
  };
  return { ...surface, rootMm: [x, 0, z], panels: [centre, ...surface.panels] };
}
