import type { Band } from '../balance/band';
import type { Vec3 } from '../geometry/types';
import type { BallastSpot, LoadCase } from './types';

export interface Limits {
  readonly band: Band;
  /** How far off centre the CG may be, mm; null where it does not matter. */
  readonly lateralMm: number | null;
}

export interface MassRange {
  readonly leastG: number;
  /** Infinite where no limit is met however heavy it gets. */
  readonly mostG: number;
  /** The load state that sets the most; null where none does. */
  readonly mostBy: LoadCase | null;
}

/**
 * The masses that, put at a point in every case, keep all cases within their limits, longitudinally and laterally: each
 * limit is a linear bound, m·(x − F) ≥ F·M − P and m·(A − x) ≥ P − A·M. It answers both "what ballast here" and "the
 * heaviest payload here". Null when no mass there does it.
 * Source for one limit: FAA Aviation Maintenance Technician Handbook – General, p. 4-23.
 */
export function massRange(
  cases: readonly LoadCase[],
  { band, lateralMm }: Limits,
  atMm: Vec3,
): MassRange | null {
  let leastG = 0;
  let mostG = Number.POSITIVE_INFINITY;
  let mostBy: LoadCase | null = null;
  const need = (state: LoadCase, perGram: number, needed: number) => {
    // To rounding of the moment, which is what a limit is met with.
    const nothing = 1e-12 * Math.max(1, Math.abs(state.momentGmm[0]), Math.abs(state.momentGmm[1]));
    if (perGram > 0) leastG = Math.max(leastG, needed / perGram);
    else if (perGram < 0 && needed / perGram < mostG) [mostG, mostBy] = [needed / perGram, state];
    else if (perGram === 0 && needed > nothing) leastG = Number.POSITIVE_INFINITY;
  };
  for (const load of cases) {
    const [px, py] = load.momentGmm;
    need(load, atMm[0] - band.forwardMm, band.forwardMm * load.massG - px);
    need(load, band.aftMm - atMm[0], px - band.aftMm * load.massG);
    if (lateralMm === null) continue;
    need(load, atMm[1] + lateralMm, -lateralMm * load.massG - py);
    need(load, lateralMm - atMm[1], py - lateralMm * load.massG);
  }
  return leastG <= mostG && Number.isFinite(leastG) ? { leastG, mostG, mostBy } : null;
}

/** What ballast does at one spot. */
export interface SpotEffect {
  readonly spot: BallastSpot;
  /** What brings every case within its limits from this spot alone, g; null when nothing does. */
  readonly range: MassRange | null;
  /** With the mass that is compared there: the least margin in the band and beside it, mm, and the CG of the first case. */
  readonly marginMm: number;
  readonly lateralMarginMm: number | null;
  readonly cgMm: readonly [number, number];
}

/** The same mass at each spot, beside what each spot would need. */
export function spotEffects(
  cases: readonly LoadCase[],
  limits: Limits,
  spots: readonly BallastSpot[],
  massG: number,
): SpotEffect[] {
  return spots.map((spot) => {
    const there = cases.map((load) => ({
      cgXMm: (load.momentGmm[0] + massG * spot.positionMm[0]) / (load.massG + massG),
      cgYMm: (load.momentGmm[1] + massG * spot.positionMm[1]) / (load.massG + massG),
    }));
    const { band, lateralMm } = limits;
    return {
      spot,
      range: massRange(cases, limits, spot.positionMm),
      marginMm: Math.min(...there.map(({ cgXMm }) => Math.min(cgXMm - band.forwardMm, band.aftMm - cgXMm))),
      lateralMarginMm:
        lateralMm === null ? null : lateralMm - Math.max(...there.map(({ cgYMm }) => Math.abs(cgYMm))),
      cgMm: [there[0]?.cgXMm ?? Number.NaN, there[0]?.cgYMm ?? Number.NaN],
    };
  });
}
