import type { Vec3 } from '../geometry/types';
import type { BalanceRow, Limit } from './balanceRows';
import { checkPlaced } from './check';
import { type Decided, fullProgram, placesIn } from './fullProgram';
import { type CommonColumns, type Goal, gramsIn } from './goal';
import type { MilpAnswer, SolveMilp } from './milp';
import { STAY } from './stays';
import type { Arrangement, PlaceProblem } from './types';

/** How far from its present place a part still counts as not moved, mm. */
const STAYED_MM = 1e-3;

/** A place for each part and grams for each spot, as an arrangement; null when the check finds any fault. */
export function arrangementOf(
  problem: PlaceProblem,
  places: readonly { readonly option: number; readonly centreMm: Vec3 }[],
  gramsG: readonly number[],
): Arrangement | null {
  const placed = problem.parts.map(({ id, options, present }, i) => {
    const { option, centreMm: at } = places[i]!;
    const { id: chosenId, cgFromCentreMm: off } = options[option]!;
    const optionId = chosenId === STAY ? present.optionId! : chosenId;
    const stayed =
      present.optionId === optionId &&
      at.every((mm, axis) => Math.abs(mm - present.centreMm[axis as 0 | 1 | 2]) < STAYED_MM);
    const centreMm = stayed ? present.centreMm : at;
    const cgMm: Vec3 = [centreMm[0] + off[0], centreMm[1] + off[1], centreMm[2] + off[2]];
    return { id, optionId, centreMm, cgMm, moved: !stayed };
  });
  const ballast = problem.spots.flatMap(({ id }, k) =>
    gramsG[k]! > 0 ? [{ spotId: id, massG: gramsG[k]! }] : [],
  );
  const { faults, marginMm } = checkPlaced(problem, placed, ballast);
  if (faults.length > 0) return null;
  return {
    placed,
    ballast,
    ballastG: gramsG.reduce((sum, grams) => sum + grams, 0),
    marginMm,
    moves: placed.filter(({ moved }) => moved).length,
  };
}

/** What came of settling: the solver's word, and the arrangement if it stands up to the check. */
export interface Settled {
  readonly answer: MilpAnswer;
  readonly arrangement: Arrangement | null;
}

/**
 * Solves for the places with what is decided held. Directions that the solver chose are then held and the rest is solved
 * once more, which takes away the slack that its tolerance for whole numbers leaves in places.
 */
export function settlePlaces(
  problem: PlaceProblem,
  goal: Goal,
  rows: readonly BalanceRow[],
  solve: SolveMilp,
  order: Parameters<SolveMilp>[1],
  decided: Decided = {},
  betterThan: { readonly ballastG?: number; readonly marginMm?: number } = {},
): Settled {
  const { program, common, bodies } = fullProgram(problem, goal, rows, decided);
  if (betterThan.ballastG !== undefined) {
    program.rows.push({
      lower: Number.NEGATIVE_INFINITY,
      upper: betterThan.ballastG,
      columns: common.steps,
      values: problem.spots.map(({ stepG }) => stepG),
    });
  }
  if (betterThan.marginMm !== undefined && common.margin !== null) {
    program.lower[common.margin] = Math.min(program.upper[common.margin]!, betterThan.marginMm);
  }
  const answer = solve(program, order);
  if (!answer.values) return { answer, arrangement: null };
  const places = placesIn(bodies, answer.values);
  const grams = gramsIn(problem, common, answer.values);
  const held = decided.likeMm && decided.choices;
  const again = held
    ? null
    : settlePlaces(
        problem,
        goal,
        rows,
        solve,
        { timeMs: 500 },
        {
          choices: places,
          likeMm: places.map(({ centreMm }) => centreMm),
        },
      ).arrangement;
  return {
    answer,
    arrangement: again ?? arrangementOf(breached(problem, goal, common, answer.values), places, grams),
  };
}

/** The limits as they have given way, so that the check asks for no more than that. */
function breached(
  problem: PlaceProblem,
  goal: Goal,
  common: CommonColumns,
  values: readonly number[],
): PlaceProblem {
  if (goal.seek !== 'least breach' || common.breach === null) return problem;
  const byMm = values[common.breach]!;
  const gives = (limit: Limit) => (goal.limits.includes(limit) ? byMm : 0);
  const { forwardMm, aftMm } = problem.band;
  return {
    ...problem,
    band: { forwardMm: forwardMm - gives('forward'), aftMm: aftMm + gives('aft') },
    lateralMm:
      problem.lateralMm === null ? null : problem.lateralMm + Math.max(gives('left'), gives('right')),
  };
}
