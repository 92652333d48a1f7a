import { chainsOf } from './chains';
import { type FuselageStation, fuselageMomentMm3PerRad } from './fuselage';
import { fuselageFlow } from './fuselageFlow';
import { buildLattice } from './lattice';
import { gridsAtLevel, unknownsOf } from './latticeLevel';
import { type Circulations, type LatticeForces, latticeForces, solveLattice } from './latticeSolution';
import { mainSurface, pairedSurfaces } from './mainSurface';
import { type Planform, planform, stationToPctMac } from './planform';
import { type SeamState, seamStates } from './seamBlend';
import { findSeams, type Piece, type Seam } from './seams';
import { type StripLoad, spanLoading } from './spanLoading';
import { stretchesOf } from './stretch';
import type { LiftingSurface } from './types';

export interface NeutralPointOptions {
  /** `coarse` for live dragging (at most 120 unknowns), `fine` at rest (at most 600). */
  readonly detail: 'coarse' | 'fine';
  /** Another cap on the unknowns. */
  readonly maxUnknowns?: number;
  /** Front to rear; the fuselage's moment is added when given. */
  readonly fuselage?: readonly FuselageStation[];
  /** How far each surface's root is carried to the plane of symmetry, 0 … 1, by id; else the gap decides. */
  readonly carries?: Readonly<Record<string, number>>;
}

/** An edge of a surface that counts as joined, wholly or in part. */
export interface NamedSeam {
  readonly surfaceId: string;
  readonly end: 'root' | 'tip';
  /** The surface it meets; null for the plane of symmetry. */
  readonly withId: string | null;
  readonly weight: number;
  readonly gapMm: number;
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
  readonly seams: readonly NamedSeam[];
}

const CAPS = { coarse: 120, fine: 600 } as const;
const STEP = 1.5;
const ENOUGH_PCT_MAC = 0.1;

/**
 * Neutral point of all lifting surfaces together by a vortex lattice: the finest within the cap, and one
 * coarser by 1.5 each way to tell how far refinement still moves the point. Which lattices are solved
 * depends on what is joined to what, never on sizes, so that the point moves smoothly with the shape.
 *
 * Surfaces that share an edge are one lattice along it. Where an edge counts as joined in part (a narrow gap,
 * a root half beside a body) the answer is the mean of the joined and the open lattice, by that part.
 *
 * Inviscid, small angles, rigid, no propeller or jet. Fins in the plane of symmetry carry nothing here.
 * Null when no surface is seen from above. Throws on impossible geometry or an endless cap.
 */
export function neutralPoint(
  surfaces: readonly LiftingSurface[],
  options: NeutralPointOptions,
): NeutralPoint | null {
  const paired = pairedSurfaces(surfaces);
  const main = mainSurface(paired);
  if (main === null) return null;
  const cap = options.maxUnknowns ?? CAPS[options.detail];
  if (!Number.isFinite(cap))
    throw new Error(`neutral point: the cap on unknowns must be a number, got ${cap}`);
  const pieces = paired.map(stretchesOf);
  const seams = findSeams(
    pieces,
    paired.map(({ id }) => options.carries?.[id] ?? null),
  );
  const problem: Problem = {
    pieces,
    main: paired.indexOf(main),
    wing: planform(main, 'xy'),
    states: seamStates(seams),
    fuselage: options.fuselage ?? [],
    cap,
  };
  const finest = solveAt(problem, 1);
  const coarser = finest.level > 1 ? solveAt(problem, STEP) : null;
  return told(problem, paired, seams, finest, coarser);
}

interface Problem {
  readonly pieces: readonly Piece[];
  readonly main: number;
  readonly wing: Planform;
  readonly states: readonly SeamState[];
  readonly fuselage: readonly FuselageStation[];
  readonly cap: number;
}

