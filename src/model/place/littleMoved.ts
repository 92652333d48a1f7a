import { arrange } from '../../engine/place/arrange';
import type { ArrangeOrder } from '../../engine/place/search';
import type { Arrangement, MovablePart, PlaceProblem } from '../../engine/place/types';

/** An arrangement in which little is moved, and the problem that it was found in. */
export interface LittleMoved {
  readonly best: Arrangement;
  readonly problem: PlaceProblem;
  readonly keptMarginMm: number;
}

/** What is tried alone has so long at least, ms. */
const FEW_MS = 250;
/** Margins closer than this are not worth another move, mm. */
const WORTH_MM = 0.5;

/**
 * Little moved is easily built: what can be had with ballast alone, with one thing moved, with two. Ends with the first
 * number of moves that needs no ballast, or with the time; of what was sound, `before` among it, the one with the least
 * ballast.
 */
export function littleMoved(
  problem: PlaceProblem,
  order: Omit<ArrangeOrder, 'onProgress' | 'timeMs'>,
  leftMs: () => number,
  isSound: (best: Arrangement, problem: PlaceProblem) => boolean,
  before: LittleMoved | null = null,
): LittleMoved | null {
  const ids = problem.parts.map(({ id }) => id);
  const pairs = ids.flatMap((a, i) => ids.slice(i + 1).map((b) => [a, b]));
  const { wantedMarginMm = 0 } = problem;
  const needsNothing = () => kept?.best.ballastG === 0 && kept.keptMarginMm >= wantedMarginMm;
  let kept = before;
  if (needsNothing()) return kept;
  for (const sets of [[[]], ids.map((id) => [id]), pairs]) {
    for (const [i, free] of sets.entries()) {
      if (free.length > 0 && leftMs() <= 0) return kept;
      const held = heldBut(problem, free);
      const timeMs = Math.max(FEW_MS, leftMs() / (sets.length - i + 1));
      const { best, keptMarginMm } = arrange(held, { ...order, timeMs });
      if (best && isWorth({ best, problem: held, keptMarginMm }, kept) && isSound(best, held)) {
        kept = { best, problem: held, keptMarginMm };
      }
    }
    if (needsNothing()) return kept;
  }
  return kept;
}

/** The wanted margin before ballast, less ballast before a margin that is worth it. */
export function isWorth(one: LittleMoved, than: LittleMoved | null): boolean {
  if (!than || one.keptMarginMm !== than.keptMarginMm) return !than || one.keptMarginMm > than.keptMarginMm;
  const more = one.best.ballastG - than.best.ballastG;
  return more < -1e-6 || (more < 1e-6 && one.best.marginMm > than.best.marginMm + WORTH_MM);
}

/** The problem with everything but some parts held where it is. */
function heldBut(problem: PlaceProblem, free: readonly string[]): PlaceProblem {
  return { ...problem, parts: problem.parts.map((part) => (free.includes(part.id) ? part : held(part))) };
}

function held(part: MovablePart): MovablePart {
  const { optionId, centreMm: at } = part.present;
  const option = part.options.find(({ id }) => id === optionId);
  if (!option) return part;
  const corner = (side: 1 | -1) =>
    [
      at[0] + (side * option.sizeMm[0]) / 2,
      at[1] + (side * option.sizeMm[1]) / 2,
      at[2] + (side * option.sizeMm[2]) / 2,
    ] as const;
  return { ...part, options: [{ ...option, region: { minMm: corner(-1), maxMm: corner(1) } }] };
}
