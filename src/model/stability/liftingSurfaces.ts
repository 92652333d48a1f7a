import { perObject } from '../../engine/memory/memory';
import { checkSurface } from '../../engine/wing/checkSurface';
import { halvesAmong, withHalvesJoined } from '../../engine/wing/halves';
import type { LiftingSurface, WingPanel } from '../../engine/wing/types';
import type { Aircraft, Surface } from '../document/types';

/**
 * The aircraft's flying surfaces as the wing engine takes them, in the file's order; a wing that was entered as two halves,
 * each a piece of its own, is the pair that it is. Impossible geometry is left as it stands, for the engine to refuse.
 */
export const liftingSurfaces = ({ structure }: Pick<Aircraft, 'structure'>): readonly LiftingSurface[] =>
  ofStructure(structure);

const ofStructure = perObject((structure: Aircraft['structure']): readonly LiftingSurface[] => {
  const surfaces = surfacesOf(structure);
  return isPossible(surfaces) ? withHalvesJoined(surfaces) : surfaces;
});

const surfacesOf = (structure: Aircraft['structure']): readonly LiftingSurface[] =>
  structure.filter((element) => element.kind === 'surface').map(liftingSurface);

/** The id that a surface goes by among `liftingSurfaces`: of a half of a wing that is joined there, the right one's. */
export function liftingId(structure: Aircraft['structure'], id: string): string {
  const surfaces = surfacesOf(structure);
  if (!isPossible(surfaces)) return id;
  return halvesAmong(surfaces).find(({ left }) => left.id === id)?.right.id ?? id;
}

function isPossible(surfaces: readonly LiftingSurface[]): boolean {
  try {
    for (const surface of surfaces) checkSurface(surface);
    return true;
  } catch {
    return false;
  }
}

/** One flying surface as the wing engine takes it; the same object again while the surface is unchanged. */
export const liftingSurface = perObject((surface: Surface): LiftingSurface => {
  const { id, name, rootMm, cantDeg, incidenceDeg, sides } = surface;
  return { id, name, rootMm, cantDeg, incidenceDeg, sides, panels: wingPanels(surface) };
});

function wingPanels(surface: Surface): readonly WingPanel[] {
  return surface.panels.map((panel, index) => {
    const inner = surface.panels[index - 1];
    return {
      spanMm: panel.spanMm,
      rootChordMm: inner?.tipChordMm ?? surface.rootChordMm,
      tipChordMm: panel.tipChordMm,
      sweepMm: panel.sweepMm,
      dihedralDeg: panel.dihedralDeg,
      rootTwistDeg: inner?.twistDeg ?? 0,
      tipTwistDeg: panel.twistDeg,
    };
  });
}
