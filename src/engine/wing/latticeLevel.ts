import type { Chain } from './chains';
import type { Grid } from './lattice';

/** Strips for each row on the main wing's half and on the others; the others' rows for each of the wing's. */
const MAIN_STRIPS = 5;
const OTHER_STRIPS = 3;
const OTHER_ROWS = 0.6;
const LEAST_ROWS = 2;
const LEAST_STRIPS = 4;

/**
 * Grids of one level of fineness: `level` rows on the chain of the main wing, fewer on the others, whose own
 * centre of lift weighs less. Sizes do not enter: a count that went by them would change in mid-drag, and
 * the neutral point with it.
 */
export function gridsAtLevel(chains: readonly Chain[], mainSurfaceIndex: number, level: number): Grid[] {
  return chains.map(({ stretches }) => {
    const isMain = stretches.some(({ surface }) => surface === mainSurfaceIndex);
    return {
      rows: Math.max(LEAST_ROWS, Math.round(level * (isMain ? 1 : OTHER_ROWS))),
      strips: Math.max(LEAST_STRIPS, level * (isMain ? MAIN_STRIPS : OTHER_STRIPS)),
      tip: 'cosine',
    };
  });
}

/** How many horseshoes grids make. */
export function unknownsOf(grids: readonly Grid[]): number {
  return grids.reduce((sum, { rows, strips }) => sum + rows * strips, 0);
}
