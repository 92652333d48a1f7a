import type { Vec3 } from '../geometry/types';
import { type BalanceRow, type Beside, balanceRows, bindingRows } from './balanceRows';
import { checkPlaced, FORGIVEN_MM } from './check';
import { type Decided, fullProgram, placesIn } from './fullProgram';
import { type CommonColumns, type Goal, gramsIn } from './goal';
import { type LeadTangents, learnTangents } from './leadRows';
import { endsAt, leadRunMm } from './leadRun';
import type { Around } from './leadShares';
import type { Limit } from './limit';
import { addRow, type Milp, type MilpAnswer, type SolveMilp } from './milp';
import { STAY } from './stays';
import type { Arrangement, Lead, PlaceProblem } from './types';

/** How far from its present place a part still counts as not moved, mm. */
const STAYED_MM = 1e-3;

/** Parts at places and grams at spots, whether or not they keep anything. */
export function putAt(
  problem: PlaceProblem,
  places: Around,
  gramsG: readonly number[],
): Pick<Arrangement, 'placed' | 'ballast'> {
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
  return { placed, ballast };
}

/** A place for each part and grams for each spot, as an arrangement; null when the check finds any fault. */
export function arrangementOf(
  problem: PlaceProblem,
  places: Around,
  gramsG: readonly number[],
): Arrangement | null {
  const { placed, ballast } = putAt(problem, places, gramsG);
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

/** What a search has at hand whenever places are settled. */
export interface Settling {
  readonly problem: PlaceProblem;
  /** What the balance asks at least, wherever items are. */
  readonly rows: readonly BalanceRow[];
  readonly solve: SolveMilp;
  /** Grows as leads are seen to run. */
  readonly tangents: LeadTangents;
}

interface Better {
  readonly ballastG?: number;
  readonly marginMm?: number;
}

/** Rounds in which leads and bends are followed to where things have gone, and how often all is solved anew for a lead. */
const MOST_ROUNDS = 4;
const HELD_MS = 500;

/**
 * Solves for the places with what is decided held. Directions that the solver chose are then held and the rest is solved
 * once more around these places, which takes away what is not exact: the slack that its tolerance for whole numbers leaves,
 * bends of leads, chords past edges. Leads that come out too short are learnt from and it is solved again.
 */
export function settlePlaces(
  settling: Settling,
  goal: Goal,
  order: Parameters<SolveMilp>[1],
  decided: Decided = {},
  betterThan: Better = {},
): Settled {
  const { problem, rows, solve, tangents } = settling;
  let settled: Settled | null = null;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { program, common, bodies } = fullProgram(problem, goal, rows, { ...decided, tangents });
    askBetter(program, problem, common, betterThan);
    const answer = solve(program, order);
    if (!answer.values) return { answer, arrangement: settled?.arrangement ?? null };
    const places = placesIn(bodies, answer.values);
    const checked = breached(problem, goal, common, answer.values);
    const asFound = () => arrangementOf(checked, places, gramsIn(problem, common, answer.values!));
    const arrangement =
      (decided.likeMm ? asFound() : null) ?? heldThere(settling, goal, places, order) ?? asFound();
    settled = { answer, arrangement };
    // Only where a lead turned out too short is there something to learn.
    if (arrangement || !learnLeads(problem, tangents, places) || order.shouldStop?.()) return settled;
  }
  return settled!;
}

/** The same choices and directions once more, around places that come out truer each time; the first that is sound. */
function heldThere(
  settling: Settling,
  goal: Goal,
  places: Around,
  { shouldStop }: Parameters<SolveMilp>[1],
): Arrangement | null {
  const { problem, solve, tangents } = settling;
  const bends = problem.leads.some(bendsAs);
  let around = places;
  for (let round = 0; round < (bends ? MOST_ROUNDS : 2); round++) {
    const rows = bends ? bindingRows(balanceRows(problem, around), besideFor(goal)) : settling.rows;
    const likeMm = around.map(({ centreMm }) => centreMm);
    const { program, common, bodies } = fullProgram(problem, goal, rows, {
      choices: choicesOf(around),
      likeMm,
      tangents,
    });
    const answer = solve(program, { timeMs: HELD_MS, ...(shouldStop ? { shouldStop } : {}) });
    if (!answer.values) return null;
    around = placesIn(bodies, answer.values);
    const checked = breached(problem, goal, common, answer.values);
    const arrangement = arrangementOf(checked, around, gramsIn(problem, common, answer.values));
    if (arrangement) return arrangement;
    learnLeads(problem, tangents, around);
  }
  return null;
}

const choicesOf = (around: Around) => around.map(({ option }, part) => ({ part, option }));

/** Whether a lead's pull is no linear function of its ends. */
export const bendsAs = ({ mass, waypointsMm = [] }: Lead): boolean =>
  mass !== undefined && (waypointsMm.length > 0 || mass.gPerMm > 0);

/** Which rows can bind for a goal. */
const besideFor = (goal: Goal): Beside => (goal.seek === 'least breach' ? 'breach' : 'margin');

/** Learns from leads that do not reach with everything here; whether there was anything new. */
function learnLeads(problem: PlaceProblem, tangents: LeadTangents, places: Around): boolean {
  let fresh = false;
  for (const lead of problem.leads) {
    if (lead.by !== 'straight') continue;
    const ends = endsAt(problem, lead, (part) => places[part]!);
    if (leadRunMm(lead, ...ends) > lead.lengthMm + FORGIVEN_MM / 10) {
      fresh = learnTangents(tangents, lead, ...ends) || fresh;
    }
  }
  return fresh;
}

function askBetter(
  program: Milp,
  { spots }: PlaceProblem,
  { steps, margin }: CommonColumns,
  { ballastG, marginMm }: Better,
): void {
  if (ballastG !== undefined) {
    const grams = spots.map(({ stepG }, k) => [steps[k]!, stepG] as const);
    addRow(program, grams, Number.NEGATIVE_INFINITY, ballastG);
  }
  if (marginMm !== undefined && margin !== null) {
    program.lower[margin] = Math.min(program.upper[margin]!, marginMm);
  }
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
