import { convexHull } from '../../engine/geometry/convexHull';
import type { Corner } from '../../engine/geometry/polygon';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Pose, Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import type { Shape } from '../../engine/mass/shapes';
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

/** Enough for a round to look round on paper; of a wing only the edges matter. */
const segmentsOf = ({ kind }: Shape): number => (kind === 'panel' ? 12 : 48);

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

const outline = (piece: Piece, view: OutlineView): Outline => ({
  id: piece.id,
  kind: piece.kind,
  corners: outlineOf(piece, view),
});

/** A solid as it is posed, and then mirrored if it says so. */
interface PosedSolid {
  readonly shape: Shape;
  readonly pose: Pose;
  readonly mirrored: boolean;
}

/**
 * The outline of a solid, seen square from a side: of a hull that lies along the aircraft its profile from the side and from
 * above, of all else the convex outline.
 */
export function outlineOf({ shape, pose, mirrored }: PosedSolid, view: OutlineView): readonly Corner[] {
  const [right, up] = axesOfView[view];
  const points =
    profilePoints(shape, pose, view) ?? tessellate(shape, { segments: segmentsOf(shape) }).verticesMm;
  const corners = points.map((vertex): Corner => {
    const posed = pointToAircraft(pose, vertex);
    const point = mirrored ? mirrorY(posed) : posed;
    return [point[right], point[up]];
  });
  return points.length > 0 && isProfile(shape, pose, view) ? corners : convexHull(corners);
}

const isProfile = ({ kind }: Shape, { yawDeg, pitchDeg, rollDeg }: Pose, view: OutlineView): boolean =>
  kind === 'loft' && view !== 'behind' && yawDeg === 0 && pitchDeg === 0 && rollDeg === 0;

/** Out along one edge of the sections and back along the other; null for what has no profile of its own. */
function profilePoints(shape: Shape, pose: Pose, view: OutlineView): readonly Vec3[] | null {
  if (shape.kind !== 'loft' || !isProfile(shape, pose, view)) return null;
  const edge = (side: 1 | -1) =>
    shape.sections.map(
      ({ xMm, widthMm, heightMm, centreYMm, centreZMm }): Vec3 =>
        view === 'top'
          ? [xMm, centreYMm + (side * widthMm) / 2, centreZMm]
          : [xMm, centreYMm, centreZMm + (side * heightMm) / 2],
    );
  return [...edge(-1), ...edge(1).reverse()];
}
