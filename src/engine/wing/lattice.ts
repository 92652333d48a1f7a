import type { Vec3 } from '../geometry/types';
import { type Chain, chainLengthMm, chainLine } from './chains';
import { acrossMm, between, type ChordLine, type Stretch } from './stretch';
import { cutStrips, type TipSpacing } from './stripEdges';

/** How finely one chain is cut. */
export interface Grid {
  /** Chordwise rows. */
  readonly rows: number;
  /** Spanwise strips along the whole chain. */
  readonly strips: number;
  readonly tip: TipSpacing;
}

/**
 * The part of the lattice on one chain: `rows` × `strips` horseshoes, numbered row by row (leading row
 * first) and start to end in a row. Each row has strips + 1 nodes, shared by neighbouring horseshoes.
 */
export interface Patch {
  /** Patches with the same number meet at an edge: one lattice, without cores between them. */
  readonly component: number;
  readonly rows: number;
  readonly strips: number;
  readonly firstHorseshoe: number;
  readonly firstNode: number;
  /** Index of the surface that each strip's control line lies on, and how that runs: 1 root to tip. */
  readonly surfaces: readonly number[];
  readonly along: readonly (1 | -1)[];
  /** Chord on the control line of each strip, mm. */
  readonly chordsMm: readonly number[];
  /** Where that line lies between the strip's edges: 0 first, 1 second. */
  readonly controlShares: readonly number[];
  /** The chord line it starts from: station of its leading edge, and length, mm. */
  readonly startMm: number;
  readonly startChordMm: number;
  /** Core radius of its vortices as felt by *other* components: its widest strip, mm. */
  readonly coreMm: number;
}

/**
 * Horseshoe vortices on the right halves of all surfaces; the left halves are their images.
 * Triples x, y, z in mm, aircraft frame: bound legs at a quarter and control points at three quarters
 * of each lattice cell's chord, trailing legs from the nodes aft along x.
 *
 * A strip is the flat trapezium between two chord lines of its chain, wherever panels end: what the lattice
 * sees depends on the shape alone, not on how it was entered, and changes smoothly with it.
 *
 * Sweep, dihedral, cant and offsets are in the points; twist and incidence turn the normals only, as
 * linear theory has it (Margason & Lamar, NASA TN D-6142, 1971, from memory). Were the points turned
 * too, legs along x would leave the surface, and the answer would drift as strips get narrower.
 */
export interface Lattice {
  readonly patches: readonly Patch[];
  /** Number of unknowns. */
  readonly size: number;
  readonly nodes: Float64Array;
  readonly controls: Float64Array;
  /** Unit normals at the control points, up for a flat wing. */
  readonly normals: Float64Array;
}

/** Cuts chains into a lattice, one grid each. Throws on impossible grids. */
export function buildLattice(chains: readonly Chain[], grids: readonly Grid[]): Lattice {
  const nodes: number[] = [];
  const controls: number[] = [];
  const normals: number[] = [];
  const patches = chains.map((chain, index) => {
    const { rows, strips: count, tip } = checkGrid(grids[index]);
    const lengthMm = chainLengthMm(chain);
    const strips = cutStrips(count, tip, chain.start, chain.end);
    const lines = strips.edges.map((t) => chainLine(chain, t * lengthMm).line);
    const widths = strips.middles.map((_, k) => acrossMm(lines[k] as ChordLine, lines[k + 1] as ChordLine));
    const shares = strips.middles.map((t, k) => {
      const inner = strips.edges[k] as number;
      return (t - inner) / ((strips.edges[k + 1] as number) - inner);
    });
    const middles = shares.map((share, k) =>
      between(lines[k] as ChordLine, lines[k + 1] as ChordLine, share),
    );
    const places = strips.middles.map((t) => chainLine(chain, t * lengthMm));
    const patch: Patch = {
      component: chain.component,
      rows,
      strips: count,
      firstHorseshoe: controls.length / 3,
      firstNode: nodes.length / 3,
      surfaces: places.map(({ stretch }) => stretch.surface),
      along: places.map(({ stretch }) => stretch.along),
      chordsMm: middles.map(({ chordMm }) => chordMm),
      controlShares: shares,
      startMm: (lines[0] as ChordLine).leadingMm[0],
      startChordMm: (lines[0] as ChordLine).chordMm,
      coreMm: Math.max(...widths),
    };
    for (let row = 0; row < rows; row++) {
      for (const line of lines) nodes.push(...onChord(line, (row + 0.25) / rows));
      middles.forEach((middle, k) => {
        const { stretch, share } = places[k] as { stretch: Stretch; share: number };
        controls.push(...onChord(middle, (row + 0.75) / rows));
        normals.push(...stripNormal(lines[k] as ChordLine, lines[k + 1] as ChordLine, stretch, share));
      });
    }
    return patch;
  });
  return {
    patches,
    size: controls.length / 3,
    nodes: Float64Array.from(nodes),
    controls: Float64Array.from(controls),
    normals: Float64Array.from(normals),
  };
}

function checkGrid(grid: Grid | undefined): Grid {
  if (grid === undefined) throw new Error('lattice: expected a grid for each chain');
  if (![grid.rows, grid.strips].every((count) => Number.isInteger(count) && count > 0)) {
    throw new Error(
      `lattice: rows and strips must be whole numbers above 0, got ${grid.rows} and ${grid.strips}`,
    );
  }
  return grid;
}

/** Point on a chord line at a share of the chord, mm. */
function onChord({ leadingMm, chordMm }: ChordLine, share: number): Vec3 {
  return [leadingMm[0] + share * chordMm, leadingMm[1], leadingMm[2]];
}

/**
 * Unit normal of a strip, aircraft frame: its slope in the y-z plane is that of its own trace; incidence and
 * twist lean it as a turn about the surface's own y axis does.
 */
function stripNormal(inner: ChordLine, outer: ChordLine, stretch: Stretch, share: number): Vec3 {
  const noseUp = stretch.noseUpFromRad + (stretch.noseUpToRad - stretch.noseUpFromRad) * share;
  const dy = outer.leadingMm[1] - inner.leadingMm[1];
  const dz = outer.leadingMm[2] - inner.leadingMm[2];
  const width = Math.hypot(dy, dz);
  const x = stretch.along * Math.sin(noseUp) * stretch.cosDihedral;
  const y = (-Math.cos(noseUp) * dz) / width;
  const z = (Math.cos(noseUp) * dy) / width;
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
