import { arrangeSentence } from './arrangeSentence';
import type { Milp } from './milp';
import { SAME_G } from './tolerances';
import type { Arrangement } from './types';

/** Margins this close are the same, mm: a hundredth is less than anyone can measure. */
export const SAME_MARGIN_MM = 0.01;

/** The best so far, and what is proved about it. */
export interface ArrangeAnswer {
  readonly best: Arrangement | null;
  /** No arrangement needs less than this, g; infinite when it is proved that there is none. */
  readonly boundG: number;
  /** Between the best and the bound, g; null without an arrangement. */
  readonly gapG: number | null;
  /** The ballast is the least possible, or there is no arrangement. */
  readonly proved: boolean;
  /** None with this ballast has a margin above this, mm; null before that was looked at. */
  readonly marginBoundMm: number | null;
  /** The margin is the largest possible, to `SAME_MARGIN_MM`. */
  readonly marginProved: boolean;
  /** No fewer moves do it. */
  readonly movesProved: boolean;
  /** The margin that was wanted and is kept, mm; 0 where none was wanted, or none could be kept. */
  readonly keptMarginMm: number;
  readonly sentence: string;
}

/** The best so far with its proofs, as a search fills it in. */
export interface SearchState {
  best: Arrangement | null;
  boundG: number;
  marginBoundMm: number | null;
  marginProved: boolean;
  movesProved: boolean;
  /** The program whose bound closed the search bay by bay, for a second opinion. */
  lastProof: Milp | null;
  answer(): ArrangeAnswer;
  /** Keeps an arrangement if it is better, and tells of it. */
  take(arrangement: Arrangement | null): void;
  /** Raises the bound on the ballast, to whole steps, g, and tells of it. */
  raise(grams: number): void;
  /** A bound that did not stand up is no more than this, g. */
  takeBack(grams: number): void;
  /** There is no arrangement: proved. */
  none(): void;
  isProved(): boolean;
}

/** Nothing known yet. `stepG` is the step that all ballast comes in, 0 without any spot for it. */
export function searchState(stepG: number, onProgress?: (progress: ArrangeAnswer) => void): SearchState {
  const state: SearchState = {
    best: null,
    boundG: 0,
    marginBoundMm: null,
    marginProved: false,
    movesProved: false,
    lastProof: null,
    answer() {
      const { best, boundG, marginBoundMm, marginProved, movesProved } = state;
      const gapG = best && Math.max(0, best.ballastG - boundG);
      const outcome = {
        best,
        boundG,
        gapG,
        proved: state.isProved(),
        marginBoundMm,
        marginProved,
        movesProved,
        keptMarginMm: 0,
      };
      return { ...outcome, sentence: arrangeSentence(outcome) };
    },
    take(found) {
      if (!found || (state.best && !isBetter(found, state.best))) return;
      state.best = found;
      onProgress?.(state.answer());
    },
    raise(grams) {
      const least =
        stepG > 0 ? Math.ceil(grams / stepG - 1e-5) * stepG : grams > SAME_G ? Number.POSITIVE_INFINITY : 0;
      if (least <= state.boundG) return;
      state.boundG = least;
      onProgress?.(state.answer());
    },
    takeBack(grams) {
      state.boundG = Math.min(state.boundG, stepG > 0 ? Math.floor(grams / stepG + 1e-5) * stepG : 0);
    },
    none() {
      state.boundG = Number.POSITIVE_INFINITY;
    },
    isProved: () =>
      state.boundG === Number.POSITIVE_INFINITY ||
      (state.best !== null && state.best.ballastG <= state.boundG + SAME_G),
  };
  return state;
}

/** Less ballast; as much and a larger margin; as much and the same margin with fewer moves. */
function isBetter(found: Arrangement, than: Arrangement): boolean {
  if (Math.abs(found.ballastG - than.ballastG) > SAME_G) return found.ballastG < than.ballastG;
  if (Math.abs(found.marginMm - than.marginMm) > SAME_MARGIN_MM) return found.marginMm > than.marginMm;
  return found.moves < than.moves;
}
