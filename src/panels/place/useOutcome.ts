import { useEffect, useMemo } from 'react';
import type { Arrangement } from '../../engine/place/types';
import { balanceAt } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import { recheckArrangement } from '../../model/place/applyArrangement';
import { type MoveRow, moveRows } from '../../model/words/moveRows';
import { useBench } from '../../store/react';
import type { Asked } from './useSearch';

/** An arrangement put on the aircraft and worked out again. */
export interface Outcome {
  readonly after: Aircraft;
  readonly marginMm: number;
  readonly rows: readonly MoveRow[];
  /** Why it cannot be accepted. */
  readonly faults: readonly string[];
}

/** Checks an arrangement and shows it as a ghost on the stage and the beam for as long as it is looked at. */
export function useOutcome(asked: Asked, arrangement: Arrangement | null): Outcome | null {
  const bench = useBench();
  const outcome = useMemo((): Outcome | null => {
    if (!arrangement) return null;
    const { start, problem, settings, committed } = asked;
    const {
      aircraft: after,
      marginMm,
      faults,
    } = recheckArrangement(start, problem, arrangement, settings.down);
    return { after, marginMm, faults, rows: moveRows(committed, after, problem, arrangement) };
  }, [asked, arrangement]);
  useEffect(() => {
    if (!outcome) return;
    const { fuelFraction, down, positions } = bench.view.getState();
    const { cgMm } = balanceAt(outcome.after, { fuelFraction, down, positions });
    const parts = outcome.rows.flatMap(({ to }) => to ?? []);
    bench.place.api.setState({ ghost: parts.length > 0 ? { parts, cgMm } : null });
    return () => bench.place.api.setState({ ghost: null });
  }, [bench, outcome]);
  return outcome;
}
