import { luFactor, luSolve } from '../linear/denseLu';
import { influenceMatrix } from './influence';
import type { Lattice } from './lattice';
import type { Planform } from './planform';

/** What coefficients are based on: the main wing's planform. */
export type WingReference = Pick<Planform, 'areaMm2' | 'macMm' | 'lemacMm' | 'meanChordMm'>;

/** Strengths Γ/V (mm) of a lattice's horseshoes: at zero alpha, and their change per radian. */
export interface Circulations {
  readonly lattice: Lattice;
  readonly atZeroMm: Float64Array;
  readonly perRadianMm: Float64Array;
}

/**
 * Solves the flow through the control points for zero alpha and for unit alpha with one factorisation.
 * Linearised: freestream (1, 0, alpha) in the aircraft frame, wakes stay along x.
 */
export function solveLattice(lattice: Lattice): Circulations {
  const { size, normals } = lattice;
  const factors = luFactor(influenceMatrix(lattice), size);
  const against = (axis: 0 | 2) =>
    Float64Array.from({ length: size }, (_, i) => -(normals[3 * i + axis] as number));
  return { lattice, atZeroMm: luSolve(factors, against(0)), perRadianMm: luSolve(factors, against(2)) };
}

/** Lift and pitching moment, linear in alpha. Moments are nose up +. */
export interface LatticeForces {
  /** Lift coefficient at zero alpha, on the reference area. */
  readonly clAtZero: number;
  readonly clAlphaPerRad: number;
  /** Moment coefficient at zero alpha about station 0, on area × MAC; and its slope. */
  readonly cmAtZeroAboutDatum: number;
  readonly cmAlphaAboutDatumPerRad: number;
  /** Where the moment does not change with alpha: −Cmα/CLα, station in mm. */
  readonly neutralStationMm: number;
}

/**
 * Kutta–Joukowski on the bound legs with the freestream along x: each pair of legs lifts 4·(Γ/V)·Δy in
 * units of dynamic pressure, at the middle of the leg. Vertical arms (drag, tilt of the lift) are of
 * second order and left out.
 */
export function latticeForces(
  { lattice, atZeroMm, perRadianMm }: Circulations,
  reference: WingReference,
): LatticeForces {
  let zero = 0;
  let slope = 0;
  let zeroMoment = 0;
  let slopeMoment = 0;
  eachBoundLeg(lattice, (horseshoe, left, right) => {
    const width = (lattice.nodes[right + 1] as number) - (lattice.nodes[left + 1] as number);
    const station = ((lattice.nodes[left] as number) + (lattice.nodes[right] as number)) / 2;
    const liftAtZero = 4 * (atZeroMm[horseshoe] as number) * width;
    const liftPerRadian = 4 * (perRadianMm[horseshoe] as number) * width;
    zero += liftAtZero;
    slope += liftPerRadian;
    zeroMoment -= liftAtZero * station;
    slopeMoment -= liftPerRadian * station;
  });
  const volume = reference.areaMm2 * reference.macMm;
  return {
    clAtZero: zero / reference.areaMm2,
    clAlphaPerRad: slope / reference.areaMm2,
    cmAtZeroAboutDatum: zeroMoment / volume,
    cmAlphaAboutDatumPerRad: slopeMoment / volume,
    neutralStationMm: -slopeMoment / slope,
  };
}

/** Lift coefficient at an angle of attack in radians. */
function liftCoefficient(forces: LatticeForces, alphaRad: number): number {
  return forces.clAtZero + forces.clAlphaPerRad * alphaRad;
}

/** Moment coefficient about a station (mm), nose up +, on area × MAC. */
export function momentCoefficient(
  forces: LatticeForces,
  reference: WingReference,
  stationMm: number,
  alphaRad: number,
): number {
  const aboutDatum = forces.cmAtZeroAboutDatum + forces.cmAlphaAboutDatumPerRad * alphaRad;
  return aboutDatum + (liftCoefficient(forces, alphaRad) * stationMm) / reference.macMm;
}

/** Calls back with each horseshoe's index and where the coordinates of its two nodes start in `nodes`. */
function eachBoundLeg(
  lattice: Lattice,
  visit: (horseshoe: number, left: number, right: number) => void,
): void {
  for (const { rows, strips, firstHorseshoe, firstNode } of lattice.patches) {
    for (let row = 0; row < rows; row++) {
      for (let strip = 0; strip < strips; strip++) {
        const left = 3 * (firstNode + row * (strips + 1) + strip);
        visit(firstHorseshoe + row * strips + strip, left, left + 3);
      }
    }
  }
}
