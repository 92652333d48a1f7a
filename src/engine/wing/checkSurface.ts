import type { LiftingSurface, WingPanel } from './types';

const PANEL_FIELDS = [
  'spanMm',
  'rootChordMm',
  'tipChordMm',
  'sweepMm',
  'dihedralDeg',
  'rootTwistDeg',
  'tipTwistDeg',
] as const satisfies readonly (keyof WingPanel)[];

/** Throws, naming surface, panel, field, what was expected and what came, if the surface cannot be computed. */
export function checkSurface(surface: LiftingSurface): void {
  const where = `lifting surface "${surface.name}"`;
  const placing = [...surface.rootMm, surface.cantDeg, surface.incidenceDeg];
  if (placing.some((value) => !Number.isFinite(value))) {
    throw new Error(`${where}: root, cant and incidence must be numbers, got ${placing.join(', ')}`);
  }
  if (surface.sides === 'both' && surface.rootMm[1] < 0) {
    throw new Error(
      `${where}: the right half's root cannot lie left of the plane of symmetry, got ${surface.rootMm[1]}`,
    );
  }
  if (surface.panels.length === 0) throw new Error(`${where}: needs at least one panel, got none`);
  surface.panels.forEach((panel, index) => {
    checkPanel(panel, `${where}, panel ${index + 1}`);
  });
}

function checkPanel(panel: WingPanel, where: string): void {
  for (const field of PANEL_FIELDS) {
    if (!Number.isFinite(panel[field])) {
      throw new Error(`${where}: ${field} must be a number, got ${panel[field]}`);
    }
  }
  if (panel.spanMm <= 0) throw new Error(`${where}: spanMm must be above 0, got ${panel.spanMm}`);
  if (panel.rootChordMm < 0 || panel.tipChordMm < 0 || panel.rootChordMm + panel.tipChordMm === 0) {
    throw new Error(
      `${where}: chords must not be negative, nor both 0, got ${panel.rootChordMm} and ${panel.tipChordMm}`,
    );
  }
  if (Math.abs(panel.dihedralDeg) >= 90) {
    throw new Error(`${where}: dihedralDeg must lie between -90 and 90, got ${panel.dihedralDeg}`);
  }
}
