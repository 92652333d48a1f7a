import type { Vec3 } from '../geometry/types';
import { type PanelEdges, panelEdges, panelNormal } from './panelEdges';
import { cutStrips, type TipSpacing } from './stripEdges';
import type { LiftingSurface } from './types';

/** How finely one surface is cut. */
export interface Grid {
  /** Chordwise rows. */
  readonly rows: number;
  /** Spanwise strips of each panel, root to tip. */
  readonly strips: readonly number[];
  readonly tip: TipSpacing;
}

/**
 * The part of the lattice on one panel: `rows` × `strips` horseshoes, numbered row by row (leading row
 * first) and root to tip in a row. Each row has strips + 1 nodes, shared by neighbouring horseshoes.
 */
export interface Patch {
  /** Index into `Lattice.surfaces`. */
  readonly surface: number;
  readonly rows: number;
  readonly strips: number;
  readonly firstHorseshoe: number;
  readonly firstNode: number;
  /** Chord on the control line of each strip, mm. */
  readonly chordsMm: readonly number[];
  /** Where that line lies between the strip's edges: 0 inner, 1 outer. */
  readonly controlShares: readonly number[];
}

/**
 * Horseshoe vortices on the right halves of all surfaces; the left halves are their images.
 * Triples x, y, z in mm, aircraft frame: bound legs at a quarter and control points at three quarters
 * of each lattice cell's chord, trailing legs from the nodes aft along x.
 *
 * Sweep, dihedral, cant and offsets are in the points; twist and incidence turn the normals only, as
 * linear theory has it (Margason & Lamar, NASA TN D-6142, 1971, from memory). Were the points turned
 * too, legs along x would leave the surface, and the answer would drift as strips get narrower.
 */
export interface Lattice {
  readonly surfaces: readonly LiftingSurface[];
  readonly patches: readonly Patch[];
  /** Number of unknowns. */
  readonly size: number;
  readonly nodes: Float64Array;
  readonly controls: Float64Array;
  /** Unit normals at the control points, up for a flat wing. */
  readonly normals: Float64Array;
  /** Core radius of each surface's vortices as felt by the *other* surfaces, mm. */
  readonly coresMm: readonly number[];
}

/** Cuts surfaces (all `both`) into a lattice, one grid each. Throws on impossible geometry or grids. */
export function buildLattice(surfaces: readonly LiftingSurface[], grids: readonly Grid[]): Lattice {
  const nodes: number[] = [];
  const controls: number[] = [];
  const normals: number[] = [];
  const patches: Patch[] = [];
  const coresMm = surfaces.map((surface, index) => {
    const grid = checkGrid(surface, grids[index]);
    let widest = 0;
    panelEdges(surface).forEach((edges, k) => {
      const isTip = k === surface.panels.length - 1;
      const strips = cutStrips(grid.strips[k] as number, isTip ? grid.tip : 'flush');
      patches.push({
        surface: index,
        rows: grid.rows,
        strips: strips.middles.length,
        firstHorseshoe: controls.length / 3,
        firstNode: nodes.length / 3,
        chordsMm: strips.middles.map((t) => chordAt(edges, t)),
        controlShares: strips.middles.map((t, j) => {
          const inner = strips.edges[j] as number;
          return (t - inner) / ((strips.edges[j + 1] as number) - inner);
        }),
      });
      for (let row = 0; row < grid.rows; row++) {
        for (const t of strips.edges) nodes.push(...pointAt(edges, t, (row + 0.25) / grid.rows));
        for (const t of strips.middles) {
          controls.push(...pointAt(edges, t, (row + 0.75) / grid.rows));
          normals.push(...panelNormal(surface, edges, t));
        }
      }
      widest = Math.max(widest, (strips.edges[1] as number) * edges.lengthMm);
    });
    return widest;
  });
  return {
    surfaces,
    patches,
    size: controls.length / 3,
    nodes: Float64Array.from(nodes),
    controls: Float64Array.from(controls),
    normals: Float64Array.from(normals),
    coresMm,
  };
}

function checkGrid(surface: LiftingSurface, grid: Grid | undefined): Grid {
  if (surface.sides !== 'both') {
    throw new Error(`"${surface.name}" lies in the plane of symmetry: no lattice for it`);
  }
  if (grid?.strips.length !== surface.panels.length) {
    throw new Error(`grid of "${surface.name}": expected strips for ${surface.panels.length} panels`);
  }
  if (![grid.rows, ...grid.strips].every((count) => Number.isInteger(count) && count > 0)) {
    throw new Error(`grid of "${surface.name}": rows and strips must be whole numbers above 0`);
  }
  return grid;
}

function chordAt({ panel }: PanelEdges, spanFraction: number): number {
  return panel.rootChordMm + (panel.tipChordMm - panel.rootChordMm) * spanFraction;
}

/** Point of the untwisted panel at fractions of span and local chord, aircraft frame, mm. */
function pointAt(edges: PanelEdges, spanFraction: number, chordFraction: number): Vec3 {
  const { rootMm, tipMm } = edges;
  return [
    rootMm[0] + (tipMm[0] - rootMm[0]) * spanFraction + chordFraction * chordAt(edges, spanFraction),
    rootMm[1] + (tipMm[1] - rootMm[1]) * spanFraction,
    rootMm[2] + (tipMm[2] - rootMm[2]) * spanFraction,
  ];
}
