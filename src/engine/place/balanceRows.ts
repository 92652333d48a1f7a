import { endOffset, leadEnds } from './leadRun';
import {
  type Around,
  type LeadShare,
  type LimitLine,
  leadShare,
  leastLeadG,
  type Within,
} from './leadShares';
import type { Limit } from './limit';
import type { Lead, PlaceProblem } from './types';

/**
 * One limit in one load case, as a linear condition in g·mm:
 * Σ perPart[i]·(middle of part i's box along the axis) + Σ perOption[i][its option] + Σ perSpot[k]·(g at spot k) ≥ needed.
 * With the sign of the limit, +1 forward and left, −1 aft and right, it is
 * sign·(moment − limit·mass) ≥ 0, which is linear in places and in grams alike; leads pull on the parts at their ends.
 */
export interface BalanceRow {
  readonly caseIndex: number;
  readonly limit: Limit;
  /** The same, for rows that are sums of several. */
  readonly limits: readonly Limit[];
  readonly axis: 0 | 1;
  readonly perPart: readonly number[];
  readonly perOption: readonly (readonly number[])[];
  readonly perSpot: readonly number[];
  readonly needed: number;
  /** Mass of the case with all parts and leads aboard, without ballast, g. */
  readonly massG: number;
}

/**
 * All rows: two for the band and, where it matters, two for the lateral limit, in every load case. Leads that bend are
 * taken around places where such are given. Otherwise the rows ask a little less than the truth wherever they are not exact,
 * so that what they forbid is forbidden; the less so where options are decided.
 */
export function balanceRows(
  problem: PlaceProblem,
  around: Around | null = null,
  within: Within | null = null,
): BalanceRow[] {
  const { band, lateralMm, cases } = problem;
  const lines: LimitLine[] = [
    { limit: 'forward', axis: 0, sign: 1, atMm: band.forwardMm },
    { limit: 'aft', axis: 0, sign: -1, atMm: band.aftMm },
  ];
  if (lateralMm !== null) {
    lines.push({ limit: 'left', axis: 1, sign: 1, atMm: -lateralMm });
    lines.push({ limit: 'right', axis: 1, sign: -1, atMm: lateralMm });
  }
  const pulling = problem.leads.filter(({ mass }) => mass !== undefined);
  const leadsG = pulling.map((lead) => leastLeadG(problem, lead, around, within));
  const byLine = lines.map((line) => ({
    line,
    pulls: pulling.map((lead, k) => ({
      lead,
      massG: leadsG[k]!,
      share: leadShare(problem, lead, line, around, within),
    })),
  }));
  return cases.flatMap((_state, caseIndex) =>
    byLine.map(({ line, pulls }) =>
      rowOf(
        problem,
        caseIndex,
        line,
        pulls.filter(({ lead }) => lead.mass!.aboard[caseIndex]),
      ),
    ),
  );
}

interface Pull {
  readonly lead: Lead;
  readonly massG: number;
  readonly share: LeadShare;
}

function rowOf(
  problem: PlaceProblem,
  caseIndex: number,
  { limit, axis, sign, atMm }: LimitLine,
  pulls: readonly Pull[],
): BalanceRow {
  const { parts, spots } = problem;
  const state = problem.cases[caseIndex]!;
  const massesG = parts.map((part) => part.massesG[caseIndex] ?? 0);
  const partsG = massesG.reduce((sum, massG) => sum + massG, 0);
  const perPart = massesG.map((massG) => sign * massG);
  const perOption = parts.map(({ options }, i) =>
    options.map(({ cgFromCentreMm }) => sign * massesG[i]! * cgFromCentreMm[axis]),
  );
  let needed = sign * (atMm * (state.massG + partsG) - state.momentGmm[axis]);
  for (const { lead, share } of pulls) {
    needed -= share.constant + share.mostAbove;
    leadEnds(problem, lead).forEach((end, which) => {
      const perMm = share.perEnd[which as 0 | 1];
      if (end.part === null) {
        needed -= perMm * end.atMm[axis];
        return;
      }
      const part = end.part;
      perPart[part]! += perMm;
      perOption[part]!.forEach((_, k) => {
        perOption[part]![k]! += perMm * endOffset(parts[part]!, k, lead.id)[axis];
      });
    });
  }
  return {
    caseIndex,
    limit,
    limits: [limit],
    axis,
    perPart,
    perOption,
    perSpot: spots.map((spot) => sign * (spot.positionMm[axis] - atMm)),
    needed,
    massG: state.massG + partsG + pulls.reduce((sum, { massG }) => sum + massG, 0),
  };
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
    const key = `${row.limit}:${row.perPart.join(',')}:${row.perOption.join(';')}`;
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
