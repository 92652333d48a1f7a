import { FREE_FLOW, type FuselageStation, fuselageMomentMm3PerRad, wingedFlow } from './fuselage';
import { inducedVelocity } from './influence';
import { buildLattice } from './lattice';
import { gridsAtLevel, unknownsOf } from './latticeLevel';
import { type Circulations, type LatticeForces, latticeForces, solveLattice } from './latticeSolution';
import { mainSurface, pairedSurfaces } from './mainSurface';
import { type Planform, planform, stationToPctMac } from './planform';
import { type StripLoad, spanLoading } from './spanLoading';
import type { LiftingSurface } from './types';

export interface NeutralPointOptions {
  /** `coarse` for live dragging (at most 120 unknowns), `fine` at rest (at most 1200). */
  readonly detail: 'coarse' | 'fine';
  /** Another cap on the unknowns. */
  readonly maxUnknowns?: number;
  /** Front to rear; the fuselage's moment is added when given. */
  readonly fuselage?: readonly FuselageStation[];
}

/** Plain data: it can cross to and from a worker. Coefficients on the main wing's area and MAC. */
export interface NeutralPoint {
  /** Aircraft with fuselage if one was given. */
  readonly stationMm: number;
  readonly pctMac: number;
  /** Of the lifting surfaces alone. */
  readonly surfacesStationMm: number;
  /** How far the fuselage moves it, % MAC; forward is negative. */
  readonly fuselageShiftPctMac: number;
  /** Whole aircraft, per rad. */
  readonly clAlphaPerRad: number;
  readonly clAtZero: number;
  /** Moment at zero lift (does not depend on the point), nose up +, surfaces only. */
  readonly cmAtZeroLift: number;
  readonly wing: Planform;
  readonly wingId: string;
  readonly strips: readonly StripLoad[];
  /** Chordwise rows on the main wing, and unknowns, of the last lattice. */
  readonly rows: number;
  readonly unknowns: number;
  /** How far the last refinement moved the point, % MAC; null if there was room for one lattice only. */
  readonly refinedBy: number | null;
  readonly converged: boolean;
}

const CAPS = { coarse: 120, fine: 1200 } as const;
/** Rows on the main wing that the fine lattice starts from, where the cap allows. */
const FIRST_LEVEL = 4;
const STEP = 1.5;
/** A smaller step than this says nothing about convergence. */
const LEAST_STEP = 1.25;
const ENOUGH_PCT_MAC = 0.1;

/**
 * Neutral point of all paired lifting surfaces together by a vortex lattice. `fine` refines by steps of
 * 1.5 in both directions until the point moves by less than 0.1 % of the main wing's MAC or the next
 * lattice would exceed the cap. `coarse` goes straight to the cap, with one lattice below it to tell how
 * far refinement still moves the point: it does not switch lattices in mid-drag.
 *
 * Inviscid, small angles, rigid, no propeller or jet. `centre` surfaces (fins in the plane of symmetry)
 * carry nothing here. A gap between the roots is a gap: use `carryThrough` first where a fuselage fills it.
 * Null when no paired surface is seen from above. Throws on impossible geometry or an endless cap.
 */
export function neutralPoint(
  surfaces: readonly LiftingSurface[],
  options: NeutralPointOptions,
): NeutralPoint | null {
  const main = mainSurface(surfaces);
  if (main === null) return null;
  const paired = pairedSurfaces(surfaces);
  const wing = planform(main, 'xy');
  const cap = options.maxUnknowns ?? CAPS[options.detail];
  if (!Number.isFinite(cap))
    throw new Error(`neutral point: the cap on unknowns must be a number, got ${cap}`);

  const largest = largestLevel(paired, main, cap);
  const below = Math.max(1, Math.floor(largest / STEP));
  let level = options.detail === 'coarse' ? below : Math.min(FIRST_LEVEL, below);
  let step = solveLevel(paired, main, wing, level);
  let refinedBy: number | null = null;
  for (;;) {
    const next = options.detail === 'coarse' ? largest : Math.min(Math.round(level * STEP), largest);
    if (next < level * LEAST_STEP) break;
    const finer = solveLevel(paired, main, wing, next);
    refinedBy = (100 * Math.abs(finer.forces.neutralStationMm - step.forces.neutralStationMm)) / wing.macMm;
    level = next;
    step = finer;
    if (refinedBy < ENOUGH_PCT_MAC) break;
  }

  const { forces, circulations } = step;
  const moment = options.fuselage ? fuselageMoment(options.fuselage, main, circulations) : 0;
  const stationMm = forces.neutralStationMm - moment / (wing.areaMm2 * forces.clAlphaPerRad);
  return {
    stationMm,
    pctMac: stationToPctMac(wing, stationMm),
    surfacesStationMm: forces.neutralStationMm,
    fuselageShiftPctMac: (100 * (stationMm - forces.neutralStationMm)) / wing.macMm,
    clAlphaPerRad: forces.clAlphaPerRad,
    clAtZero: forces.clAtZero,
    cmAtZeroLift: forces.cmAtZeroAboutDatum + (forces.clAtZero * forces.neutralStationMm) / wing.macMm,
    wing,
    wingId: main.id,
    strips: spanLoading(circulations, wing.meanChordMm),
    rows: circulations.lattice.patches.find(({ surface }) => paired[surface] === main)?.rows ?? level,
    unknowns: circulations.lattice.size,
    refinedBy,
    converged: refinedBy !== null && refinedBy < ENOUGH_PCT_MAC,
  };
}

function solveLevel(
  paired: readonly LiftingSurface[],
  main: LiftingSurface,
  wing: Planform,
  level: number,
): { forces: LatticeForces; circulations: Circulations } {
  const circulations = solveLattice(buildLattice(paired, gridsAtLevel(paired, main, level)));
  return { forces: latticeForces(circulations, wing), circulations };
}

/** The finest level whose lattice stays within the cap; 1 if none does. */
function largestLevel(paired: readonly LiftingSurface[], main: LiftingSurface, cap: number): number {
  let level = 1;
  while (unknownsOf(gridsAtLevel(paired, main, level + 1)) <= cap) level++;
  return level;
}

/** Moment slope of the fuselage over dynamic pressure, mm³/rad, in the flow of the main wing. */
function fuselageMoment(
  stations: readonly FuselageStation[],
  main: LiftingSurface,
  circulations: Circulations,
): number {
  const rearMm = stations.at(-1)?.stationMm;
  const rootChordMm = main.panels[0]?.rootChordMm;
  if (rearMm === undefined || rootChordMm === undefined) return fuselageMomentMm3PerRad(stations, FREE_FLOW);
  const [leadingEdgeMm, , waterline] = main.rootMm;
  const ofWing = mainOnly(circulations, main);
  const [, , upwash] = inducedVelocity(circulations.lattice, ofWing, [rearMm, 0, waterline]);
  const flow = wingedFlow({
    leadingEdgeMm,
    trailingEdgeMm: leadingEdgeMm + rootChordMm,
    rearMm,
    downwashSlope: -upwash,
  });
  return fuselageMomentMm3PerRad(stations, flow);
}

/** Strengths per radian with all surfaces but the main one set to 0. */
function mainOnly({ lattice, perRadianMm }: Circulations, main: LiftingSurface): Float64Array {
  const kept = new Float64Array(perRadianMm.length);
  for (const { surface, firstHorseshoe, rows, strips } of lattice.patches) {
    if (lattice.surfaces[surface] !== main) continue;
    const end = firstHorseshoe + rows * strips;
    kept.set(perRadianMm.subarray(firstHorseshoe, end), firstHorseshoe);
  }
  return kept;
}
