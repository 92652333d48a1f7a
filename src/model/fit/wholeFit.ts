import { perObjects } from '../../engine/memory/memory';
import { eitherStates, holdsIn, holdsInFlight, withinStates } from '../airframe/aboard';
import type { Positions } from '../airframe/loadSwitches';
import type { Aircraft } from '../document/types';
import type { FitKind, FitProblem, FitSeverity } from './fitProblem';
import { differsLittle, type Judged, judgeAll, judgeChanges } from './judgedFit';

export type { FitKind, FitParty, FitProblem, FitSeverity } from './fitProblem';

/** Everything that does not fit, in any load state: what cannot be built first, then the rest, each the worst first. */
export interface WholeFit {
  readonly problems: readonly FitProblem[];
  /** The same by the id in the file of everything that is at fault in it; nothing for what fits. */
  readonly byId: ReadonlyMap<string, readonly FitProblem[]>;
}

export interface WholeFitOptions {
  /** The least that parts and tanks should be apart, mm; none asked when left out. */
  readonly clearanceMm?: number;
}

/**
 * Judges the fit of the whole aircraft in every load state, states on the balancing stand among them. The very same
 * answer for the same aircraft. What did not change is not looked at again: with one part moved, only its own pairs are.
 */
export const wholeFit = (aircraft: Aircraft, { clearanceMm = 0 }: WholeFitOptions = {}): WholeFit =>
  fitOf(aircraft, clearanceMm);

const fitOf = perObjects(judged);

/** The last one judged for each clearance: what follows is mostly the same with something moved. */
const latest = new Map<number, Judged>();

function judged(aircraft: Aircraft, clearanceMm: number): WholeFit {
  const before = latest.get(clearanceMm);
  const all = (before && judgeChanges(before, aircraft)) ?? judgeAll(aircraft, clearanceMm);
  if (latest.size > mostKept) latest.clear();
  latest.set(clearanceMm, all);
  const problems = joined(aircraft, all.found).sort(worstFirst);
  const byId = new Map<string, FitProblem[]>();
  for (const problem of problems) {
    for (const id of new Set(concerned(problem))) {
      const ofItem = byId.get(id);
      if (ofItem) ofItem.push(problem);
      else byId.set(id, [problem]);
    }
  }
  return { problems, byId };
}

const mostKept = 4;

/** So many parts and tanks are judged within a few frames. */
const fewItems = 300;

/** Whether judging costs no more than a few frames: few items, or few that differ from what was judged last. */
export function isSoonJudged(aircraft: Aircraft): boolean {
  if (aircraft.parts.length + aircraft.tanks.length <= fewItems) return true;
  const before = latest.get(0);
  return before !== undefined && differsLittle(before, aircraft);
}

/** Takes what was found elsewhere of this very aircraft: it, and what differs little from it, is judged from there. */
export function takeJudged(aircraft: Aircraft, problems: readonly FitProblem[]): void {
  latest.set(0, { aircraft, clearanceMm: 0, found: problems });
}

/** A hull, wing or bay is not at fault for what reaches out of it. */
const concerned = ({ kind, parties }: FitProblem): string[] =>
  (holdersFault.includes(kind) ? parties.slice(0, 1) : parties).map(({ id }) => id);

const holdersFault: readonly FitKind[] = ['through', 'outside', 'outOfBay', 'keptFree'];

const severe: Readonly<Record<FitSeverity, number>> = { bad: 1, caution: 0 };

const worstFirst = (a: FitProblem, b: FitProblem): number =>
  severe[b.severity] - severe[a.severity] || b.byMm - a.byMm || (a.key < b.key ? -1 : 1);

/** The same trouble found of several solids of one item, or with the legs down and up, reported once, at its worst. */
function joined(aircraft: Aircraft, found: readonly FitProblem[]): FitProblem[] {
  const byKey = new Map<string, FitProblem[]>();
  for (const problem of found) {
    const alike = byKey.get(problem.key) ?? [];
    byKey.set(problem.key, join(aircraft, alike, problem));
  }
  return [...byKey.values()].flat();
}

function join(aircraft: Aircraft, alike: readonly FitProblem[], problem: FitProblem): FitProblem[] {
  for (const other of alike) {
    const states = eitherStates(other.states, problem.states, aircraft);
    if (!states) continue;
    const worse = worstFirst(other, problem) <= 0 ? other : problem;
    return join(
      aircraft,
      alike.filter((each) => each !== other),
      { ...worse, states },
    );
  }
  return [...alike, problem];
}

/** The problems that hold with the switches so. */
export const problemsIn = (
  problems: readonly FitProblem[],
  aircraft: Aircraft,
  positions: Positions,
): FitProblem[] => problems.filter(({ states }) => holdsIn(states, aircraft, positions));

/** The problems of states that fly. */
export const problemsInFlight = (problems: readonly FitProblem[]): FitProblem[] =>
  problems.filter(({ states }) => holdsInFlight(states));

/** Worse by no more than this is no worse, mm. */
const sameMm = 0.01;

/**
 * What does not fit after a change and did fit before it: problems that are new, that hold in further load states, or
 * that have become worse by more than a hundredth of a millimetre. Empty: nothing has been made worse.
 */
export function newProblems(before: WholeFit, after: WholeFit): FitProblem[] {
  const byKey = new Map<string, FitProblem[]>();
  for (const problem of before.problems) byKey.set(problem.key, [...(byKey.get(problem.key) ?? []), problem]);
  return after.problems.filter(
    ({ key, severity, byMm, states }) =>
      !byKey
        .get(key)
        ?.some(
          (old) =>
            byMm <= old.byMm + sameMm &&
            severe[severity] <= severe[old.severity] &&
            withinStates(states, old.states),
        ),
  );
}

/** What a change makes worse: the problems of `after` that `before` does not have. */
export const fitRefusals = (before: Aircraft, after: Aircraft, options: WholeFitOptions = {}): FitProblem[] =>
  newProblems(wholeFit(before, options), wholeFit(after, options));
