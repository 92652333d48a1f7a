import type { StateBalance } from '../judgement/flyingStates';

export interface Interval {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The masses of some items aboard at each point of a state's travel, liquid included, g. */
export function massesOf({ balance }: StateBalance, ids: ReadonlySet<string>): readonly number[] {
  const { bodies, travel, liquid } = balance;
  const solidG = bodies.reduce((sum, { sourceId, mass }) => (ids.has(sourceId) ? sum + mass.massG : sum), 0);
  const tanks = liquid.plumbing?.tanks.flatMap(({ id }, index) => (ids.has(id) ? [index] : [])) ?? [];
  return travel.map((_, moment) =>
    tanks.reduce((sum, index) => sum + (liquid.tankMassesG[moment]?.[index] ?? 0), solidG),
  );
}

/**
 * By how much items must be moved together along an axis so that every point of every state lies between two limits,
 * mm. Exact but for leads, whose mass and run change with their ends. Null when no move does it.
 */
export function shiftInterval(
  states: readonly StateBalance[],
  ids: ReadonlySet<string>,
  axis: 0 | 1,
  { lowMm, highMm }: { readonly lowMm: number; readonly highMm: number },
): Interval | null {
  let fromMm = Number.NEGATIVE_INFINITY;
  let toMm = Number.POSITIVE_INFINITY;
  for (const state of states) {
    const massesG = massesOf(state, ids);
    for (const [moment, { cgMm, massG }] of state.balance.travel.entries()) {
      const movedG = massesG[moment] ?? 0;
      const [under, over] = [lowMm - cgMm[axis], cgMm[axis] - highMm];
      if (movedG > 0) {
        fromMm = Math.max(fromMm, (under * massG) / movedG);
        toMm = Math.min(toMm, (-over * massG) / movedG);
      } else if (under > 0 || over > 0) return null;
    }
  }
  return fromMm <= toMm ? { fromMm, toMm } : null;
}
