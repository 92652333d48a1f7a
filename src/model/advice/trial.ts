import type { Aircraft } from '../document/types';
import { newProblems, wholeFit } from '../fit/wholeFit';
import { type StateBalance, type StateBalances, stateBalances } from '../judgement/flyingStates';
import type { Given } from '../judgement/judgeFully';
import type { Judgement } from '../judgement/types';
import type { Spoken } from './figures';
import { type Goal, mends } from './goal';
import { applyRemedy, type Remedy, type RemedyEdit } from './remedy';

/** An aircraft that needs a remedy, judged as it is, and how much may still be tried. */
export interface Workshop {
  readonly aircraft: Aircraft;
  readonly given: Given;
  readonly spoken: Spoken;
  /** The whole judgement, over every load state and the fit. */
  readonly judge: (aircraft: Aircraft, given: Given) => Judgement;
  readonly before: Judgement;
  readonly states: readonly StateBalance[];
  /** Places that may still be tried; a search that ends for want of them is not exhaustive. */
  readonly tries: { left: number };
  /** Whole judgements left to all searches together: few where each searches the load states again. */
  readonly judgings: { left: number };
  /** How edits were found to fit: each search comes by places that another has looked at. */
  readonly fits: Map<string, Fits>;
}

/** What came of trying: the judgement, or how much farther anything new could be, mm. */
export type Trial =
  | { readonly ok: true; readonly result: Judgement }
  | { readonly ok: false; readonly atLeastMm: number };

const FAILED: Trial = { ok: false, atLeastMm: 0 };

/** All flying load states of an aircraft along their burns; where there are many only some, and then `all` is false. */
export const statesOf = (aircraft: Aircraft, given: Given): StateBalances =>
  stateBalances(aircraft, { ...given, loads: { status: 'unfinished' }, fit: null, certainty: null });

/** Whether every point of every state lies between the limits of a goal. */
const reaches = (states: readonly StateBalance[], { axis, lowMm, highMm }: Goal): boolean =>
  states.every(({ balance }) =>
    balance.travel.every(({ cgMm }) => cgMm[axis] >= lowMm && cgMm[axis] <= highMm),
  );

type Fits = { readonly ok: true } | { readonly ok: false; readonly atLeastMm: number };

/** Whether nothing fits worse than before, in any load state; else how far the worst of it must be left at least. */
function fitsAfter({ aircraft, fits }: Workshop, edits: readonly RemedyEdit[], after: Aircraft): Fits {
  const key = JSON.stringify(edits);
  let fit = fits.get(key);
  if (!fit) {
    fit = judgedFit(aircraft, after);
    fits.set(key, fit);
  }
  return fit;
}

function judgedFit(aircraft: Aircraft, after: Aircraft): Fits {
  const before = wholeFit(aircraft);
  const misfits = newProblems(before, wholeFit(after));
  if (misfits.length === 0) return { ok: true };
  const was = new Map(before.problems.map(({ key, byMm }) => [key, byMm]));
  return { ok: false, atLeastMm: Math.max(...misfits.map(({ key, byMm }) => byMm - (was.get(key) ?? 0))) };
}

/** Whether edits leave everything fitting as it did, whatever becomes of the balance. */
export const fitsThere = (shop: Workshop, edits: readonly RemedyEdit[]): Fits =>
  fitsAfter(shop, edits, applyRemedy(shop.aircraft, { edits }));

/**
 * Carries edits out and judges the whole aircraft again, what is quick first: the fit, of which only what was touched is
 * looked at again, then the balance, then everything. A place that does not fit says by how much at least it must be
 * left, since what is that deep in another thing, or that near it, stays so for any shorter way.
 */
export function tryEdits(shop: Workshop, goal: Goal, edits: readonly RemedyEdit[]): Trial {
  const after = applyRemedy(shop.aircraft, { edits });
  const fits = fitsAfter(shop, edits, after);
  if (!fits.ok) return fits;
  if (!reaches(statesOf(after, shop.given).states, goal)) return FAILED;
  return judgedAfter(shop, after, goal);
}

/** The judgement of an aircraft that was worked on, if it mends what was aimed at. */
export function judgedAfter(
  { before, given, judge, judgings }: Workshop,
  after: Aircraft,
  goal: Pick<Goal, 'targets' | 'mayLeave'>,
): Trial {
  if (judgings.left <= 0) return FAILED;
  judgings.left -= 1;
  const result = judge(after, given);
  return mends(before, result, goal) ? { ok: true, result } : FAILED;
}

/** The remedy that edits make, when they do. */
export function remedyIf(
  shop: Workshop,
  goal: Goal,
  made: Pick<Remedy, 'kind' | 'edits' | 'words'>,
): Remedy | null {
  const trial = tryEdits(shop, goal, made.edits);
  return trial.ok ? { ...made, result: trial.result } : null;
}
