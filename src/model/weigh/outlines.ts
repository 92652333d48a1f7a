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
  /** [station, waterline], [station, buttline] or [buttline, waterline], mm. */
  readonly corners: readonly Corner[];
}

/** Enough for a small drawing. */
const SEGMENTS = 16;

/** From the left side, from above, or from behind. */
export type OutlineView = 'side' | 'top' | 'behind';

/** The two axes that a view shows: first the one that runs to the right of the drawing. */
export const axesOfView: Readonly<Record<OutlineView, readonly [0 | 1 | 2, 0 | 1 | 2]>> = {
  side: [0, 2],
  top: [0, 1],
  behind: [1, 2],
};

const outlinesOfPiece = perObject((piece: Piece) => ({
  side: outline(piece, 'side'),
  top: outline(piece, 'top'),
  behind: outline(piece, 'behind'),
}));

/** The airframe seen square from a side, as the outline of each of its solids. */
export const outlinesOf = (aircraft: Aircraft, view: OutlineView): readonly Outline[] =>
  pieces(aircraft).map((piece) => outlinesOfPiece(piece)[view]);

/** The lowest waterline of hulls, wings and booms at a station, mm; 0 where there are none. */
export function undersideAt(aircraft: Aircraft, stationMm: number): number {
  const heights = outlinesOf(aircraft, 'side')
    .filter(({ kind }) => kind === 'hull' || kind === 'panel' || kind === 'boom')
    .flatMap(({ corners }) =>
      corners.flatMap(([ax, az], at): readonly number[] => {
        const [bx, bz] = corners[(at + 1) % corners.length]!;
        if ((ax - stationMm) * (bx - stationMm) > 0 || ax === bx) return [];
        return [az + ((bz - az) * (stationMm - ax)) / (bx - ax)];
      }),
    );
  return heights.length > 0 ? Math.min(...heights) : 0;
}

function outline(piece: Piece, view: OutlineView): Outline {
  const [right, up] = axesOfView[view];
  const { verticesMm } = tessellate(piece.shape, { segments: SEGMENTS });
  const corners = verticesMm.map((vertex): Corner => {
    const posed = pointToAircraft(piece.pose, vertex);
    const point = piece.mirrored ? mirrorY(posed) : posed;
    return [point[right], point[up]];
  });
  return { id: piece.id, kind: piece.kind, corners: convexHull(corners) };
}
