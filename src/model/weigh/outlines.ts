import { convexHull } from '../../engine/geometry/convexHull';
import type { Corner } from '../../engine/geometry/polygon';
import { pointToAircraft } from '../../engine/geometry/rotation';
import { mirrorY } from '../../engine/geometry/vec3';
import { tessellate } from '../../engine/mass/tessellate';
import { perObject } from '../../engine/memory/memory';
import { type Piece, type PieceKind, pieces } from '../airframe/pieces';
import type { Aircraft } from '../document/types';

/** The outline of one solid of the airframe, seen square from a side. */
export interface Outline {
  readonly id: string;
  readonly kind: PieceKind;
  /** [station, waterline] or [station, buttline], mm. */
  readonly corners: readonly Corner[];
}

/** Enough for a small drawing. */
const SEGMENTS = 16;

const outlinesOfPiece = perObject((piece: Piece) => ({ side: outline(piece, 2), top: outline(piece, 1) }));

/** The airframe from the left side or from above, as the outline of each of its solids. */
export const outlinesOf = (aircraft: Aircraft, view: 'side' | 'top'): readonly Outline[] =>
  pieces(aircraft).map((piece) => outlinesOfPiece(piece)[view]);

function outline(piece: Piece, across: 1 | 2): Outline {
  const { verticesMm } = tessellate(piece.shape, { segments: SEGMENTS });
  const corners = verticesMm.map((vertex): Corner => {
    const posed = pointToAircraft(piece.pose, vertex);
    const point = piece.mirrored ? mirrorY(posed) : posed;
    return [point[0], point[across]];
  });
  return { id: piece.id, kind: piece.kind, corners: convexHull(corners) };
}
