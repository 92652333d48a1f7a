import type { Vec3 } from '../geometry/types';
import type { LiquidMoment, MassMoment } from './travel';

/** A box in the aircraft's frame, mm. */
export interface Bounds {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** What the search is asked for beside the aircraft. */
export interface SearchLimits {
  /** How closely the extremes are to be certified, mm; 0.01 unless said. */
  readonly toleranceMm?: number;
  /**
   * So many amounts of liquid are tried at most, beside the two ends of every burn and what it takes to close in on a top;
   * 20 000 unless said. A search that is cut short says so by `withinMm`.
   */
  readonly mostSamples?: number;
}

/** One burn: what is aboard throughout, and the liquid as it is drawn. */
export interface LoadBurn {
  /** The switch positions that make this burn what it is, put into the load states found; none when left out. */
  readonly positions?: Readonly<Record<string, string>>;
  /** All that is aboard at all times, without usable liquid. */
  readonly fixed: MassMoment;
  /** The liquid at a fraction of usable fuel, 1 full to 0 dry: continuous, mass never rising as it is drawn. */
  readonly liquidAt: (fuelFraction: number) => LiquidMoment;
  /** Whether anything can be drawn; without, only the liquid at 1 counts. */
  readonly burns: boolean;
  /** The fractions where `liquidAt` has kinks; asked for only when the burn has to be looked into. */
  readonly breaks: () => readonly number[];
  /** A box for each tank of `liquidAt(…).byTank`, or one for all the liquid; see `LoadStates.tanksMm`. */
  readonly tanksMm?: readonly Bounds[];
}

/** One load state: the fuel, and the chosen position's id by the switch's id. */
export interface LoadState {
  readonly cgMm: Vec3;
  readonly massG: number;
  readonly fuelFraction: number;
  readonly positions: Readonly<Record<string, string>>;
}

/** A load state at the end of the CG's range. */
export interface LoadExtreme extends LoadState {
  /** No load state lies farther out than this beyond it, mm; null when the tanks' bounds are not given. */
  readonly withinMm: number | null;
}

export interface LoadEnvelope {
  readonly foremost: LoadExtreme;
  readonly aftmost: LoadExtreme;
  readonly leftmost: LoadExtreme;
  readonly rightmost: LoadExtreme;
  readonly heaviest: LoadState;
  readonly lightest: LoadState;
}
