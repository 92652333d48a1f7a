import type { TravelPoint } from './travel';
import { travelExtremes } from './travel';

/** The stations between which the CG must stay, mm aft of the datum. */
export interface Band {
  readonly forwardMm: number;
  readonly aftMm: number;
}

/** How a CG travel lies against the band. Margins are positive inside, negative outside, mm. */
export interface BandFit {
  readonly where: 'inside' | 'nose-heavy' | 'tail-heavy' | 'both';
  /** Foremost CG behind the forward limit. */
  readonly forwardMarginMm: number;
  /** Aftmost CG ahead of the aft limit. */
  readonly aftMarginMm: number;
  readonly foremost: TravelPoint;
  readonly aftmost: TravelPoint;
  /** The runs of the burn outside the band, as fuel fractions from more fuel to less. */
  readonly outside: readonly {
    readonly from: number;
    readonly to: number;
    readonly side: 'nose-heavy' | 'tail-heavy';
  }[];
}

/** Over a limit by less than this is on it: rounding, mm. */
export const TOUCH_MM = 1e-9;

/** Fraction at which the straight run from a to b crosses a station. */
const crossing = (a: TravelPoint, b: TravelPoint, stationMm: number) =>
  a.fuelFraction + ((stationMm - a.cgMm[0]) / (b.cgMm[0] - a.cgMm[0])) * (b.fuelFraction - a.fuelFraction);

function runsOutside(travel: readonly TravelPoint[], band: Band): BandFit['outside'] {
  const sideOf = (p: TravelPoint) =>
    p.cgMm[0] < band.forwardMm - TOUCH_MM
      ? ('nose-heavy' as const)
      : p.cgMm[0] > band.aftMm + TOUCH_MM
        ? ('tail-heavy' as const)
        : null;
  const limitOf = (side: 'nose-heavy' | 'tail-heavy') =>
    side === 'nose-heavy' ? band.forwardMm : band.aftMm;
  const runs: { from: number; to: number; side: 'nose-heavy' | 'tail-heavy' }[] = [];
  let open: { from: number; side: 'nose-heavy' | 'tail-heavy' } | null = null;
  let before: TravelPoint | undefined;
  for (const point of travel) {
    const side = sideOf(point);
    if (open && side !== open.side && before) {
      runs.push({ ...open, to: crossing(before, point, limitOf(open.side)) });
      open = null;
    }
    if (side && !open)
      open = { side, from: before ? crossing(before, point, limitOf(side)) : point.fuelFraction };
    before = point;
  }
  if (open && before) runs.push({ ...open, to: before.fuelFraction });
  return runs;
}

/** Lays a travel (from full to dry) against the band. Null for an empty travel, and for stations that are no numbers. */
export function bandFit(travel: readonly TravelPoint[], band: Band): BandFit | null {
  const extremes = travelExtremes(travel);
  if (!extremes) return null;
  const forwardMarginMm = extremes.foremost.cgMm[0] - band.forwardMm;
  const aftMarginMm = band.aftMm - extremes.aftmost.cgMm[0];
  if (!Number.isFinite(forwardMarginMm) || !Number.isFinite(aftMarginMm)) return null;
  const nose = forwardMarginMm < -TOUCH_MM;
  const tail = aftMarginMm < -TOUCH_MM;
  return {
    where: nose && tail ? 'both' : nose ? 'nose-heavy' : tail ? 'tail-heavy' : 'inside',
    forwardMarginMm,
    aftMarginMm,
    ...extremes,
    outside: runsOutside(travel, band),
  };
}

/** Something that may be moved along the station axis: its mass at each point of the travel, and where it is. */
export interface Movable {
  /** g, one for each point of the travel (a part weighs the same at all, a tank with its liquid does not). */
  readonly massesG: readonly number[];
  readonly stationMm: number;
}

/**
 * The stations at which something may stand so that every point of the travel lies in the band, everything
 * else where it is. The CG is linear in the station, so the interval is exact; null when it is empty.
 */
export function allowedStations(
  travel: readonly TravelPoint[],
  movable: Movable,
  band: Band,
): { readonly fromMm: number; readonly toMm: number } | null {
  let fromMm = Number.NEGATIVE_INFINITY;
  let toMm = Number.POSITIVE_INFINITY;
  travel.forEach(({ massG, cgMm }, i) => {
    const ownG = movable.massesG[i] ?? 0;
    const tooFarForward = band.forwardMm - cgMm[0];
    const roomAft = band.aftMm - cgMm[0];
    if (ownG > 0) {
      fromMm = Math.max(fromMm, movable.stationMm + (tooFarForward * massG) / ownG);
      toMm = Math.min(toMm, movable.stationMm + (roomAft * massG) / ownG);
    } else if (tooFarForward > TOUCH_MM || roomAft < -TOUCH_MM) {
      fromMm = Number.POSITIVE_INFINITY;
    }
  });
  return fromMm <= toMm && Number.isFinite(fromMm) ? { fromMm, toMm } : null;
}

/**
 * The station with the greatest least margin to the band over the whole travel. Going aft, the least margin to the
 * forward limit only grows and the least to the aft limit only shrinks, so the best is where the two are equal,
 * found by halving between the stations that bring each point to the middle of the band. Null without any mass.
 */
export function bestStation(travel: readonly TravelPoint[], movable: Movable, band: Band): number | null {
  const mid = (band.forwardMm + band.aftMm) / 2;
  let lo = Number.POSITIVE_INFINITY;
  let hi = Number.NEGATIVE_INFINITY;
  travel.forEach(({ massG, cgMm }, i) => {
    const ownG = movable.massesG[i] ?? 0;
    if (ownG <= 0) return;
    const wanted = movable.stationMm + ((mid - cgMm[0]) * massG) / ownG;
    lo = Math.min(lo, wanted);
    hi = Math.max(hi, wanted);
  });
  if (lo > hi) return null;
  while (hi - lo > 1e-9 * Math.max(1, Math.abs(lo), Math.abs(hi))) {
    const middle = (lo + hi) / 2;
    let foremost = Number.POSITIVE_INFINITY;
    let aftmost = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < travel.length; i++) {
      const { massG, cgMm } = travel[i] as TravelPoint;
      const x = cgMm[0] + ((middle - movable.stationMm) * (movable.massesG[i] ?? 0)) / massG;
      foremost = Math.min(foremost, x);
      aftmost = Math.max(aftmost, x);
    }
    if (foremost - band.forwardMm < band.aftMm - aftmost) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
}
