import { useEffect, useMemo } from 'react';
import type { Arrangement } from '../../engine/place/types';
import { balanceAt } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import { applyArrangement, recheckArrangement } from '../../model/place/applyArrangement';
import type { PlaceFound } from '../../model/place/searchPlaces';
import { type MoveRow, moveRows } from '../../model/words/moveRows';
import { useBench } from '../../store/react';
import { type Asked, startOf } from './useSearch';

/** An arrangement put on the aircraft and worked out again. */
export interface Outcome {
  readonly after: Aircraft;
  readonly marginMm: number;
  readonly rows: readonly MoveRow[];
  /** Why it cannot be accepted. */
  readonly faults: readonly string[];
}

/**
 * Checks an arrangement and shows it as a ghost on the stage and the beam for as long as it is looked at: all of it, or
 * only so many of its moves. One in passing, of a search under way, was checked where it was found, and is not again: the
 * page must hear Cancel.
 */
export function useOutcome(
  asked: Asked,
  found: PlaceFound | null,
  arrangement: Arrangement | null,
  shown: number | null = null,
  passing = false,
): Outcome | null {
  const bench = useBench();
  const outcome = useMemo((): Outcome | null => {
    if (!arrangement || !found) return null;
    const { down, alsoDown = [], emptied = [] } = asked.request.settings;
    const { problem } = found;
    const start = startOf(asked, found);
    const {
      aircraft: after,
      marginMm,
      faults,
    } = passing
      ? {
          aircraft: applyArrangement(start, problem, arrangement, emptied),
          marginMm: arrangement.marginMm,
          faults: [],
        }
      : recheckArrangement(start, problem, arrangement, [down, ...alsoDown], { emptied });
    return { after, marginMm, faults, rows: moveRows(asked.committed, after, problem, arrangement) };
  }, [asked, found, arrangement, passing]);
  useEffect(() => {
    if (!outcome) return;
    const { fuelFraction, down, positions } = bench.view.getState();
    const { cgMm } = balanceAt(outcome.after, { fuelFraction, down, positions });
    const items = outcome.rows.slice(0, shown ?? outcome.rows.length).flatMap(({ to }) => to ?? []);
    const parts = items.flatMap((item) => ('role' in item ? [item] : []));
    const isWhole = shown === null || shown === outcome.rows.length;
    bench.place.api.setState({ ghost: parts.length > 0 ? { parts, cgMm: isWhole ? cgMm : null } : null });
    return () => bench.place.api.setState({ ghost: null });
  }, [bench, outcome, shown]);
  return outcome;
}
