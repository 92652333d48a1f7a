import type { Band } from '../balance/band';
import type { PlaceProblem } from './types';

/** What a row guards. */
export type Limit = 'forward' | 'aft' | 'left' | 'right';

/**
 * One limit in one load case, as a linear condition in g·mm:
 * Σ perPart[i]·(CG of part i along the axis) + Σ perSpot[k]·(g at spot k) ≥ needed.
 * With the sign of the limit, +1 forward and left, −1 aft and right, it is
 * sign·(moment − limit·mass) ≥ 0, which is linear in places and in grams alike.
 */
export interface BalanceRow {
  readonly caseIndex: number;
  readonly limit: Limit;
  /** The same, for rows that are sums of several. */
  readonly limits: readonly Limit[];
  readonly axis: 0 | 1;
  readonly perPart: readonly number[];
  readonly perSpot: readonly number[];
  readonly needed: number;
  /** Mass of the case with all parts aboard, without ballast, g. */
  readonly massG: number;
}

/** All rows: two for the band and, where it matters, two for the lateral limit, in every load case. */
export function balanceRows(problem: PlaceProblem, band: Band = problem.band): BalanceRow[] {
  const { cases, lateralMm, parts, spots } = problem;
  return cases.flatMap((state, caseIndex) => {
    const massesG = parts.map((part) => part.massesG[caseIndex] ?? 0);
    const massG = state.massG + massesG.reduce((sum, one) => sum + one, 0);
    const row = (limit: Limit, axis: 0 | 1, sign: 1 | -1, atMm: number): BalanceRow => ({
      caseIndex,
      limit,
      limits: [limit],
      axis,
      perPart: massesG.map((one) => sign * one),
      perSpot: spots.map((spot) => sign * (spot.positionMm[axis] - atMm)),
      needed: sign * (atMm * massG - state.momentGmm[axis]),
      massG,
    });
    const rows = [row('forward', 0, 1, band.forwardMm), row('aft', 0, -1, band.aftMm)];
    if (lateralMm !== null) rows.push(row('left', 1, 1, -lateralMm), row('right', 1, -1, lateralMm));
    return rows;
  });
}

/** What may be sought besides keeping the limits: a margin inside them, or how far they must give way. */
export type Beside = 'nothing' | 'margin' | 'breach';

/**
 * Only the rows that can bind. The balance is affine in the places, so of rows that weigh the parts alike the one that
 * needs most stands for all. A margin asks more of the heavier case and a breach gives less to the lighter one, so then a
 * row stands only for those that are not heavier, or not lighter, than it.
 */
export function bindingRows(rows: readonly BalanceRow[], beside: Beside): BalanceRow[] {
  const groups = new Map<string, BalanceRow[]>();
  for (const row of rows) {
    const key = `${row.limit}:${row.perPart.join(',')}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const heavierFirst = beside === 'breach' ? -1 : 1;
  return [...groups.values()].flatMap((group) => {
    const kept: BalanceRow[] = [];
    const order = [...group].sort((a, b) => b.needed - a.needed || heavierFirst * (b.massG - a.massG));
    for (const row of order) {
      const covered = kept.some((above) => {
        if (beside === 'nothing' || (beside === 'margin' && row.axis === 1)) return true;
        return beside === 'margin' ? above.massG >= row.massG : above.massG <= row.massG;
      });
      if (!covered) kept.push(row);
    }
    return kept;
  });
}
