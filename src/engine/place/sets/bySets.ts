import { seededRandom } from '../../fit/random';
import { byBays } from '../byBays';
import type { Goal } from '../goal';
import { type Search, takePacked } from '../search';
import { SAME_G } from '../tolerances';
import type { PlaceProblem } from '../types';
import { exchange } from './exchange';
import { type SetBound, setBound, setsWithin } from './setBound';
import { setPatterns } from './setPatterns';
import type { SetQuestion } from './setProgram';

const LEAST_BALLAST: Goal = { seek: 'least ballast' };
/** Of the time that is left, for all of this: the whole program has the rest. */
const ALL_SHARE = 0.65;
/** Of that, as long as it lasts: for the bound, for exchanges before and after a first try at a proof, and for a proof. */
const BOUND_SHARE = 0.4;
const FIRST_SHARES = [0.15, 0.4] as const;
const PROOF_SHARE = 0.7;
/** With fewer ways than this to choose options the whole program is done sooner. */
const MANY_WAYS = 2000;

export const hasManyWays = ({ parts }: PlaceProblem): boolean =>
  parts.reduce((ways, { options }) => ways * options.length, 1) >= MANY_WAYS;

/** Chance that begins the same each time. */
const SEED = 1;

/**
 * A bound by sets of parts over rooms, choices near it that are bettered by exchanges, and then, with all sets that an
 * arrangement with so much ballast can be made of, more and more ballast until one is found: then nothing less will do.
 */
export function bySets(search: Search): void {
  const { problem, rows, rooms, packer, solve, state, order, mostMoves, leftMs, shouldStop } = search;
  if (state.isProved() || problem.parts.length === 0) return;
  const question: SetQuestion = { problem, goal: LEAST_BALLAST, rows, rooms };
  const endMs = order.now() + leftMs() * ALL_SHARE;
  const until = (share: number) => order.now() + (endMs - order.now()) * share;
  const overAfter = (share: number) => {
    const untilMs = until(share);
    return () => shouldStop() || order.now() > untilMs;
  };
  const mostG = problem.spots.reduce((sum, spot) => sum + spot.mostG, 0);
  const found = setBound(question, {
    solve,
    over: overAfter(BOUND_SHARE),
    onBound: (grams) => (grams > mostG + SAME_G ? state.none() : state.raise(grams)),
  });
  if (!found || state.isProved()) return;
  const random = seededRandom(SEED);
  for (const share of FIRST_SHARES) {
    // Exchanges do not count moves.
    if (mostMoves === undefined) {
      exchange(question, found.likely, {
        packer,
        random,
        over: overAfter(share),
        take: (choices) => takePacked(search, choices, LEAST_BALLAST, state.isProved) && state.isProved(),
      });
    }
    deepen(search, question, found, mostG, until(PROOF_SHARE));
    if (state.isProved() || shouldStop() || order.now() > endMs) return;
  }
}

/** Asks for arrangements with no more ballast than so much, more each time, among all sets that they can be made of. */
function deepen(
  search: Search,
  question: SetQuestion,
  { bound, priced }: SetBound,
  mostG: number,
  untilMs: number,
): void {
  const { packer, state, stepG, order, shouldStop } = search;
  const packed = new Map<string, readonly number[] | null>();
  const open = () => !state.isProved() && !shouldStop() && order.now() < untilMs;
  for (let more = 0; open(); more = 2 * more + 1) {
    const targetG = Math.min(
      state.boundG + more * stepG,
      state.best ? state.best.ballastG - stepG : Number.POSITIVE_INFINITY,
      mostG,
    );
    const sets = setsWithin(priced, targetG - bound + SAME_G);
    if (!sets) return;
    const beyondG = targetG + stepG;
    const { bound: reached } = byBays(
      search,
      { seek: 'least ballast', atMostG: targetG },
      {
        ...setPatterns(question, packer, sets, packed),
        untilMs,
        knownBound: state.boundG,
        isEnough: () => state.isProved() || state.boundG >= beyondG - SAME_G,
        onBound: (grams) => state.raise(Math.min(grams, beyondG, state.best?.ballastG ?? beyondG)),
      },
    );
    if (reached === Number.POSITIVE_INFINITY && beyondG > mostG + SAME_G) state.none();
    if (state.boundG < beyondG - SAME_G && !state.isProved()) return;
  }
}
