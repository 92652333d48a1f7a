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

/**
 * Unit normal of a panel's surface at a span fraction, aircraft frame: chord direction, turned nose up by
 * incidence and local twist about the surface's own y axis, crossed with the span direction.
 */
export function panelNormal(
  surface: LiftingSurface,
  { panel, slopeRad }: PanelEdges,
  spanFraction: number,
): Vec3 {
  const twistDeg = panel.rootTwistDeg + (panel.tipTwistDeg - panel.rootTwistDeg) * spanFraction;
  const noseUp = (surface.incidenceDeg + twistDeg) * DEG;
  const x = Math.sin(noseUp) * Math.cos(panel.dihedralDeg * DEG);
  const y = -Math.cos(noseUp) * Math.sin(slopeRad);
  const z = Math.cos(noseUp) * Math.cos(slopeRad);
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