interface Solved {
  /** Of the state with the greatest share. */
  readonly circulations: Circulations;
  readonly level: number;
  readonly forces: LatticeForces;
  /** Moment slope of the fuselage over dynamic pressure, mm³/rad. */
  readonly fuselageMm3: number;
}

/** The mean over all states of what is joined, each at its finest level within the cap over `coarsenedBy`. */
function solveAt({ pieces, main, wing, states, fuselage, cap }: Problem, coarsenedBy: number): Solved {
  const solved = states.map(({ closed, share }) => {
    const chains = chainsOf(pieces, closed);
    const gridsAt = (level: number) => gridsAtLevel(chains, main, level);
    let finest = 1;
    while (unknownsOf(gridsAt(finest + 1)) <= cap) finest++;
    const level = Math.max(1, Math.floor(finest / coarsenedBy));
    const circulations = solveLattice(buildLattice(chains, gridsAt(level)));
    const flow = fuselageFlow(fuselage, circulations);
    return {
      share,
      level,
      circulations,
      forces: latticeForces(circulations, wing),
      fuselageMm3: fuselage.length > 0 ? fuselageMomentMm3PerRad(fuselage, flow) : 0,
    };
  });
  const mean = (of: (state: (typeof solved)[number]) => number) =>
    solved.reduce((sum, state) => sum + state.share * of(state), 0);
  const clAlphaPerRad = mean(({ forces }) => forces.clAlphaPerRad);
  const cmAlphaAboutDatumPerRad = mean(({ forces }) => forces.cmAlphaAboutDatumPerRad);
  const greatest = solved.reduce((one, other) => (other.share > one.share ? other : one));
  return {
    circulations: greatest.circulations,
    level: greatest.level,
    forces: {
      clAtZero: mean(({ forces }) => forces.clAtZero),
      clAlphaPerRad,
      cmAtZeroAboutDatum: mean(({ forces }) => forces.cmAtZeroAboutDatum),
      cmAlphaAboutDatumPerRad,
      neutralStationMm: (-cmAlphaAboutDatumPerRad * wing.macMm) / clAlphaPerRad,
    },
    fuselageMm3: mean(({ fuselageMm3 }) => fuselageMm3),
  };
}

function told(
  { wing, main }: Problem,
  paired: readonly LiftingSurface[],
  seams: readonly Seam[],
  finest: Solved,
  coarser: Solved | null,
): NeutralPoint {
  const { forces, circulations } = finest;
  const stationOf = (solved: Solved) =>
    solved.forces.neutralStationMm - solved.fuselageMm3 / (wing.areaMm2 * solved.forces.clAlphaPerRad);
  const stationMm = stationOf(finest);
  const refinedBy = coarser && (100 * Math.abs(stationMm - stationOf(coarser))) / wing.macMm;
  const ids = paired.map(({ id }) => id);
  const mainPatch = circulations.lattice.patches.find(({ surfaces }) => surfaces.includes(main));
  return {
    stationMm,
    pctMac: stationToPctMac(wing, stationMm),
    surfacesStationMm: forces.neutralStationMm,
    fuselageShiftPctMac: (100 * (stationMm - forces.neutralStationMm)) / wing.macMm,
    clAlphaPerRad: forces.clAlphaPerRad,
    clAtZero: forces.clAtZero,
    cmAtZeroLift: forces.cmAtZeroAboutDatum + (forces.clAtZero * forces.neutralStationMm) / wing.macMm,
    wing,
    wingId: ids[main] ?? '',
    strips: spanLoading(circulations, ids, wing.meanChordMm),
    rows: mainPatch?.rows ?? finest.level,
    unknowns: circulations.lattice.size,
    refinedBy,
    converged: refinedBy !== null && refinedBy < ENOUGH_PCT_MAC,
    seams: seams.map(({ a, b, weight, gapMm }) => ({
      surfaceId: ids[a.piece] ?? '',
      end: a.end,
      withId: b === 'plane' ? null : (ids[b.piece] ?? ''),
      weight,
      gapMm,
    })),
  };
}
