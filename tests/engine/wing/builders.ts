import { chainOf } from '../../../src/engine/wing/chains';
import { buildLattice, type Grid, type Lattice } from '../../../src/engine/wing/lattice';
import { gridsAtLevel } from '../../../src/engine/wing/latticeLevel';
import type { LiftingSurface, WingPanel } from '../../../src/engine/wing/types';

/** A lattice of surfaces each by itself. */
export function latticeOf(surfaces: readonly LiftingSurface[], grids: readonly Grid[]): Lattice {
  return buildLattice(surfaces.map(chainOf), grids);
}

/** The grids of one level for surfaces each by itself, the first of them the main wing. */
export function levelGrids(surfaces: readonly LiftingSurface[], level: number): Grid[] {
  return gridsAtLevel(surfaces.map(chainOf), 0, level);
}

/** A plain rectangular panel, 500 by 200 mm, with what the test cares about put in. */
export function flatPanel(given: Partial<WingPanel>): WingPanel {
  return {
    spanMm: 500,
    rootChordMm: 200,
    tipChordMm: 200,
    sweepMm: 0,
    dihedralDeg: 0,
    rootTwistDeg: 0,
    tipTwistDeg: 0,
    ...given,
  };
}

export function surfaceOf(panels: readonly WingPanel[], given: Partial<LiftingSurface> = {}): LiftingSurface {
  return {
    id: 'wing',
    name: 'Wing',
    rootMm: [0, 0, 0],
    cantDeg: 0,
    incidenceDeg: 0,
    sides: 'both',
    panels,
    ...given,
  };
}

/** Rectangular wing of unit-free aspect ratio, chord 200 mm. */
export function rectangular(aspectRatio: number, given: Partial<LiftingSurface> = {}): LiftingSurface {
  return surfaceOf([flatPanel({ spanMm: aspectRatio * 100 })], given);
}

/** A wing from chords given at fractions of the half span, straight between, mid-chords in line. */
export function wingFromChords(
  halfSpanMm: number,
  chordAt: (fraction: number) => number,
  fractions: readonly number[],
  straightAt = 0.5,
): LiftingSurface {
  const panels = fractions.slice(1).map((outer, k) => {
    const inner = fractions[k] ?? 0;
    const [rootChordMm, tipChordMm] = [chordAt(inner), chordAt(outer)];
    return flatPanel({
      spanMm: (outer - inner) * halfSpanMm,
      rootChordMm,
      tipChordMm,
      sweepMm: (rootChordMm - tipChordMm) * straightAt,
    });
  });
  return surfaceOf(panels);
}

/** 0 … 1 in `count` even steps. */
export function evenly(count: number): number[] {
  return Array.from({ length: count + 1 }, (_, k) => k / count);
}

type Point = readonly [number, number, number];

/**
 * Velocity of a unit horseshoe with bound leg from a to b and legs aft along x, by midpoint sums of
 * dl × r/(4π r³). The legs are integrated in u with x = x_end + L·u/(1 − u), which reaches infinity.
 */
export function biotSavart(a: Point, b: Point, point: Point, pieces = 4000): Point {
  const sum: [number, number, number] = [0, 0, 0];
  const add = (at: Point, dl: Point, sign: number) => {
    const r = [point[0] - at[0], point[1] - at[1], point[2] - at[2]] as const;
    const factor = sign / (4 * Math.PI * Math.hypot(...r) ** 3);
    sum[0] += factor * (dl[1] * r[2] - dl[2] * r[1]);
    sum[1] += factor * (dl[2] * r[0] - dl[0] * r[2]);
    sum[2] += factor * (dl[0] * r[1] - dl[1] * r[0]);
  };
  const length = 300;
  for (let k = 0; k < pieces; k++) {
    const u = (k + 0.5) / pieces;
    const step = [(b[0] - a[0]) / pieces, (b[1] - a[1]) / pieces, (b[2] - a[2]) / pieces] as const;
    add([a[0] + u * (b[0] - a[0]), a[1] + u * (b[1] - a[1]), a[2] + u * (b[2] - a[2])], step, 1);
    const aft = (length * u) / (1 - u);
    const dx = length / (pieces * (1 - u) ** 2);
    add([a[0] + aft, a[1], a[2]], [dx, 0, 0], -1);
    add([b[0] + aft, b[1], b[2]], [dx, 0, 0], 1);
  }
  return sum;
}
