import { balanceRows, bindingRows } from './balanceRows';
import { checkPlaced } from './check';
import type { Limit } from './limit';
import type { SolveMilp } from './milp';
import { type Settling, settlePlaces } from './settlePlaces';
import type { Arrangement, PlaceProblem } from './types';

/** The least that some limits must give way for there to be an arrangement. */
export interface Breach {
  readonly breachMm: number;
  readonly arrangement: Arrangement;
  /** The load state that is farthest outside, by name; null where no limit gives way. */
  readonly blame: string | null;
  readonly proved: boolean;
}

/** As closely as a breach is looked for, mm. */
const CLOSE_MM = 0.005;

/**
 * How far limits must give way at least. Ballast weighs as well, which makes how far a product of two unknowns; so a first
 * program without that weight gives a breach that is enough, and halving between it and none finds the least that is.
 * Null where even that does not do; `unknown` where the time was too short to tell.
 */
export function leastBreach(
  problem: PlaceProblem,
  limits: readonly Limit[],
  solve: SolveMilp,
  timeMs: number,
): Breach | null | 'unknown' {
  const settling = (of: PlaceProblem): Settling => ({
    problem: of,
    solve,
    tangents: new Map(),
    rows: bindingRows(balanceRows(of), 'breach'),
  });
  const first = settlePlaces(settling(problem), { seek: 'least breach', limits }, { timeMs });
  if (first.answer.status === 'infeasible') return null;
  if (!first.arrangement) return 'unknown';
  let best = measured(problem, limits, first.arrangement);
  if (limits.length === 0) return { ...best, proved: true };
  let [low, proved] = [0, true];
  // Mostly ballast is not in it, and the first is the least already: so it is asked just below that first.
  let midMm = Math.max(0, best.breachMm - CLOSE_MM);
  for (; best.breachMm - low > CLOSE_MM * 1.01; midMm = (low + best.breachMm) / 2) {
    const eased = letOut(problem, limits, midMm);
    const tried = settlePlaces(settling(eased), { seek: 'least breach', limits: [] }, { timeMs: timeMs / 4 });
    if (tried.arrangement) {
      const there = measured(problem, limits, tried.arrangement);
      // What is sound with so much eased breaches no more than that, to what a check forgives.
      best = there.breachMm < best.breachMm ? there : { ...there, breachMm: midMm };
      continue;
    }
    if (tried.answer.status !== 'infeasible') {
      proved = false;
      break;
    }
    low = midMm;
  }
  return { ...best, proved };
}

/** The problem with some limits let out by a length. */
function letOut(problem: PlaceProblem, limits: readonly Limit[], byMm: number): PlaceProblem {
  const by = (limit: Limit) => (limits.includes(limit) ? byMm : 0);
  const { band, lateralMm } = problem;
  return {
    ...problem,
    band: { forwardMm: band.forwardMm - by('forward'), aftMm: band.aftMm + by('aft') },
    lateralMm: lateralMm === null ? null : lateralMm + Math.max(by('left'), by('right')),
  };
}

function measured(problem: PlaceProblem, limits: readonly Limit[], arrangement: Arrangement) {
  const { cases } = checkPlaced(problem, arrangement.placed, arrangement.ballast);
  let [breachMm, blame] = [0, null as string | null];
  cases.forEach(({ forwardMarginMm, aftMarginMm, lateralMarginMm }, s) => {
    const outMm = Math.max(-forwardMarginMm, -aftMarginMm, -(lateralMarginMm ?? 0));
    if (limits.length > 0 && outMm > breachMm) [breachMm, blame] = [outMm, problem.cases[s]!.name];
  });
  return { breachMm, blame, arrangement };
}
