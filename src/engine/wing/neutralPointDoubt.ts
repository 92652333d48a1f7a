/** What stands between an estimated neutral point and the true one. */
export type DoubtCause =
  | 'method'
  | 'refinement'
  | 'seams'
  | 'fuselage'
  | 'fuselageNotCounted'
  | 'otherHulls'
  | 'propeller'
  | 'intake'
  | 'tailEfficiency'
  | 'flexibility'
  | 'lowReynolds';

/** One share of the ± of a neutral point: one standard deviation, mm, and the way it tends to move the point. */
export interface Doubt {
  readonly cause: DoubtCause;
  readonly sigmaMm: number;
  readonly moves: 'forward' | 'aft' | 'either';
  readonly basis: 'common practice' | 'published comparison' | 'computed';
}

export interface DoubtInput {
  readonly macMm: number;
  /** How far the last refinement moved the point, mm; null if there was one lattice only. */
  readonly refinedByMm: number | null;
  /** By how much the point would differ were half-open seams shut or open, one standard deviation, mm. */
  readonly seamsMm: number;
  /** How far the fuselage moves the point, mm, forward negative; 0 without one. */
  readonly fuselageShiftMm: number;
  readonly fuselageCounted: boolean;
  readonly otherHulls: number;
  readonly power: 'propeller' | 'turbine' | 'none';
  /** How far surfaces behind the wing hold the point aft, mm. */
  readonly tailPartMm: number;
}

/** Shares of the MAC, common practice without a source, on the large side. */
const METHOD = 0.01;
const LOW_REYNOLDS = 0.005;
const OTHER_HULL = 0.005;
const PROPELLER = 0.02;
const INTAKE = 0.01;
/** Shares of what the tail does: it meets 0.85 to 1 of the airspeed's pressure; it and its pushrods give. */
const TAIL_EFFICIENCY = 0.075;
const TAIL_GIVES = 0.04;
/** And a share of the MAC for a wing that bends and twists. */
const WING_GIVES = 0.005;
/** How far this method and the curve fitted to wind-tunnel models in NACA Report 711, 1941, part (see the tests). */
const FUSELAGE = 0.4;

/** The ± of an estimated neutral point, cause by cause; independent, so that they add as squares. */
export function neutralPointDoubts(input: DoubtInput): readonly Doubt[] {
  const { macMm, refinedByMm, fuselageCounted, power } = input;
  const fuselageMm = Math.abs(input.fuselageShiftMm);
  const doubts: readonly (Doubt | false)[] = [
    { cause: 'method', sigmaMm: METHOD * macMm, moves: 'either', basis: 'common practice' },
    refinedByMm !== null && {
      cause: 'refinement',
      sigmaMm: Math.abs(refinedByMm),
      moves: 'either',
      basis: 'computed',
    },
    { cause: 'seams', sigmaMm: input.seamsMm, moves: 'either', basis: 'computed' },
    fuselageCounted
      ? {
          cause: 'fuselage',
          sigmaMm: FUSELAGE * fuselageMm,
          moves: 'either',
          basis: 'published comparison',
        }
      : {
          cause: 'fuselageNotCounted',
          sigmaMm: (1 + FUSELAGE) * fuselageMm,
          moves: input.fuselageShiftMm > 0 ? 'aft' : 'forward',
          basis: 'computed',
        },
    {
      cause: 'otherHulls',
      sigmaMm: OTHER_HULL * macMm * input.otherHulls,
      moves: 'forward',
      basis: 'common practice',
    },
    power === 'propeller' && {
      cause: 'propeller',
      sigmaMm: PROPELLER * macMm,
      moves: 'either',
      basis: 'common practice',
    },
    power === 'turbine' && {
      cause: 'intake',
      sigmaMm: INTAKE * macMm,
      moves: 'forward',
      basis: 'common practice',
    },
    {
      cause: 'tailEfficiency',
      sigmaMm: TAIL_EFFICIENCY * input.tailPartMm,
      moves: 'forward',
      basis: 'common practice',
    },
    {
      cause: 'flexibility',
      sigmaMm: TAIL_GIVES * input.tailPartMm + WING_GIVES * macMm,
      moves: 'forward',
      basis: 'common practice',
    },
    { cause: 'lowReynolds', sigmaMm: LOW_REYNOLDS * macMm, moves: 'either', basis: 'common practice' },
  ];
  return doubts.filter((doubt): doubt is Doubt => doubt !== false && doubt.sigmaMm > 0);
}

/** The standard deviation of the whole, mm. */
export function doubtSigmaMm(doubts: readonly Doubt[]): number {
  return Math.sqrt(doubts.reduce((sum, { sigmaMm }) => sum + sigmaMm * sigmaMm, 0));
}
