import { byBays } from './byBays';
import type { Goal } from './goal';
import { choicesOf, patternProgram } from './patternProgram';
import { singlePatterns } from './patterns';
import type { Choice } from './rooms';
import { gapFor, type Search, settleChoices } from './search';
import { bySets, hasManyWays } from './sets/bySets';
import { arrangementOf, settlePlaces } from './settlePlaces';
import { SAME_G } from './tolerances';

const LEAST_BALLAST: Goal = { seek: 'least ballast' };
const MOST_MISFITS = 40;

/** Everything where it is, without ballast, if that is sound; where nothing may move nor be added there is no other. */
export function asItStands({ problem, state }: Search): void {
  const places = problem.parts.map(({ options, present }) => ({
    option: options.findIndex(({ id }) => id === present.optionId),
    centreMm: present.centreMm,
  }));
  if (places.some(({ option }) => option < 0)) return;
  const noBallast = problem.spots.map(() => 0);
  state.take(arrangementOf(problem, places, noBallast));
  if (problem.parts.length === 0 && problem.spots.length === 0 && !state.best) state.none();
}

/** A bound and a first arrangement from a program that forgets what overlaps; sets that do not fit are told to it. */
export function withoutOverlap(search: Search): void {
  const { problem, rows, rooms, packer, solve, state, stepG, mostMoves, leftMs, shouldStop } = search;
  if (state.isProved() || (state.best && hasManyWays(problem))) return;
  const singles = singlePatterns(problem, rooms, rows);
  const misfits: Choice[][] = [];
  while (misfits.length < MOST_MISFITS && !shouldStop()) {
    const { program, patternsIn } = patternProgram(problem, LEAST_BALLAST, rows, singles, {
      forbidden: misfits,
      mostMoves,
    });
    const found = solve(program, {
      timeMs: leftMs(),
      gap: gapFor(LEAST_BALLAST, stepG),
      enough: state.boundG + SAME_G,
      shouldStop,
    });
    if (found.status === 'infeasible') {
      state.none();
      return;
    }
    state.raise(found.bound);
    if (!found.values) return;
    const choices = choicesOf(patternsIn(found.values));
    const misfit = rooms
      .map((room) => within(room, choices))
      .find(
        (set) =>
          set.length > 0 &&
          !packer.pack(
            set,
            set.map(() => 1),
          ),
      );
    if (!misfit) {
      settleChoices(search, choices, LEAST_BALLAST, () => state.best !== null);
      return;
    }
    misfits.push(misfit);
  }
}

const within = (room: readonly Choice[], choices: readonly Choice[]): Choice[] =>
  choices.filter(({ part, option }) => room.some((each) => each.part === part && each.option === option));

/** Each way is tried for so long before the better one goes on, ms. */
const HEAT_MS = 1000;

/**
 * Sets of parts by bay and the whole program, a second each; where that is not enough all sets of a bay at once, if they have
 * not been gone through already; and then of the two the one that came further.
 */
export function raced(search: Search): void {
  const { state, leftMs } = search;
  const open = () => !state.isProved() && !search.shouldStop();
  if (!open()) return;
  const start = state.boundG;
  setsByBay(search, Math.min(HEAT_MS, leftMs() / 2));
  const [bays, bestOfBays] = [state.boundG - start, state.best];
  if (!open()) return;
  wholeProgram(search, Math.min(HEAT_MS, leftMs() / 2));
  if (open() && !hasManyWays(search.problem)) bySets(search);
  if (!open()) return;
  const isWholeAhead = state.boundG - start > bays + SAME_G || state.best !== bestOfBays;
  const [first, second] = isWholeAhead ? [wholeProgram, setsByBay] : [setsByBay, wholeProgram];
  first(search, leftMs() * 0.6);
  if (open()) second(search, leftMs() * 0.9);
}

function setsByBay(search: Search, budgetMs: number): void {
  const { state, order } = search;
  const untilMs = order.now() + budgetMs;
  const found = byBays(search, LEAST_BALLAST, {
    patterns: search.patterns(budgetMs / 2),
    untilMs,
    knownBound: state.boundG,
    isEnough: state.isProved,
    onBound: (grams) => state.raise(Math.min(grams, state.best?.ballastG ?? Number.POSITIVE_INFINITY)),
  });
  // Where something else closes the search, this was not its last step: choices it would still have ruled out are no doubt.
  state.lastProof = state.isProved() ? found.program : null;
}

function wholeProgram(search: Search, budgetMs: number): void {
  const { state, stepG, mostMoves, shouldStop } = search;
  const goal: Goal = { seek: 'least ballast', atLeastG: state.boundG };
  const before = state.best;
  const { answer, arrangement } = settlePlaces(
    search,
    goal,
    { timeMs: budgetMs, gap: gapFor(goal, stepG), shouldStop },
    { mostMoves },
    before ? { ballastG: before.ballastG - stepG } : {},
  );
  state.take(arrangement);
  if (answer.status !== 'infeasible') {
    state.raise(Math.min(answer.bound, before?.ballastG ?? Number.POSITIVE_INFINITY));
  } else if (before) state.raise(before.ballastG);
  else state.none();
}

/** A second opinion takes no longer than this, ms. */
const RECHECK_MS = 1500;

/** The last step of the proof once more, solved plainly; a bound that does not stand up is taken back and searched again. */
export function askedAgain(search: Search): void {
  const { state, solve, stepG, leftMs, shouldStop } = search;
  const { best, lastProof } = state;
  if (!best || best.ballastG === 0 || !lastProof || !state.isProved() || shouldStop()) return;
  const again = solve(lastProof, {
    timeMs: Math.min(RECHECK_MS, leftMs() / 3),
    gap: gapFor(LEAST_BALLAST, stepG),
    shouldStop,
    plainly: true,
  });
  const least = again.values?.length
    ? lastProof.cost.reduce((sum, c, i) => sum + c * again.values![i]!, 0)
    : null;
  if (least === null || least > best.ballastG - stepG / 2) return;
  state.takeBack(least);
  wholeProgram(search, leftMs() * 0.8);
}
