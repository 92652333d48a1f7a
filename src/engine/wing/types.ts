import type { Vec3 } from '../geometry/types';

/**
 * One straight-tapered panel of a lifting surface, in the surface's own frame: x aft, y along the
 * span, z up. The panel starts where the one before it ended. Lengths in mm, angles in degrees.
 */
export interface WingPanel {
  /** Along the surface's own y axis (projected, not along the dihedral slope); above 0. */
  readonly spanMm: number;
  readonly rootChordMm: number;
  /** May be 0. */
  readonly tipChordMm: number;
  /** Tip leading edge aft of this panel's root leading edge, before twist. */
  readonly sweepMm: number;
  /** Tip up +; the tip rises by span·tan(dihedral). Between −90 and 90, both excluded. */
  readonly dihedralDeg: number;
  /** Nose up +, about the section's own quarter-chord point. */
  readonly rootTwistDeg: number;
  readonly tipTwistDeg: number;
}

/**
 * A wing, tail, canard, V-tail or fin. The geometry given is the right half; `both` mirrors it in the
 * plane of symmetry, `centre` is a single surface that lies in that plane (a fin).
 *
 * How the half is set down: panels in the own frame, then turned nose up by `incidenceDeg` about the
 * own y axis through the root leading edge, then by `cantDeg` about the x axis through that point so
 * that the span rises (0 flat, 90 a fin), then moved to `rootMm`.
 */
export interface LiftingSurface {
  readonly id: string;
  readonly name: string;
  /** Root leading edge of the right half, aircraft frame. */
  readonly rootMm: Vec3;
  readonly cantDeg: number;
  readonly incidenceDeg: number;
  readonly sides: 'both' | 'centre';
  /** From root to tip; at least one. */
  readonly panels: readonly WingPanel[];
}
