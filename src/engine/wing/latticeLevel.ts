import type { Grid } from './lattice';
import { planform } from './planform';
import { shareStrips } from './stripEdges';
import type { LiftingSurface } from './types';

const LEAST_ROWS = 2;
const LEAST_STRIPS = 4;

/**
 * Grids of one level of fineness: `level` rows on the main wing and 4 to 8 times as many strips on its
 * half, the more the greater its aspect ratio. The others get strips with the root of their span and rows
 * with the root of their area, since their own centre of lift weighs less; never fewer than 4 and 2.
 */
export function gridsAtLevel(
  surfaces: readonly LiftingSurface[],
  main: LiftingSurface,
  level: number,
): Grid[] {
  const mainLength = lengthMm(main);
  const { areaMm2: mainArea, aspectRatio } = planform(main, 'own');
  const stripsPerRow = Math.min(8, Math.max(4, 0.75 * aspectRatio));
  return surfaces.map((surface) => {
    const strips = stripsPerRow * level * Math.sqrt(lengthMm(surface) / mainLength);
    const rows = level * Math.min(1, Math.sqrt(planform(surface, 'own').areaMm2 / mainArea));
    return {
      rows: Math.max(LEAST_ROWS, Math.round(rows)),
      strips: shareStrips(panelLengths(surface), Math.max(LEAST_STRIPS, Math.round(strips))),
      tip: 'inset',
    };
  });
}

/** How many horseshoes grids make. */
export function unknownsOf(grids: readonly Grid[]): number {
  return grids.reduce((sum, { rows, strips }) => sum + rows * strips.reduce((a, b) => a + b, 0), 0);
}

/** Lengths of a surface's panels along their dihedral slope, mm. */
function panelLengths(surface: LiftingSurface): number[] {
  return surface.panels.map(({ spanMm, dihedralDeg }) => spanMm / Math.cos((dihedralDeg * Math.PI) / 180));
}

function lengthMm(surface: LiftingSurface): number {
  return panelLengths(surface).reduce((sum, length) => sum + length, 0);
}
