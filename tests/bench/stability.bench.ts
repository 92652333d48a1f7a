import { LuDecomposition, Matrix } from 'ml-matrix';
import { neutralPoint } from '../../src/engine/wing/neutralPoint';
import type { LiftingSurface } from '../../src/engine/wing/types';
import { type BenchRow, compare } from './measure';

/** A plain wing and tail. */
const surfaces: readonly LiftingSurface[] = [
  surface('wing', 0, 1000, 250, 180),
  surface('tail', 900, 300, 160, 120),
];

function surface(id: string, stationMm: number, spanMm: number, root: number, tip: number): LiftingSurface {
  return {
    id,
    name: id,
    rootMm: [stationMm, 0, 0],
    cantDeg: 0,
    incidenceDeg: 0,
    sides: 'both',
    panels: [
      {
        spanMm,
        rootChordMm: root,
        tipChordMm: tip,
        sweepMm: (root - tip) / 2,
        dihedralDeg: 3,
        rootTwistDeg: 0,
        tipTwistDeg: -1,
      },
    ],
  };
}

const CAP = 430;

/**
 * Ours goes straight to the finest lattice within the cap and solves a coarser one as well, to tell how
 * far refinement moves the point: influence, factorisation, loading and all. Theirs is the factorisation alone
 * of a well-behaved matrix with as many unknowns as our finest lattice.
 */
export default async function rows(): Promise<BenchRow[]> {
  const whole = () => {
    const found = neutralPoint(surfaces, { detail: 'coarse', maxUnknowns: CAP });
    if (!found) throw new Error('expected a neutral point');
    return found;
  };
  const { unknowns } = whole();
  const matrix = new Matrix(unknowns, unknowns);
  for (let i = 0; i < unknowns; i++) {
    for (let j = 0; j < unknowns; j++) matrix.set(i, j, 1 / (1 + Math.abs(i - j)) + (i === j ? 1 : 0));
  }
  return [
    compare({
      name: `whole neutral point, ${unknowns} unknowns and a coarser lattice`,
      against: `ml-matrix, LU of ${unknowns} unknowns alone`,
      ours: () => whole().stationMm,
      theirs: () => new LuDecomposition(matrix).isSingular(),
      batches: 15,
    }),
  ];
}
