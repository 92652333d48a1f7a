import { seededRandom } from '../../fit/random';
import type { Goal } from '../goal';
import { nextSteps } from '../nextSteps';
import { packedBothWays } from '../packedBothWays';
import type { Choice } from '../rooms';
import type { Search } from '../search';
import { SAME_MARGIN_MM } from '../searchState';
import { arrangementOf } from '../settlePlaces';
import { exchange } from './exchange';

const LEAST_BALLAST: Goal = { seek: 'least ballast' };
/** It is a first answer or none: looked for no longer than this, ms, and than this share of the time. */
const AT_ONCE_MS = 1000;
const AT_ONCE_SHARE = 0.1;
/** Chance that begins the same each time. */
const SEED = 2;

/**
 * A first arrangement without the solver, which takes longer to start than this takes: choices that exchanges come to, packed as
 * far forward or aft as they go, with the ballast that suits them there. It knows nothing of how many parts it moves.
 */
export function atOnce(search: Search): void {
  const { problem, rows, rooms, state, packer, order, mostMoves, leftMs, shouldStop } = search;
  if (state.best || mostMoves !== undefined || problem.parts.length === 0) return;
  const untilMs = order.now() + Math.min(AT_ONCE_MS, leftMs() * AT_ONCE_SHARE);
  exchange({ problem, goal: LEAST_BALLAST, rows, rooms }, [], {
    packer,
    random: seededRandom(SEED),
    over: () => shouldStop() || order.now() > untilMs,
    take: (choices) => takeWithBallast(search, choices),
  });
}

/** True when that made an arrangement. */
function takeWithBallast({ problem, rooms, packer, state }: Search, choices: readonly Choice[]): boolean {
  const nothingToTry = problem.parts.map(() => []);
  for (const centresMm of packedBothWays(problem, rooms, packer, choices)) {
    const places = choices.map(({ part, option }) => ({ option, centreMm: centresMm[part]! }));
    const { gramsG } = nextSteps(problem, places, nothingToTry, SAME_MARGIN_MM).at;
    state.take(arrangementOf(problem, places, gramsG));
  }
  return state.best !== null;
}
