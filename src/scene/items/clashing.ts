import { clashesIn, clearances } from '../../model/fit/clearances';
import type { Bench } from '../../store/bench';

/** The parts that run into something: that which is in hand or selected, and what it hits. */
export function clashingIds({ document, view, drag, fit }: Bench): readonly string[] {
  const watched = drag.api.getState().itemId ?? view.getState().selectedId;
  if (!watched || fit.get().playing) return [];
  const clashes = clashesIn(clearances(document.current(), watched));
  return clashes.length > 0 ? [watched, ...clashes.map(({ id }) => id)] : [];
}
