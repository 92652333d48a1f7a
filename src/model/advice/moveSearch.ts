import type { Vec3 } from '../../engine/geometry/types';
import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { aircraftExtent, itemExtent } from '../airframe/extent';
import { lengthStepsMm, shiftWords, stepped } from './figures';
import type { Goal } from './goal';
import { type Interval, shiftInterval } from './linear';
import { type Mover, moverName } from './movers';
import type { Remedy, RemedyEdit } from './remedy';
import { type Trial, tryEdits, type Workshop } from './trial';

/** A move that does it. */
export interface FoundMove {
  readonly mover: Mover;
  readonly shiftMm: number;
  readonly remedy: Remedy;
}

/** Leads shift the linear answer a little: it is widened by this share, and by this much, mm. */
const WIDER = { share: 0.03, mm: 1 } as const;

/** The edits of a move along one axis. */
export function moveEdits({ items, linked }: Mover, axis: 0 | 1 | 2, shiftMm: number): readonly RemedyEdit[] {
  const byMm: Vec3 = [axis === 0 ? shiftMm : 0, axis === 1 ? shiftMm : 0, axis === 2 ? shiftMm : 0];
  // The other one of a mirrored pair follows by itself.
  return (linked ? items.slice(0, 1) : items).map(({ id }) => ({ do: 'move', id, byMm }));
}

/** How far things can be moved without leaving the box around the aircraft, mm. */
export function withinAircraft({ aircraft }: Workshop, { items }: Mover, axis: 0 | 1 | 2): Interval {
  const whole = aircraftExtent(aircraft);
  const boxes = items.map(itemExtent);
  return {
    fromMm: Math.max(...boxes.map(({ minMm }) => whole.minMm[axis] - minMm[axis])),
    toMm: Math.min(...boxes.map(({ maxMm }) => whole.maxMm[axis] - maxMm[axis])),
  };
}

/** What a search for a move is held to. */
export interface MoveLimits {
  /** No farther than this, mm; as far as the aircraft goes when left out. */
  readonly longestMm?: number;
  /** One way only, aft and right +. */
  readonly way?: 1 | -1;
  /** What is done besides, already in the workshop's states. */
  readonly besides?: readonly RemedyEdit[];
}

/**
 * The shortest move of some things along an axis that does it, in whole steps; null when none does or the tries have run
 * out. Every step of every allowed stretch is tried but those that a depth of overlap rules out.
 */
export function shortestMove(
  shop: Workshop,
  goal: Goal,
  mover: Mover,
  { longestMm = Number.POSITIVE_INFINITY, way, besides = [] }: MoveLimits = {},
): FoundMove | null {
  // A mirrored pair that is moved sideways parts or closes, and its CG stays.
  if (mover.linked && goal.axis === 1) return null;
  const ids = new Set(mover.items.map(({ id }) => id));
  const allowed = shiftInterval(shop.states, ids, goal.axis, goal);
  if (!allowed) return null;
  const aboard = withinAircraft(shop, mover, goal.axis);
  const wider = (mm: number) => Math.abs(mm) * WIDER.share + WIDER.mm;
  const range: Interval = {
    fromMm: Math.max(aboard.fromMm, allowed.fromMm - wider(allowed.fromMm), way === 1 ? 0 : -longestMm),
    toMm: Math.min(aboard.toMm, allowed.toMm + wider(allowed.toMm), way === -1 ? 0 : longestMm),
  };
  const [coarse, fine] = lengthStepsMm(shop.spoken);
  // A stretch shorter than a step may lie between two of them.
  const steps = allowed.toMm - allowed.fromMm < 2 * coarse ? [coarse, fine] : [coarse];
  for (const step of steps) {
    const found = scan(shop, range, step, (shiftMm) =>
      tryEdits(shop, goal, [...besides, ...moveEdits(mover, goal.axis, shiftMm)]),
    );
    if (!found) continue;
    const { shiftMm, result } = found;
    const words = `Move ${moverName(mover)} ${shiftWords(shiftMm, goal.axis, step === fine, shop.spoken)}`;
    const edits = moveEdits(mover, goal.axis, shiftMm);
    return { mover, shiftMm, remedy: { kind: mover.kind, edits, words, result } };
  }
  return null;
}

/** The shortest of the moves that do it, half of a pair only where nothing whole does. */
export function shortestOf(
  shop: Workshop,
  goal: Goal,
  movers: readonly Mover[],
  limits: MoveLimits = {},
): FoundMove | null {
  for (const half of [false, true]) {
    let best: FoundMove | null = null;
    for (const mover of movers.filter(({ halfOfPair }) => halfOfPair === half)) {
      const longestMm: number | undefined = best ? Math.abs(best.shiftMm) - 1e-6 : limits.longestMm;
      const held: MoveLimits = { ...limits, ...(longestMm !== undefined && { longestMm }) };
      best = shortestMove(shop, goal, mover, held) ?? best;
    }
    if (best) return best;
  }
  return null;
}

type Worked = { readonly shiftMm: number; readonly result: (Trial & { ok: true })['result'] };

/** Tries shifts in whole steps, the shortest first, on both sides of where the things are. */
export function scan(
  { tries, judgings }: Workshop,
  { fromMm, toMm }: Interval,
  step: number,
  attempt: (shiftMm: number) => Trial,
): Worked | null {
  const walkers = [1, -1].map((way) => {
    // The nearest step to zero on this side that the stretch allows.
    const nearest = way > 0 ? Math.max(fromMm, 0) : Math.max(-toMm, 0);
    const farthest = way > 0 ? toMm : -fromMm;
    return {
      way,
      at: Math.max(1, stepsUp(nearest / step)),
      last: stepsDown(farthest / step),
    };
  });
  for (;;) {
    const next = walkers.filter(({ at, last }) => at <= last).sort((a, b) => a.at - b.at)[0];
    if (!next || tries.left <= 0 || judgings.left <= 0) return null;
    tries.left -= 1;
    const shiftMm = next.way * stepped(next.at, step);
    const trial = attempt(shiftMm);
    if (trial.ok) return { shiftMm, result: trial.result };
    next.at += Math.max(1, stepsUp(trial.atLeastMm / step));
  }
}
