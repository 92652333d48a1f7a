import { byBays } from '../byBays';
import type { Goal } from '../goal';
import type { Pattern } from '../patterns';
import type { Search } from '../search';
import { SAME_G } from '../tolerances';
import { type SetBound, setBound } from './setBound';
import { setPatterns } from './setPatterns';
import type { SetQuestion } from './setProgram';

const LEAST_BALLAST: Goal = { seek: 'least ballast' };
/** Of the time that is left: for the bound, for choices of what came up on the way to it, and for the proof. */
const BOUND_SHARE = 0.4;
const PROMISING_SHARE = 0.3;
const PROOF_SHARE = 0.6;
/** So many choices of promising sets are settled. */
const MOST_PROMISING = 3;
/** More sets than this in one room are more than the solver can choose from. */
const MOST_SETS = 5000;

/**
 * A bound by sets of parts over rooms, a choice of the sets that came up on the way to it, and then, with all sets that an
 * arrangement of so much ballast can be made of, more and more ballast until one is found: then nothing less will do.
 */
export function bySets(search: Search): void {
  const { problem, rows, rooms, packer, solve, state, order, leftMs, shouldStop } = search;
  if (state.isProved() || problem.parts.length === 0) return;
  const question: SetQuestion = { problem, goal: LEAST_BALLAST, rows, rooms };
  const until = (share: number) => order.now() + leftMs() * share;
  const packed = new Map<string, readonly number[] | null>();
  const boundUntilMs = until(BOUND_SHARE);
  const found = setBound(question, {
    solve,
    over: () => shouldStop() || order.now() > boundUntilMs,
    onBound: (grams) => state.raise(grams),
  });
  if (!found || state.isProved()) return;
  const promising = setPatterns(question, packer, promisingSets(question, found.promising), packed);
  byBays(search, LEAST_BALLAST, {
    ...promising,
    untilMs: until(PROMISING_SHARE),
    knownBound: state.boundG,
    mostSettled: MOST_PROMISING,
    isEnough: state.isProved,
    onBound: () => {},
  });
  deepen(search, question, found, packed, until(PROOF_SHARE));
}

/** Sets in which no part comes twice, as places in the lists of their rooms. */
const promisingSets = ({ rooms }: SetQuestion, patterns: readonly Pattern[]): number[][][] =>
  rooms.map((room, r) => {
    const sets = new Map<string, number[]>();
    for (const { room: own, choices } of patterns) {
      if (own !== r || new Set(choices.map(({ part }) => part)).size < choices.length) continue;
      const set = choices.map((choice) => room.indexOf(choice)).sort((a, b) => a - b);
      sets.set(set.join(' '), set);
    }
    return [...sets.values()];
  });

/** Asks for arrangements with no more ballast than so much, more each time, among all sets that they can be made of. */
function deepen(
  search: Search,
  question: SetQuestion,
  { bound, priced }: SetBound,
  packed: Map<string, readonly number[] | null>,
  untilMs: number,
): void {
  const { problem, packer, state, stepG, order, shouldStop } = search;
  const mostG = problem.spots.reduce((sum, spot) => sum + spot.mostG, 0);
  const open = () => !state.isProved() && !shouldStop() && order.now() < untilMs;
  for (let more = 0; open(); more = 2 * more + 1) {
    const targetG = Math.min(
      state.boundG + more * stepG,
      state.best ? state.best.ballastG - stepG : Number.POSITIVE_INFINITY,
      mostG,
    );
    const sets = priced.map(({ leastCost, ways }) => {
      const closest = ways.reduce((a, b) => (b.leastCost > a.leastCost ? b : a));
      return closest.within(leastCost + targetG - bound + SAME_G, MOST_SETS);
    });
    if (sets.some((list) => list === null)) return;
    const beyondG = targetG + stepG;
    const { exhausted } = byBays(search, LEAST_BALLAST, {
      ...setPatterns(question, packer, sets as number[][][], packed),
      untilMs,
      knownBound: state.boundG,
      isEnough: () => state.isProved() || state.boundG >= beyondG - SAME_G,
      onBound: (grams) => state.raise(Math.min(grams, beyondG, state.best?.ballastG ?? beyondG)),
    });
    if (exhausted && beyondG > mostG) state.none();
    if (state.boundG < beyondG - SAME_G && !state.isProved()) return;
  }
}
