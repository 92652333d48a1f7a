import { itemById } from '../document/edit';
import { shownText } from '../document/names';
import { twinOf } from '../document/twins';
import type { FitProblem } from '../fit/fitProblem';
import { problemsInFlight, wholeFit } from '../fit/wholeFit';
import { lengthStepsMm, shiftWords } from './figures';
import type { Mover } from './movers';
import { moveEdits, scan } from './moveSearch';
import { applyRemedy, type Remedy } from './remedy';
import { fitsThere, judgedAfter, type Trial, type Workshop } from './trial';

/** Farther than this is a new layout and not a way clear, mm. */
const FARTHEST_MM = 80;
/** But what is farther out may come back by so much more than that, mm. */
const FARTHER_MM = 40;

const NOTHING = { targets: new Set<never>(), mayLeave: new Set<never>() } as const;

/** The shortest move of one unlocked thing along one axis that clears the worst misfit that can be cleared. */
export function clearing(shop: Workshop): Remedy | null {
  const problems = [...problemsInFlight(wholeFit(shop.aircraft).problems)].sort(byWeight);
  for (const problem of problems) {
    const ids = new Set(problem.parties.map(({ id }) => id));
    const movers = [...ids].flatMap((id): readonly Mover[] => {
      const item = itemById(shop.aircraft, id);
      if (!item || item.locked) return [];
      const twin = twinOf(shop.aircraft, id);
      return [{ items: twin ? [item, twin] : [item], kind: 'move', halfOfPair: false, linked: !!twin }];
    });
    let best: { readonly byMm: number; readonly remedy: Remedy } | null = null;
    for (const mover of movers) {
      for (const axis of [0, 1, 2] as const) {
        const farthest: number = best?.byMm ?? Math.max(FARTHEST_MM, problem.byMm + FARTHER_MM);
        const step = lengthStepsMm(shop.spoken)[0];
        const found = scan(shop, { fromMm: -farthest, toMm: farthest }, step, (shiftMm) =>
          tryClearing(shop, problem, mover, axis, shiftMm),
        );
        if (!found || Math.abs(found.shiftMm) >= farthest) continue;
        const { shiftMm, result } = found;
        const [first, twin] = mover.items;
        const follows = twin ? `; “${shownText(twin.name)}” follows, mirrored` : '';
        const words = `Move “${shownText(first!.name)}” ${shiftWords(shiftMm, axis, false, shop.spoken)}${follows}`;
        const edits = moveEdits(mover, axis, shiftMm);
        best = { byMm: Math.abs(shiftMm), remedy: { kind: 'clear', edits, words, result } };
      }
    }
    if (best) return best.remedy;
  }
  return null;
}

/** What cannot be flown with first, the deepest first. */
const byWeight = (a: FitProblem, b: FitProblem) =>
  Number(a.severity === 'caution') - Number(b.severity === 'caution') || b.byMm - a.byMm;

function tryClearing(
  shop: Workshop,
  problem: FitProblem,
  mover: Mover,
  axis: 0 | 1 | 2,
  shiftMm: number,
): Trial {
  const edits = moveEdits(mover, axis, shiftMm);
  const after = applyRemedy(shop.aircraft, { edits });
  const left = wholeFit(after).problems.find(({ key }) => key === problem.key);
  if (left) return { ok: false, atLeastMm: left.byMm };
  const free = fitsThere(shop, edits);
  return free.ok ? judgedAfter(shop, after, NOTHING) : free;
}
