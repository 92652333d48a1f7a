import type { Vec3 } from '../../engine/geometry/types';
import type { Positions } from '../airframe/loadSwitches';
import type { Balance } from '../balance/balance';
import type { Certainty } from '../balance/certainty';
import type { FitProblem } from '../fit/fitProblem';
import type { LoadEnvelope } from '../loads/loadStates';
import type { PowerProblem } from '../power/powerProblems';
import type { StabilityEstimate } from '../stability/stability';

/** How bad it is, the worst first. Aft is the dangerous side, so it stands alone above all else. */
export const SEVERITIES = ['bad-aft', 'bad', 'caution', 'unknown', 'good'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** Negative when `a` is worse than `b`. */
export const compareSeverity = (a: Severity, b: Severity): number =>
  SEVERITIES.indexOf(a) - SEVERITIES.indexOf(b);

/** How far the search through all load states has come. */
export type LoadSearch =
  /** Null where a load state weighs nothing. */
  | { readonly status: 'found'; readonly envelope: LoadEnvelope | null }
  | { readonly status: 'unfinished' }
  | { readonly status: 'failed'; readonly sentence: string };

/** How far the estimate of the neutral point has come, for the very structure that is judged. */
export type Estimating = 'done' | 'unfinished' | 'failed';

/** What is known besides the aircraft itself. What is not known yet is null and is judged as such, never as good. */
export interface Known {
  /** Apparent down in the aircraft's frame. */
  readonly down: Vec3;
  /** The load state shown; all switches in their first position when left out. */
  readonly positions?: Positions;
  readonly estimate: StabilityEstimate | null;
  /** Whether the estimate belongs to this very structure; it does when this is left out. */
  readonly estimateFresh?: boolean;
  /** How far the estimate has come; done when left out, and then no estimate means that there is none to be had. */
  readonly estimating?: Estimating;
  readonly loads: LoadSearch;
  /** Everything that does not fit, in every load state; null before that is checked. */
  readonly fit: readonly FitProblem[] | null;
  readonly certainty: Certainty | null;
  /** The balance of the load state shown, where it is at hand; it must be that of this aircraft. */
  readonly balance?: Balance;
}

/** A load state at one moment of the burn. */
export interface Moment {
  readonly positions: Positions;
  /** Usable liquid left, 1 full to 0 dry. */
  readonly fuelFraction: number;
}

/** A CG and how it lies. */
export interface CgPoint extends Moment {
  readonly massG: number;
  readonly cgMm: Vec3;
  /** Of the aft end of a travel or of all load states: a CG may lie so much farther aft that was not found, mm; else 0. */
  readonly maybeAftMm: number;
  /**
   * How far outside the band: aft of the aft limit +, ahead of the forward limit −, 0 inside; null without a band. What may
   * lie farther aft counts.
   */
  readonly outsideMm: number | null;
  /** Estimated static margin, of what may lie farther aft, % MAC; null where it is not known. */
  readonly marginPct: number | null;
}

/** One load state over its burn. */
export interface StateJudgement {
  readonly positions: Positions;
  /** False for a state of the balancing stand, which is information and not judged. */
  readonly flies: boolean;
  readonly full: CgPoint;
  readonly dry: CgPoint;
  readonly foremost: CgPoint;
  readonly aftmost: CgPoint;
  /** Farthest from the plane of symmetry. */
  readonly mostLateral: CgPoint;
  /** Whether the burn moves anything at all. */
  readonly burns: boolean;
}

/** The band that the CG is held against. Stations in mm. */
export interface JudgedBand {
  readonly forwardMm: number;
  readonly aftMm: number;
  readonly from: 'stated' | 'estimate';
}

/** The estimated static margin over every load state, and what it is held against. % MAC. */
export type MarginJudgement =
  | {
      readonly status: 'unknown';
      readonly why:
        | 'no estimate'
        | 'out of date'
        | 'not finite'
        | 'no CG'
        | 'not checked yet'
        | 'not checked';
    }
  | {
      readonly status: 'estimated';
      /** At the aftmost CG of all load states. */
      readonly least: CgPoint & { readonly marginPct: number };
      /** At the foremost. */
      readonly most: CgPoint & { readonly marginPct: number };
      /** The least that is asked for. */
      readonly leastWantedPct: number;
      /** Null where nothing was asked for. */
      readonly mostWantedPct: number | null;
      /** True when the person asked for it; false when it is what is usual for the kind of aircraft. */
      readonly wanted: boolean;
      readonly neutralPointMm: number;
      readonly macMm: number;
      /** 95 % of where the neutral point may be, % MAC: the margin may be so much less, or more. */
      readonly plusMinusPct: number;
    };

/** One thing that is wrong, doubtful or not known. */
export type Finding =
  | {
      readonly kind: 'tail-heavy' | 'nose-heavy';
      readonly severity: Severity;
      /** Aft +, forward −. */
      readonly outsideMm: number;
      readonly at: CgPoint;
    }
  | {
      readonly kind: 'behind-neutral-point' | 'margin-tiny' | 'margin-under' | 'margin-over';
      readonly severity: Severity;
      readonly marginPct: number;
      /** The margin that it should have, % MAC. */
      readonly wantedPct: number;
      readonly wanted: boolean;
      /** How far the CG is from there, mm: aft of it +. */
      readonly byMm: number;
      readonly at: CgPoint;
    }
  | { readonly kind: 'band-behind-neutral-point'; readonly severity: Severity; readonly byMm: number }
  | {
      readonly kind: 'lateral';
      readonly severity: Severity;
      /** Right +. */
      readonly offsetMm: number;
      readonly limitMm: number;
      readonly at: CgPoint;
    }
  | { readonly kind: 'fit'; readonly severity: Severity; readonly problems: readonly FitProblem[] }
  | { readonly kind: 'power'; readonly severity: Severity; readonly problems: readonly PowerProblem[] }
  /** Things whose mass nobody knows: their figures stand for nothing. */
  | { readonly kind: 'mass-unknown'; readonly severity: 'unknown'; readonly names: readonly string[] }
  /** A sum or an estimate that is no number. */
  | { readonly kind: 'not-finite'; readonly severity: 'bad' }
  | {
      readonly kind: 'no-mass' | 'no-band' | 'loads-unchecked' | 'fit-unchecked' | 'margin-unchecked';
      readonly severity: 'unknown';
    };

export type FindingKind = Finding['kind'];

/** The whole judgement of one aircraft, as numbers and states. Aircraft frame, mm, g, % MAC. */
export interface Judgement {
  /** That of the worst finding; `good` only when everything was checked and nothing found. */
  readonly severity: Severity;
  /** The same without what was not checked yet: for the moments while a search still runs. */
  readonly severitySoFar: Severity;
  /** The worst first. */
  readonly findings: readonly Finding[];
  readonly band: JudgedBand | null;
  /** The one load state that the limits were stated for, and alone are held to; null where they hold for every one. */
  readonly statedFor: CgPoint | null;
  /** The load state shown; null without a CG. */
  readonly shown: StateJudgement | null;
  /** Every flying load state that was looked at along its burn, the one shown first when it flies. */
  readonly states: readonly StateJudgement[];
  /** Over every flying load state looked at; null without a CG. */
  readonly foremost: CgPoint | null;
  readonly aftmost: CgPoint | null;
  readonly mostLateral: CgPoint | null;
  readonly margin: MarginJudgement;
  /** How far off centre the CG may be, mm; null where it does not matter. */
  readonly lateralLimitMm: number | null;
  /** What does not fit in any load state that flies; null before that is checked. */
  readonly fit: readonly FitProblem[] | null;
  readonly certainty: Certainty | null;
  readonly loads: 'certified' | 'sampled' | 'unchecked';
}
