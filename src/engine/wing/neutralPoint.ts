import { chainsOf } from './chains';
import { type FuselageStation, fuselageMomentMm3PerRad } from './fuselage';
import { fuselageFlow } from './fuselageFlow';
import { grossPlanform } from './grossPlanform';
import { buildLattice } from './lattice';
import { gridsAtLevel, unknownsOf } from './latticeLevel';
import { type Circulations, latticeForces, solveLattice } from './latticeSolution';
import { mainSurface, pairedSurfaces } from './mainSurface';
import { type Planform, planform, stationToPctMac } from './planform';
import { type SeamState, seamStates } from './seamBlend';
import { findSeams, type Piece, type Seam } from './seams';
import { type StripLoad, spanLoading } from './spanLoading';
import { stretchesOf } from './stretch';
import { tailPartMm } from './tailPart';
import type { LiftingSurface } from './types';

export interface NeutralPointOptions {
  /** `coarse` for live dragging (at most 120 unknowns), `fine` at rest (at most 450). */
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

/** Plain data: it can cross to and from a worker. Coefficients on the main wing's gross area and MAC. */
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
  /** How far surfaces behind the wing hold the point aft by their lift, mm. */
  readonly tailPartMm: number;
  /** By how much the point differs between half-open seams shut and open: one standard deviation, mm. */
  readonly seamsSigmaMm: number;
  readonly seams: readonly NamedSeam[];
}

const CAPS = { coarse: 120, fine: 450 } as const;
const STEP = 1.5;
/** The point is carried on to the limit, so what is left is well below the last step. */
const ENOUGH_PCT_MAC = 0.25;

/**
 * Neutral point of all lifting surfaces together by two vortex lattices, the finest within the cap and one
 * coarser by 1.5 each way, carried on to the limit; the step between them tells how settled it is. Which lattices are solved
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
    wing: referenceOf(main, paired, options.carries ?? {}),
    states: seamStates(seams),
    fuselage: options.fuselage ?? [],
    cap,
  };
  const solved = problem.states.map((state) => solveState(problem, state));
  return neutralPointFrom(problem, paired, seams, solved);
}

/** The main wing through the body and with its pieces, seen from above. */
function referenceOf(
  main: LiftingSurface,
  paired: readonly LiftingSurface[],
  carries: Readonly<Record<string, number>>,
): Planform {
  const gross = grossPlanform(main.id, paired, carries);
  return gross?.plane === 'xy' ? gross : planform(main, 'xy');
}

interface Problem {
  readonly pieces: readonly Piece[];
  readonly main: number;
  readonly wing: Planform;
  readonly states: readonly SeamState[];
  readonly fuselage: readonly FuselageStation[];
  readonly cap: number;
}

/** What a lattice gives for the whole aircraft, coefficients on the main wing. */
interface Sums {
  readonly clAlpha: number;
  readonly cmAlphaAboutDatum: number;
  readonly clAtZero: number;
  readonly cmAtZeroAboutDatum: number;
  /** Moment slope of the fuselage over dynamic pressure, mm³/rad. */
  readonly fuselageMm3: number;
}

interface Solved {
  readonly share: number;
  readonly level: number;
  readonly circulations: Circulations;
  /** Of the finest lattice, of the one below (null where there is none), and of the lattice without end. */
  readonly finest: Sums;
  readonly below: Sums | null;
  readonly limit: Sums;
}

/** One state of what is joined, by two lattices and carried on to the limit. */
function solveState(problem: Problem, { closed, share }: SeamState): Solved {
  const chains = chainsOf(problem.pieces, closed);
  const gridsAt = (level: number) => gridsAtLevel(chains, problem.main, level);
  let level = 1;
  while (unknownsOf(gridsAt(level + 1)) <= problem.cap) level++;
  const solve = (at: number) => {
    const circulations = solveLattice(buildLattice(chains, gridsAt(at)));
    return { circulations, sums: sumsOf(problem, circulations) };
  };
  const lower = Math.max(1, Math.floor(level / STEP));
  const { circulations, sums: finest } = solve(level);
  const below = lower < level ? solve(lower).sums : null;
  return {
    share,
    level,
    circulations,
    finest,
    below,
    limit: below ? limitOf(finest, below, level / lower) : finest,
  };
}

