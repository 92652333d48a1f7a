import type { Vec3 } from '../geometry/types';
import { checkSurface } from './checkSurface';
import type { LiftingSurface, WingPanel } from './types';

const DEG = Math.PI / 180;

/** One panel of the right half set down on the aircraft, before twist and incidence. */
export interface PanelEdges {
  readonly panel: WingPanel;
  /** Leading edge at the panel's root and tip, aircraft frame, mm. Chords run aft along x. */
  readonly rootMm: Vec3;
  readonly tipMm: Vec3;
  /** Cant and dihedral together: the slope of the span line in the y-z plane. */
  readonly slopeRad: number;
  /** Length along that slope, seen along x, mm. */
  readonly lengthMm: number;
}

/** The panels of a surface's right half, root to tip. Throws on impossible geometry. */
export function panelEdges(surface: LiftingSurface): PanelEdges[] {
  checkSurface(surface);
  let rootMm = surface.rootMm;
  return surface.panels.map((panel) => {
    const slopeRad = (surface.cantDeg + panel.dihedralDeg) * DEG;
    const lengthMm = panel.spanMm / Math.cos(panel.dihedralDeg * DEG);
    const tipMm: Vec3 = [
      rootMm[0] + panel.sweepMm,
      rootMm[1] + lengthMm * Math.cos(slopeRad),
      rootMm[2] + lengthMm * Math.sin(slopeRad),
    ];
    const edges = { panel, rootMm, tipMm, slopeRad, lengthMm };
    rootMm = tipMm;
    return edges;
  });
}
