import { perObject } from '../../engine/memory/memory';
import type { LiftingSurface, WingPanel } from '../../engine/wing/types';
import type { Aircraft, Surface } from '../document/types';

/** The aircraft's flying surfaces as the wing engine takes them, in the file's order. */
export function liftingSurfaces({ structure }: Pick<Aircraft, 'structure'>): readonly LiftingSurface[] {
  return structure.filter((element) => element.kind === 'surface').map(liftingSurface);
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
