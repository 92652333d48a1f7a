import type { MassProperties } from '../mass/types';
import type { LoadSwitch } from './bestLoad';
import { farthestOf, stateOf } from './loadSearch';
import type { Bounds, LoadBurn, LoadEnvelope, LoadState, SearchLimits } from './loadTypes';
import { type LiquidMoment, momentOf } from './travel';

export type { LoadSwitch } from './bestLoad';
export type { Bounds, LoadBurn, LoadEnvelope, LoadExtreme, LoadState } from './loadTypes';

/** What a search may cost by default. */
const MOST_SAMPLES = 20_000;

/** An aircraft with everything about it that can change. */
export interface LoadStates extends SearchLimits {
  /** All that is aboard at all times, without usable liquid. */
  readonly fixed: MassProperties;
  readonly switches: readonly LoadSwitch[];
  /** The liquid at a fraction of usable fuel, 1 full to 0 dry: continuous, mass never rising as it is drawn. */
  readonly liquidAt: (fuelFraction: number) => LiquidMoment;
  /** The fractions where `liquidAt` has kinks, with 1 and 0, in any order; [1] for an aircraft without fuel. */
  readonly breaks: readonly number[];
  /**
   * Boxes that hold all liquid that is ever drawn, mm: one for each tank of `liquidAt(…).byTank`, or one for all. With them
   * the extremes are certified. It asks that the liquid left is always part of the liquid there was, as it is in tanks held
   * at one attitude.
   */
  readonly tanksMm?: readonly Bounds[];
}

/**
 * The extremes of CG and mass over all combinations of the switches and all fuel. Null when a load state weighs nothing,
 * for it has no CG. Throws a RangeError on a switch without positions and on breaks outside 0…1.
 *
 * What is guaranteed. For one amount of fuel the best combination is exact. The mass extremes are exact. Over the fuel the
 * reported CG is always one that the aircraft really has. With `tanksMm` no other load state lies farther out than
 * `withinMm`, which is at most `toleranceMm` unless `mostSamples` do not settle it. A tank that lies wholly on one side of
 * the extreme CG is certified by the breaks alone. Without `tanksMm` a top is found, to rounding, where it is wider than a
 * sixteenth of its smooth piece. Where load states tie, it is the one with most fuel, and the positions listed first.
 */
export function loadEnvelope(states: LoadStates): LoadEnvelope | null {
  const { fixed, switches, liquidAt, breaks, tanksMm } = states;
  const wrong = breaks.find((fraction) => !(fraction >= 0 && fraction <= 1));
  if (wrong !== undefined) throw new RangeError(`Breaks: expected fuel fractions of 0 to 1, got ${wrong}.`);
  if (breaks.length === 0) throw new RangeError('Breaks: expected at least one fuel fraction, got none.');
  const burn: LoadBurn = {
    fixed: momentOf(fixed),
    liquidAt,
    burns: breaks.length > 1,
    breaks: () => breaks,
    ...(tanksMm && { tanksMm }),
  };
  return burnsEnvelope([burn], switches, states);
}

/**
 * The same over several burns, where a switch bears on what is in the tanks: every burn with every combination of the
 * switches. A burn that cannot hold anything beyond what another has is passed by after its two ends.
 */
export function burnsEnvelope(
  burns: readonly LoadBurn[],
  switches: readonly LoadSwitch[],
  limits: SearchLimits = {},
): LoadEnvelope | null {
  const empty = switches.find(({ positions }) => positions.length === 0);
  if (empty) throw new RangeError(`Switch “${empty.name}”: expected at least one position, got none.`);
  const tally = { samples: 0 };
  const all = burns.map((burn) => ({ ...burn, liquidAt: remembered(burn.liquidAt, tally) }));
  const heaviest = byMass(all, switches, 1);
  const lightest = byMass(all, switches, -1);
  if (!heaviest || !lightest) return null;
  const allowed = 2 * burns.length + (limits.mostSamples ?? MOST_SAMPLES);
  const search = farthestOf(all, switches, limits, () => tally.samples < allowed);
  return {
    foremost: search({ axis: 0, sign: -1 }),
    aftmost: search({ axis: 0, sign: 1 }),
    leftmost: search({ axis: 1, sign: -1 }),
    rightmost: search({ axis: 1, sign: 1 }),
    heaviest,
    lightest,
  };
}

/** The heaviest load state (+1) or the lightest (−1), the first of equals; null when one weighs nothing. */
function byMass(burns: readonly LoadBurn[], switches: readonly LoadSwitch[], sign: 1 | -1): LoadState | null {
  const chosen = switches.map(({ positions }) =>
    positions.reduce(
      (best, { load }, k) => (sign * (load.massG - positions[best]!.load.massG) > 0 ? k : best),
      0,
    ),
  );
  let most: LoadState | null = null;
  for (const burn of burns) {
    const full = burn.liquidAt(1);
    const dry = burn.burns ? burn.liquidAt(0) : full;
    const liquid = sign < 0 && dry.massG < full.massG ? dry : full;
    const state = stateOf(burn, switches, liquid, chosen);
    if (!state) return null;
    if (!most || sign * (state.massG - most.massG) > 0) most = state;
  }
  return most;
}

/** Keeps what the liquid does at each fraction that was asked for, for all headings need much the same ones; counts them. */
function remembered(liquidAt: LoadBurn['liquidAt'], tally: { samples: number }): LoadBurn['liquidAt'] {
  const moments = new Map<number, LiquidMoment>();
  return (fuelFraction) => {
    let moment = moments.get(fuelFraction);
    if (!moment) {
      tally.samples += 1;
      moment = liquidAt(fuelFraction);
      moments.set(fuelFraction, moment);
    }
    return moment;
  };
}
