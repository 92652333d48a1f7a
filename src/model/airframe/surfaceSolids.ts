import { convexOfPoints } from '../../engine/fit/convex';
import { type PosedPanel, panelStretches } from '../../engine/fit/panelHolds';
import { type Solid, solidOfConvexes } from '../../engine/fit/solid';
import { pointToAircraft } from '../../engine/geometry/rotation';
import { mirrorY } from '../../engine/geometry/vec3';
import type { PanelShape } from '../../engine/mass/shapes';
import { perObject } from '../../engine/memory/memory';
import type { Aircraft, Surface } from '../document/types';
import { elementPieces, type Piece } from './pieces';

/** One side of a flying surface as a solid: all its panels. */
export interface SurfaceSolid {
  /** "wing.right", or the surface's own id where it is not one of a pair. */
  readonly id: string;
  readonly sourceId: string;
  readonly name: string;
  readonly panels: readonly PosedPanel[];
  /** The boxes about the panels, one for each. */
  readonly panelBoxes: readonly Solid[];
  readonly solid: Solid;
  /** Inside a hull it is cut away, and items may reach from one into the other. */
  readonly openToHull: boolean;
}

/** Every flying surface, each side for itself; the same list while the structure does not change. */
export const surfaceSolids = ({ structure }: Pick<Aircraft, 'structure'>): readonly SurfaceSolid[] =>
  structureSurfaces(structure);

const structureSurfaces = perObject((structure: Aircraft['structure']): readonly SurfaceSolid[] =>
  structure.flatMap((element) => (element.kind === 'surface' ? sidesOf(element) : [])),
);

const sidesOf = perObject((surface: Surface): readonly SurfaceSolid[] => {
  const all = elementPieces(surface);
  return [...new Set(all.map(({ side }) => side))].map((side) => {
    const pieces = all.filter((piece) => piece.side === side);
    const panelBoxes = pieces.map((piece) => solidOfConvexes(panelConvexes(piece)));
    const { id: sourceId, name, openToHull = false } = surface;
    return {
      id: side === 'centre' ? sourceId : `${sourceId}.${side}`,
      sourceId,
      name,
      panels: pieces.map(posedPanel),
      panelBoxes,
      solid: solidOfConvexes(panelBoxes.flatMap(({ convexes }) => convexes)),
      openToHull,
    };
  });
});

const posedPanel = ({ shape, pose, mirrored }: Piece): PosedPanel => ({
  shape: shape as PanelShape,
  pose,
  mirrored,
});

const panelConvexes = ({ shape, pose, mirrored }: Piece) =>
  panelStretches(shape as PanelShape).map((points) =>
    convexOfPoints(
      points.map((point) => {
        const placed = pointToAircraft(pose, point);
        return mirrored ? mirrorY(placed) : placed;
      }),
    ),
  );
