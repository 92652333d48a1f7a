import { balanceRows, bindingRows } from './balanceRows';
import type { Goal } from './goal';
import type { Around } from './leadShares';
import type { SolveMilp } from './milp';
import { settlePlaces } from './settlePlaces';
import type { Arrangement, PlaceProblem } from './types';

/** A program with everything decided but the distances is small: it has so long, ms. */
const HELD_MS = 1000;

/**
 * The best in which parts keep their options and the order in which they stand: least ballast, then the largest margin.
 * Parts in `still` keep their places. Null where the check refuses what comes out.
 */
export function bestInOrder(
  asked: PlaceProblem,
  around: Around,
  still: ReadonlySet<number>,
  solve: SolveMilp,
  mostBallastG: number,
): Arrangement | null {
  const problem = {
    ...asked,
    parts: asked.parts.map((part, i) => (still.has(i) ? heldAt(part, around[i]!) : part)),
  };
  const decided = {
    choices: around.map(({ option }, part) => ({ part, option: still.has(part) ? 0 : option })),
    likeMm: around.map(({ centreMm }) => centreMm),
  };
  const rows = bindingRows(balanceRows(problem, around), 'margin');
  const settling = { problem, rows, solve, tangents: new Map() };
  const settled = (goal: Goal, better = {}) =>
    settlePlaces(settling, goal, { timeMs: HELD_MS, gap: 1e-4 }, decided, better).arrangement;
  const ballastG =
    mostBallastG > 0 ? settled({ seek: 'least ballast' }, { ballastG: mostBallastG })?.ballastG : 0;
  return ballastG === undefined ? null : settled({ seek: 'most margin', ballastG });
}

/** A part with the one place that it has in an option. */
function heldAt(part: PlaceProblem['parts'][number], { option, centreMm }: Around[number]): typeof part {
  const only = part.options[option]!;
  const corner = (side: 1 | -1) =>
    [
      centreMm[0] + (side * only.sizeMm[0]) / 2,
      centreMm[1] + (side * only.sizeMm[1]) / 2,
      centreMm[2] + (side * only.sizeMm[2]) / 2,
    ] as const;
  return { ...part, options: [{ ...only, region: { minMm: corner(-1), maxMm: corner(1) } }] };
}
