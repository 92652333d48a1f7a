import type { Vec3 } from '../geometry/types';
import { panelEdges } from './panelEdges';
import type { LiftingSurface } from './types';

/** A chord line across a surface: its leading edge, aircraft frame, and its length aft along x; mm. */
export interface ChordLine {
  readonly leadingMm: Vec3;
  readonly chordMm: number;
}

/** A straight-tapered stretch of a chain between two chord lines of the right half. */
export interface Stretch {
  /** Index of the surface it belongs to; a bridge belongs to the surface it starts from. */
  readonly surface: number;
  readonly from: ChordLine;
  readonly to: ChordLine;
  /** Incidence and twist, nose up +, rad. */
  readonly noseUpFromRad: number;
  readonly noseUpToRad: number;
  /** cos of the dihedral in the surface's own frame: how twist about its y axis leans the normal. */
  readonly cosDihedral: number;
  /** 1 run root to tip, −1 the other way. */
  readonly along: 1 | -1;
}

const DEG = Math.PI / 180;

/** The panels of a surface's right half as stretches, root to tip. Throws on impossible geometry. */
export function stretchesOf(surface: LiftingSurface, index: number): Stretch[] {
  return panelEdges(surface).map(({ panel, rootMm, tipMm }) => ({
    surface: index,
    from: { leadingMm: rootMm, chordMm: panel.rootChordMm },
    to: { leadingMm: tipMm, chordMm: panel.tipChordMm },
    noseUpFromRad: (surface.incidenceDeg + panel.rootTwistDeg) * DEG,
    noseUpToRad: (surface.incidenceDeg + panel.tipTwistDeg) * DEG,
    cosDihedral: Math.cos(panel.dihedralDeg * DEG),
    along: 1,
  }));
}

/** The same stretches run from the other end. */
export function reversed(stretches: readonly Stretch[]): Stretch[] {
  return stretches.toReversed().map((stretch) => ({
    ...stretch,
    from: stretch.to,
    to: stretch.from,
    noseUpFromRad: stretch.noseUpToRad,
    noseUpToRad: stretch.noseUpFromRad,
    along: stretch.along === 1 ? -1 : 1,
  }));
}

/** Length across the flow, in the y-z plane, mm. */
export function stretchLengthMm({ from, to }: Stretch): number {
  return acrossMm(from, to);
}

/** Distance between two chord lines across the flow, mm. */
export function acrossMm(a: ChordLine, b: ChordLine): number {
  return Math.hypot(b.leadingMm[1] - a.leadingMm[1], b.leadingMm[2] - a.leadingMm[2]);
}

/** The chord line a share of the way from one to another. */
export function between(a: ChordLine, b: ChordLine, share: number): ChordLine {
  const at = (axis: 0 | 1 | 2) => a.leadingMm[axis] + (b.leadingMm[axis] - a.leadingMm[axis]) * share;
  return { leadingMm: [at(0), at(1), at(2)], chordMm: a.chordMm + (b.chordMm - a.chordMm) * share };
}

/** A stretch that goes on from `from` to `to` with the incidence of the stretch it carries on. */
export function bridge(model: Stretch, from: ChordLine, to: ChordLine, noseUpRad: number): Stretch {
  return {
    ...model,
    from,
    to,
    noseUpFromRad: noseUpRad,
    noseUpToRad: noseUpRad,
  };
}
