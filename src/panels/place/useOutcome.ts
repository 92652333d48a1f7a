import { useEffect, useMemo, useState } from 'react';
import type { Arrangement } from '../../engine/place/types';
import { balanceAt } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import { applyArrangement, recheckArrangement } from '../../model/place/applyArrangement';
import type { PlaceFound } from '../../model/place/searchPlaces';
import { type MoveRow, moveRows } from '../../model/words/moveRows';
import type { Bench } from '../../store/bench';
import type { Ghost } from '../../store/placeStore';
import { useBench } from '../../store/react';
import { type Asked, startOf } from './useSearch';

/** An arrangement put on the aircraft and worked out again. */
export interface Outcome {
  readonly after: Aircraft;
  readonly marginMm: number;
  readonly rows: readonly MoveRow[];
  /** Why it cannot be accepted; null before it has been worked out again here. */
  readonly faults: readonly string[] | null;
}

/** So long after it is shown it is worked out again, ms: the page draws first, and hears what is pressed. */
const CHECK_MS = 60;

/**
 * Shows an arrangement as a ghost on the stage and the beam for as long as it is looked at: all of it, or only so many of its
 * moves. It was checked where it was found; it is worked out once more here, after it has been drawn. One in passing, of a
 * search under way, is not.
 */
export function useOutcome(
  asked: Asked,
  found: PlaceFound | null,
  arrangement: Arrangement | null,
  shown: number | null = null,
  passing = false,
): Outcome | null {
  const bench = useBench();
  const drawn = useMemo(() => {
    if (!arrangement || !found) return null;
    const { emptied = [] } = asked.request.settings;
    const after = applyArrangement(startOf(asked, found), found.problem, arrangement, emptied);
    const rows = moveRows(asked.committed, after, found.problem, arrangement);
    return { after, marginMm: arrangement.marginMm, rows };
  }, [asked, found, arrangement]);
  const [checked, setChecked] = useState<{ readonly of: object; readonly outcome: Outcome } | null>(null);
  useEffect(() => {
    if (!drawn || !found || !arrangement || passing) return;
    const timer = setTimeout(() => {
      const { down, alsoDown = [], emptied = [] } = asked.request.settings;
      const { marginMm, faults } = recheckArrangement(
        startOf(asked, found),
        found.problem,
        arrangement,
        [down, ...alsoDown],
        { emptied },
      );
      setChecked({ of: drawn, outcome: { ...drawn, marginMm, faults } });
    }, CHECK_MS);
    return () => clearTimeout(timer);
  }, [asked, found, arrangement, drawn, passing]);
  useEffect(() => {
    if (!drawn) return;
    const timer = setTimeout(() => bench.place.api.setState({ ghost: ghostOf(bench, drawn, shown) }));
    return () => {
      clearTimeout(timer);
      bench.place.api.setState({ ghost: null });
    };
  }, [bench, drawn, shown]);
  return useMemo(
    () => (drawn && checked?.of === drawn ? checked.outcome : drawn && { ...drawn, faults: null }),
    [drawn, checked],
  );
}

/** What is shown of an arrangement: so many of its moves, or all with the CG that comes of them. */
function ghostOf(
  { view }: Bench,
  { after, rows }: Pick<Outcome, 'after' | 'rows'>,
  shown: number | null,
): Ghost | null {
  const { fuelFraction, down, positions } = view.getState();
  const items = rows.slice(0, shown ?? rows.length).flatMap(({ to }) => to ?? []);
  const parts = items.flatMap((item) => ('role' in item ? [item] : []));
  if (parts.length === 0) return null;
  const isWhole = shown === null || shown === rows.length;
  return { parts, cgMm: isWhole ? balanceAt(after, { fuelFraction, down, positions }).cgMm : null };
}
