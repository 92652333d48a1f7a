import { checkPlaced } from './check';
import { leastBreach } from './leastBreach';
import type { Limit } from './limit';
import type { SolveMilp } from './milp';
import { WHOLE_WITHIN } from './tolerances';
import type { Arrangement, PlaceProblem } from './types';

/** Something that could be let go. */
export type Lift = { readonly id: string; readonly name: string } & (
  | { readonly what: 'limit'; readonly limits: readonly Limit[] }
  | { readonly what: 'rule'; readonly ruleId: string }
  | { readonly what: 'lead'; readonly leadId: string }
  /** A lock or a bay: options of a part that count only when it is let go. */
  | { readonly what: 'lock' | 'bay'; readonly partId: string; readonly optionIds: readonly string[] }
);

/** One smallest set of things which, let go, leaves a solution. */
export interface Reason {
  readonly lifts: readonly Lift[];
  /** How far the limits among them must give way, mm; 0 without any. */
  readonly breachMm: number;
  /** They cannot give way by less: proved to a hundredth of a millimetre. */
  readonly breachProved: boolean;
  /** The load state that needs it, by name; null where no limit gives way. */
  readonly blame: string | null;
  /** A checked arrangement with these let go; its margin is against the limits as they stand. */
  readonly arrangement: Arrangement;
  readonly sentence: string;
}

export interface WhyNot {
  /** The problem has a solution as it stands. */
  readonly possible: boolean;
  /** All sets of the smallest size that do it, those that leave the limits alone first. Empty when none was found. */
  readonly reasons: readonly Reason[];
  /** Nothing smaller does it: every smaller set was proved to have no solution. */
  readonly proved: boolean;
}

export interface WhyNotOrder {
  readonly solve: SolveMilp;
  readonly now: () => number;
  readonly timeMs: number;
  readonly cancelled?: () => boolean;
}

/** Sets larger than this help nobody. */
const MOST_LIFTS = 3;

/**
 * The smallest sets of things to let go when nothing works. The problem carries the options that locks and bays forbid;
 * they count only when lifted. All sets of one, then of two, then of three are tried, each with the whole program, so that
 * what is said to be smallest has been seen to be.
 */
export function whyNot(problem: PlaceProblem, lifts: readonly Lift[], order: WhyNotOrder): WhyNot {
  const endMs = order.now() + order.timeMs;
  const over = () => order.now() >= endMs || (order.cancelled?.() ?? false);
  let proved = true;
  for (let size = 0; size <= Math.min(MOST_LIFTS, lifts.length); size++) {
    const reasons: Reason[] = [];
    for (const set of subsets(lifts, size)) {
      if (over()) return { possible: false, reasons: sorted(reasons), proved: false };
      const tried = tryLifted(problem, lifts, set, order.solve, Math.max(1, endMs - order.now()));
      if (tried === 'unknown') proved = false;
      else if (tried) reasons.push(tried);
    }
    if (reasons.length > 0)
      return { possible: size === 0, reasons: size === 0 ? [] : sorted(reasons), proved };
  }
  return { possible: false, reasons: [], proved };
}

const sorted = (reasons: readonly Reason[]) => [...reasons].sort((a, b) => a.breachMm - b.breachMm);

function tryLifted(
  problem: PlaceProblem,
  all: readonly Lift[],
  set: readonly Lift[],
  solve: SolveMilp,
  timeMs: number,
): Reason | null | 'unknown' {
  const limits = set.flatMap((lift) => (lift.what === 'limit' ? lift.limits : []));
  const eased = lifted(problem, all, set);
  if (eased.parts.some(({ options }) => options.length === 0)) return null;
  const found = leastBreach(eased, limits, solve, timeMs);
  if (found === null || found === 'unknown') return found;
  const { marginMm } = checkPlaced(eased, found.arrangement.placed, found.arrangement.ballast);
  return {
    lifts: set,
    breachMm: found.breachMm,
    arrangement: { ...found.arrangement, marginMm },
    sentence: sentenceOf(set, found.breachMm, found.blame),
    blame: found.blame,
    breachProved: found.proved,
  };
}

/** The problem with a set let go and the rest held. */
function lifted(problem: PlaceProblem, all: readonly Lift[], set: readonly Lift[]): PlaceProblem {
  const held = all.filter((lift) => !set.includes(lift));
  const heldOptions = new Map<string, readonly string[]>();
  for (const lift of held) {
    if (lift.what === 'lock' || lift.what === 'bay') {
      heldOptions.set(lift.partId, [...(heldOptions.get(lift.partId) ?? []), ...lift.optionIds]);
    }
  }
  return {
    ...problem,
    apart: problem.apart.filter(({ id }) => !set.some((lift) => lift.what === 'rule' && lift.ruleId === id)),
    leads: problem.leads.filter(({ id }) => !set.some((lift) => lift.what === 'lead' && lift.leadId === id)),
    parts: problem.parts.map((part) => {
      const without = heldOptions.get(part.id);
      return without ? { ...part, options: part.options.filter(({ id }) => !without.includes(id)) } : part;
    }),
  };
}

function sentenceOf(set: readonly Lift[], breachMm: number, blame: string | null): string {
  const words = set.map((lift) => wordsFor(lift, breachMm));
  const said = words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${words.at(-1)}` : (words[0] ?? '');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}${blame ? `, ${blame}` : ''}.`;
}

function wordsFor({ what, name }: Lift, breachMm: number): string {
  switch (what) {
    case 'limit':
      // Rounded up, so that letting it give way by what is said is enough.
      return `let the ${name} give way by ${(Math.ceil(breachMm * 10 - WHOLE_WITHIN) / 10).toFixed(1)} mm`;
    case 'rule':
      return `let go of “${name}”`;
    case 'lead':
      return `take a longer ${name}`;
    case 'lock':
      return `unlock the ${name}`;
    case 'bay':
      return `let the ${name} leave its bay`;
  }
}

function* subsets<T>(list: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= list.length - size; i++) {
    for (const rest of subsets(list, size - 1, i + 1)) yield [list[i]!, ...rest];
  }
}
