import type { NamedSeam } from '../../engine/wing/neutralPoint';
import { onePiecePair } from '../../engine/wing/onePiece';
import type { LiftingSurface } from '../../engine/wing/types';

/** How the estimate took a piece of geometry, where that could surprise. Lengths in mm. */
export type GeometryNote =
  | {
      readonly about: 'gap';
      readonly name: string;
      /** The other surface; null for the gap between the two halves. */
      readonly withName: string | null;
      readonly gapMm: number;
      /** How far it counts as joined all the same, 0 … 1. */
      readonly joined: number;
    }
  | { readonly about: 'onePiece' | 'leftOut'; readonly name: string };

/** Steeper than this a pair stands up: nobody expects its roots to meet. */
const STANDING_DEG = 75;

/** What is to be said of gaps, one-piece surfaces and fins. */
export function geometryNotes(
  surfaces: readonly LiftingSurface[],
  seams: readonly NamedSeam[],
): readonly GeometryNote[] {
  const nameOf = (id: string) => surfaces.find((surface) => surface.id === id)?.name ?? id;
  const notes: GeometryNote[] = [];
  for (const surface of surfaces) {
    if (surface.sides === 'centre') {
      const { name } = surface;
      if (onePiecePair(surface)) notes.push({ about: 'onePiece', name });
      else if (Math.abs(surface.cantDeg) < STANDING_DEG) notes.push({ about: 'leftOut', name });
      continue;
    }
    const gapMm = 2 * surface.rootMm[1];
    const joined = joinedAtMiddle(surface, seams);
    if (gapMm > 0 && joined < 1 && Math.abs(surface.cantDeg) < STANDING_DEG) {
      notes.push({ about: 'gap', name: surface.name, withName: null, gapMm, joined });
    }
  }
  for (const { surfaceId, withId, weight, gapMm } of seams) {
    if (withId === null || weight === 1) continue;
    notes.push({
      about: 'gap',
      name: nameOf(surfaceId),
      withName: nameOf(withId),
      gapMm,
      joined: weight,
    });
  }
  return notes;
}

/** How far a half counts as joined at its root, to the other half or to another piece, or at its tip to the other half. */
function joinedAtMiddle({ id }: LiftingSurface, seams: readonly NamedSeam[]): number {
  return seams.reduce((most, { surfaceId, end, withId, weight }) => {
    const meets = surfaceId === id ? withId === null || end === 'root' : withId === id;
    return meets ? Math.max(most, weight) : most;
  }, 0);
}
