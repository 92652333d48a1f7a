import type { Band } from '../balance/band';
import { TOUCH_MM } from '../balance/band';
import { perObjects } from '../memory/memory';
import type { LoadCase } from './types';

/** One item to be moved with everything else where it is. */
export interface ZoneInput {
  /** Every load state and fuel state, without the item. */
  readonly cases: readonly LoadCase[];
  /** Its mass in each of them, g; a tank's with what is in it, 0 where it is not aboard. */
  readonly massesG: readonly number[];
  readonly band: Band;
  /** How far off centre the CG may be, mm; null where it does not matter. */
  readonly lateralMm: number | null;
}

/** The places along one axis that keep one pair of limits, and what is best there. Stations or buttlines of its CG. */
export interface ZoneAxis {
  /** Null when no place does it. Infinite ends where the limits do not hold it. */
  readonly allowed: { readonly fromMm: number; readonly toMm: number } | null;
  /** Where the least margin is greatest; null for an item that is never aboard. */
  readonly bestMm: number | null;
  /** The least margin at the best place, mm; negative is how much it fails by. */
  readonly bestMarginMm: number;
  /** The cases that hold it: toward the lower limit (forward, left) and toward the upper one (aft, right). */
  readonly lowerCase: LoadCase;
  readonly upperCase: LoadCase;
}

export interface AllowedZone {
  readonly station: ZoneAxis;
  /** Null where the lateral balance does not matter. */
  readonly buttline: ZoneAxis | null;
  /** Whether there is a place at all. */
  readonly possible: boolean;
  /** How far the worst load state is outside with the item at its best place, mm; 0 when there is a place. */
  readonly failsByMm: number;
  /** The load states to blame then; none when there is a place. */
  readonly blame: readonly LoadCase[];
}

/** A margin that is a linear function of the place: at 0, and how it changes per mm. */
interface Line {
  readonly case: LoadCase;
  readonly atZeroMm: number;
  readonly perMm: number;
}

/**
 * The exact set of places of an item's CG that keeps every case within the limits. With the rest at moment P and mass M in
 * a case, and its own mass m, the CG is (P + m·x)/(M + m): linear in x, so each limit is a bound on x, and the zone is an
 * interval of stations times an interval of buttlines. Null without any case or any mass.
 */
export function allowedZone(input: ZoneInput): AllowedZone | null {
  const { band, lateralMm } = input;
  const station = zoneAxis(input, 0, band.forwardMm, band.aftMm);
  if (!station) return null;
  const buttline = lateralMm === null ? null : zoneAxis(input, 1, -lateralMm, lateralMm);
  const failing = [station, buttline].filter(
    (axis): axis is ZoneAxis => axis !== null && axis.allowed === null,
  );
  return {
    station,
    buttline,
    possible: failing.length === 0,
    failsByMm: Math.max(0, ...failing.map(({ bestMarginMm }) => -bestMarginMm)),
    blame: [...new Set(failing.flatMap(({ lowerCase, upperCase }) => [lowerCase, upperCase]))],
  };
}

/** How an item at a place leaves the aircraft: the least margins over all cases, mm, and the case of each. */
export interface ZoneMargin {
  readonly marginMm: number;
  readonly case: LoadCase;
  readonly limit: 'forward' | 'aft';
  readonly lateralMarginMm: number | null;
}

/** The margins with the item's CG at a station and a buttline. Null without any case or any mass. */
export function zoneMargin(input: ZoneInput, stationMm: number, buttlineMm: number): ZoneMargin | null {
  const { band, lateralMm } = input;
  const lines = marginLines(input, 0, band.forwardMm, band.aftMm);
  if (!lines) return null;
  const forward = lowest(lines.lower, stationMm);
  const aft = lowest(lines.upper, stationMm);
  const limit = forward.marginMm <= aft.marginMm ? 'forward' : 'aft';
  const lateral = lateralMm === null ? null : marginLines(input, 1, -lateralMm, lateralMm);
  return {
    ...(limit === 'forward' ? forward : aft),
    limit,
    lateralMarginMm:
      lateral &&
      Math.min(lowest(lateral.lower, buttlineMm).marginMm, lowest(lateral.upper, buttlineMm).marginMm),
  };
}

/** Worked out once: margins are asked for at one place after another. */
const marginLines = perObjects(
  ({ cases, massesG }: ZoneInput, axis: 0 | 1, lowMm: number, highMm: number) => {
    const lower: Line[] = [];
    const upper: Line[] = [];
    cases.forEach((load, s) => {
      const ownG = massesG[s] ?? 0;
      const massG = load.massG + ownG;
      if (!(massG > 0)) return;
      const restMm = load.momentGmm[axis] / massG;
      lower.push({ case: load, atZeroMm: restMm - lowMm, perMm: ownG / massG });
      upper.push({ case: load, atZeroMm: highMm - restMm, perMm: -ownG / massG });
    });
    return lower.length > 0 ? { lower, upper } : null;
  },
);

function lowest(lines: readonly Line[], atMm: number) {
  let marginMm = Number.POSITIVE_INFINITY;
  let found = lines[0]!;
  for (const line of lines) {
    const here = line.atZeroMm + line.perMm * atMm;
    if (here < marginMm) [marginMm, found] = [here, line];
  }
  return { marginMm, case: found.case };
}

function zoneAxis(input: ZoneInput, axis: 0 | 1, lowMm: number, highMm: number): ZoneAxis | null {
  const lines = marginLines(input, axis, lowMm, highMm);
  if (!lines) return null;
  let fromMm = Number.NEGATIVE_INFINITY;
  let toMm = Number.POSITIVE_INFINITY;
  for (const { atZeroMm, perMm } of lines.lower) {
    if (perMm > 0) fromMm = Math.max(fromMm, -atZeroMm / perMm);
    else if (atZeroMm < -TOUCH_MM) fromMm = Number.POSITIVE_INFINITY;
  }
  for (const { atZeroMm, perMm } of lines.upper) {
    if (perMm < 0) toMm = Math.min(toMm, atZeroMm / -perMm);
    else if (atZeroMm < -TOUCH_MM) toMm = Number.NEGATIVE_INFINITY;
  }
  // A limit broken in a case without the item sends its end off to infinity, and no place is left there.
  const some = fromMm <= toMm && fromMm < Number.POSITIVE_INFINITY && toMm > Number.NEGATIVE_INFINITY;
  const bestMm = crossing(lines.lower, lines.upper);
  const [lower, upper] = [lowest(lines.lower, bestMm ?? 0), lowest(lines.upper, bestMm ?? 0)];
  return {
    allowed: some ? { fromMm, toMm } : null,
    bestMm,
    bestMarginMm: Math.min(lower.marginMm, upper.marginMm),
    lowerCase: lower.case,
    upperCase: upper.case,
  };
}

/** Where the rising margins' least meets the falling ones' least: the top of the concave least of all. */
function crossing(rising: readonly Line[], falling: readonly Line[]): number | null {
  const held = rising.flatMap(({ atZeroMm, perMm }, s) =>
    perMm > 0 ? [(falling[s]!.atZeroMm - atZeroMm) / (2 * perMm)] : [],
  );
  if (held.length === 0) return null;
  // Each case balances its two limits at one of these; the crossing of the leasts lies between the outermost.
  let [low, high] = [Math.min(...held), Math.max(...held)];
  const size = Math.max(1, Math.abs(low), Math.abs(high));
  while (high - low > 1e-12 * size) {
    const mid = (low + high) / 2;
    if (mid <= low || mid >= high) break;
    if (lowest(rising, mid).marginMm < lowest(falling, mid).marginMm) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}
