import { pointToAircraft } from '../../engine/geometry/rotation';
import { pieceExtent } from '../airframe/extent';
import { elementPieces, pieces } from '../airframe/pieces';
import type { Aircraft } from '../document/types';
import { macSurface } from '../stability/band';

/** The leading edge and the chord of the wing at a buttline, right wing, mm. */
export interface EdgeAt {
  readonly name: string;
  readonly buttlineMm: number;
  readonly stationMm: number;
  readonly chordMm: number;
}

/**
 * The leading edge at a buttline of the wing that % MAC is read on, level and parallel to the centre line. The edge of a panel is
 * straight, so it lies on the line between its ends. Null without a wing, and beyond its ends.
 */
export function leadingEdgeAt(aircraft: Aircraft, buttlineMm: number): EdgeAt | null {
  const wing = macSurface(aircraft);
  if (!wing) return null;
  for (const { shape, pose, mirrored } of elementPieces(wing)) {
    if (mirrored || shape.kind !== 'panel') continue;
    const { spanMm, sweepMm, riseMm, rootChordMm, tipChordMm } = shape;
    const root = pointToAircraft(pose, [0, 0, 0]);
    const tip = pointToAircraft(pose, [sweepMm, spanMm, riseMm]);
    const share = (buttlineMm - root[1]) / (tip[1] - root[1]);
    if (!(share >= -1e-9 && share <= 1 + 1e-9)) continue;
    return {
      name: wing.name,
      buttlineMm,
      stationMm: root[0] + share * (tip[0] - root[0]),
      chordMm: rootChordMm + share * (tipChordMm - rootChordMm),
    };
  }
  return null;
}

/** Fingers want so much room beside the hull, mm. */
const BESIDE_MM = 20;
const STEP_MM = 10;

/** A buttline where fingers or supports reach the wing: just outside the root and whatever hull covers it. */
export function reachedButtline(aircraft: Aircraft): number | null {
  const wing = macSurface(aircraft);
  if (!wing) return null;
  const [, rootMm] = wing.rootMm;
  const middle = leadingEdgeAt(aircraft, rootMm);
  const widest = middle ? hullHalfWidth(aircraft, middle) : 0;
  const wantedMm = Math.ceil((Math.max(rootMm, widest) + BESIDE_MM) / STEP_MM) * STEP_MM;
  return leadingEdgeAt(aircraft, wantedMm) ? wantedMm : leadingEdgeAt(aircraft, rootMm) ? rootMm : null;
}

/** How far a hull on the centre line reaches sideways, if it stands over the wing’s root. */
function hullHalfWidth(aircraft: Aircraft, { stationMm, chordMm }: EdgeAt): number {
  const half = pieces(aircraft)
    .filter(({ kind, side }) => kind === 'hull' && side === 'centre')
    .map(pieceExtent)
    .filter(({ minMm, maxMm }) => minMm[0] < stationMm + chordMm && maxMm[0] > stationMm)
    .map(({ maxMm }) => maxMm[1]);
  return Math.max(0, ...half);
}