function sumsOf({ wing, fuselage }: Problem, circulations: Circulations): Sums {
  const forces = latticeForces(circulations, wing);
  return {
    clAlpha: forces.clAlphaPerRad,
    cmAlphaAboutDatum: forces.cmAlphaAboutDatumPerRad,
    clAtZero: forces.clAtZero,
    cmAtZeroAboutDatum: forces.cmAtZeroAboutDatum,
    fuselageMm3:
      fuselage.length > 0 ? fuselageMomentMm3PerRad(fuselage, fuselageFlow(fuselage, circulations)) : 0,
  };
}

/**
 * The limit of ever finer lattices when the error falls in proportion to the cell, as it does where a swept
 * wing has its kink (Richardson, Phil. Trans. R. Soc. A 210, 1911, from memory). Where it falls faster both
 * lattices agree already and there is little to add.
 */
function limitOf(fine: Sums, coarse: Sums, ratio: number): Sums {
  return combined((of) => fine[of] + (fine[of] - coarse[of]) / (ratio - 1));
}

function combined(value: (of: keyof Sums) => number): Sums {
  return {
    clAlpha: value('clAlpha'),
    cmAlphaAboutDatum: value('cmAlphaAboutDatum'),
    clAtZero: value('clAtZero'),
    cmAtZeroAboutDatum: value('cmAtZeroAboutDatum'),
    fuselageMm3: value('fuselageMm3'),
  };
}

/** The point of the surfaces alone, and how far the fuselage moves it; mm. */
function pointOf({ clAlpha, cmAlphaAboutDatum, fuselageMm3 }: Sums, { macMm, areaMm2 }: Planform) {
  return {
    surfacesMm: (-cmAlphaAboutDatum * macMm) / clAlpha,
    // 0 − x: without a fuselage it is 0, not −0
    fuselageMm: 0 - fuselageMm3 / (areaMm2 * clAlpha),
  };
}

function neutralPointFrom(
  { wing, main }: Problem,
  paired: readonly LiftingSurface[],
  seams: readonly Seam[],
  solved: readonly Solved[],
): NeutralPoint {
  const mean = (sums: (state: Solved) => Sums) =>
    combined((of) => solved.reduce((sum, state) => sum + state.share * sums(state)[of], 0));
  const whole = mean(({ limit }) => limit);
  const { surfacesMm, fuselageMm } = pointOf(whole, wing);
  const stationMm = surfacesMm + fuselageMm;
  const pointAt = (sums: Sums) => {
    const point = pointOf(sums, wing);
    return point.surfacesMm + point.fuselageMm;
  };
  const below = solved.every((state) => state.below)
    ? mean(({ below: sums, finest }) => sums ?? finest)
    : null;
  const refinedMm = below && Math.abs(pointAt(mean(({ finest }) => finest)) - pointAt(below));
  const refinedBy = refinedMm && (100 * refinedMm) / wing.macMm;
  const spread = solved.reduce((sum, { share, limit }) => sum + share * (pointAt(limit) - stationMm) ** 2, 0);
  const { circulations, level } = solved.reduce((best, next) => (next.share > best.share ? next : best));
  const ids = paired.map(({ id }) => id);
  const mainPatch = circulations.lattice.patches.find(({ surfaces }) => surfaces.includes(main));
  return {
    stationMm,
    pctMac: stationToPctMac(wing, stationMm),
    surfacesStationMm: surfacesMm,
    fuselageShiftPctMac: (100 * fuselageMm) / wing.macMm,
    clAlphaPerRad: whole.clAlpha,
    clAtZero: whole.clAtZero,
    cmAtZeroLift: whole.cmAtZeroAboutDatum + (whole.clAtZero * surfacesMm) / wing.macMm,
    wing,
    wingId: ids[main] ?? '',
    strips: spanLoading(circulations, ids, wing.meanChordMm),
    rows: mainPatch?.rows ?? level,
    unknowns: circulations.lattice.size,
    refinedBy,
    converged: refinedBy !== null && refinedBy < ENOUGH_PCT_MAC,
    tailPartMm: tailPartMm(circulations, main, stationMm),
    seamsSigmaMm: Math.sqrt(spread),
    seams: seams.map(({ a, b, weight, gapMm }) => ({
      surfaceId: ids[a.piece] ?? '',
      end: a.end,
      withId: b === 'plane' ? null : (ids[b.piece] ?? ''),
      weight,
      gapMm,
    })),
  };
}
