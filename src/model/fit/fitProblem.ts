import type { Vec3 } from '../../engine/geometry/types';
import type { InStates } from '../airframe/aboard';

/**
 * What is wrong:
 * - `overlap`: two things in one place; `byMm` the shortest way clear.
 * - `within`: a tank or part lies wholly inside another.
 * - `through`: it reaches out of the hull or flying surface that should hold it; `byMm` how far.
 * - `outside`: it stands in no hull and no flying surface; `byMm` how far its furthest point is off the nearest.
 * - `outOfBay`: it reaches out of the bay it is bound to.
 * - `shortLead`: the lead does not reach; `byMm` what is missing.
 * - `tooNear`: a rule of distance is broken, or the clearance asked for is not kept; `byMm` what is missing.
 * - `thinWall`: a cut-out leaves less wall than the block asks for.
 * - `keptFree`: ballast reaches into a zone that is kept free of it.
 */
export type FitKind =
  | 'overlap'
  | 'within'
  | 'through'
  | 'outside'
  | 'outOfBay'
  | 'shortLead'
  | 'tooNear'
  | 'thinWall'
  | 'keptFree';

/** `bad`: it cannot be built so. `caution`: it can, but should not. */
export type FitSeverity = 'bad' | 'caution';

/** Something that a problem is about. */
export interface FitParty {
  /** The id in the file: of an item, a piece of structure, a lead, a bay or a zone. */
  readonly id: string;
  readonly name: string;
  readonly what: 'part' | 'tank' | 'structure' | 'surface' | 'hull' | 'lead' | 'bay' | 'zone';
  /** The solid of it: "main-leg.left.wheel", "wing.right"; the id again where there is only one. */
  readonly pieceId: string;
}

/** One thing that does not fit. */
export interface FitProblem {
  /** The same for the same trouble between the same things, in any document and load state. */
  readonly key: string;
  readonly kind: FitKind;
  readonly severity: FitSeverity;
  /** The one to be moved first, then what it is in the way of, if anything. */
  readonly parties: readonly [FitParty, ...FitParty[]];
  /** By how much, mm, more than 0. */
  readonly byMm: number;
  /** The load states in which it holds; empty is all. */
  readonly states: InStates;
  /** Where, aircraft frame, mm: the nearest or deepest points; null where there is no one place. */
  readonly atMm: readonly [Vec3, Vec3] | null;
  /** The move of the first party that ends it, mm; null where none is known. */
  readonly clearByMm: Vec3 | null;
  /** Of `tooNear`: how far apart they should be, mm, why, and whether that is only common practice. */
  readonly rule: {
    readonly atLeastMm: number;
    readonly why: string;
    readonly commonPractice: boolean;
  } | null;
}

export const partiesKey = (kind: FitKind, ids: readonly string[], more = ''): string =>
  [kind, ...[...ids].sort(), more].filter(Boolean).join(' ');
