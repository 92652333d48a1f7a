import type { Vec3 } from '../geometry/types';
import type { MassProperties } from '../mass/types';
import { type Heading, type LoadSwitch, loadedBy } from './bestLoad';
import { burnPeak } from './burnPeak';
import type { LiquidMoment } from './travel';

export type { LoadPosition, LoadSwitch } from './bestLoad';

/** An aircraft with everything about it that can change. */
export interface LoadStates {
  /** All that is aboard at all times, without usable liquid. */
  readonly fixed: MassProperties;
  readonly switches: readonly LoadSwitch[];
  /** The liquid at a fraction of usable fuel, 1 full to 0 dry: continuous, mass never rising as it is drawn. */
  readonly liquidAt: (fuelFraction: number) => LiquidMoment;
  /** The fractions where `liquidAt` has kinks, with 1 and 0, in any order; [1] for an aircraft without fuel. */
  readonly breaks: readonly number[];
  /**
   * A box that holds all liquid that is ever drawn, mm: the tanks' bounds. With it the extremes are certified. It asks that
   * the liquid left is always part of the liquid there was, as it is in tanks held at one attitude.
   */
  readonly tanksMm?: { readonly min: Vec3; readonly max: Vec3 };
  /** How closely the extremes are to be certified, mm; 0.01 unless told. */
  readonly toleranceMm?: number;
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

/**
 * The extremes of CG and mass over all combinations of the switches and all fuel. Null when a load state weighs nothing,
 * for it has no CG. Throws a RangeError on a switch without positions and on breaks outside 0…1.
 *
 * What is guaranteed. For one amount of fuel the best combination is exact. The mass extremes are exact. Over the fuel the
 * reported CG is always one that the aircraft really has. With `tanksMm` no other load state lies farther out than
 * `withinMm`, which is at most `toleranceMm` unless a shape is so contrary that thousands of samples do not settle it. A
 * tank that lies wholly on one side of the extreme CG is certified by the breaks alone. Without `tanksMm` a top is found,
 * to rounding, where it is wider than a sixteenth of its smooth piece. Where load states tie, it is the one with most fuel,
 * and the positions listed first.
 */
export function loadEnvelope(states: LoadStates): LoadEnvelope | null {
  const breaks = checkedBreaks(states);
  const liquids = breaks.map(states.liquidAt);
  const full = liquids.reduce((a, b) => (b.massG >= a.massG ? b : a));
  const dry = liquids.reduceRight((a, b) => (b.massG < a.massG ? b : a));
  const heaviest = stateOf(states, full, byMass(states.switches, 1));
  const lightest = stateOf(states, dry, byMass(states.switches, -1));
  if (!heaviest || !lightest) return null;

  const farthest = (heading: Heading): LoadExtreme => {
    const { axis, sign } = heading;
    const reach: [number, number] | null = states.tanksMm
      ? [sign * states.tanksMm.min[axis], sign * states.tanksMm.max[axis]]
      : null;
    const peak = burnPeak({
      heading,
      fixed: loadedBy(states.fixed, heading),
      options: states.switches.map(({ positions }) => positions.map(({ mass }) => loadedBy(mass, heading))),
      liquidAt: states.liquidAt,
      breaks,
      lightestG: lightest.massG,
      reachMm: reach && [Math.min(...reach), Math.max(...reach)],
      toleranceMm: states.toleranceMm ?? 0.01,
    });
    const state = stateOf(states, states.liquidAt(peak.fuelFraction), peak.chosen)!;
    return { ...state, withinMm: peak.withinMm };
  };
  return {
    foremost: farthest({ axis: 0, sign: -1 }),
    aftmost: farthest({ axis: 0, sign: 1 }),
    leftmost: farthest({ axis: 1, sign: -1 }),
    rightmost: farthest({ axis: 1, sign: 1 }),
    heaviest,
    lightest,
  };
}

/** The breaks in rising order, each once. */
function checkedBreaks({ breaks, switches }: LoadStates): number[] {
  const empty = switches.find(({ positions }) => positions.length === 0);
  if (empty) throw new RangeError(`Switch “${empty.name}”: expected at least one position, got none.`);
  const wrong = breaks.find((fraction) => !(fraction >= 0 && fraction <= 1));
  if (wrong !== undefined) throw new RangeError(`Breaks: expected fuel fractions of 0 to 1, got ${wrong}.`);
  if (breaks.length === 0) throw new RangeError('Breaks: expected at least one fuel fraction, got none.');
  return [...new Set(breaks)].sort((a, b) => a - b);
}

/** The heaviest (+1) or lightest (−1) position of every switch; the first listed of equals. */
const byMass = (switches: readonly LoadSwitch[], sign: 1 | -1): number[] =>
  switches.map(({ positions }) =>
    positions.reduce(
      (best, { mass }, k) => (sign * (mass.massG - positions[best]!.mass.massG) > 0 ? k : best),
      0,
    ),
  );

function stateOf(
  { fixed, switches }: LoadStates,
  liquid: LiquidMoment,
  chosen: readonly number[],
): LoadState | null {
  const positions: Record<string, string> = {};
  const aboard = [fixed];
  switches.forEach((one, k) => {
    const position = one.positions[chosen[k]!]!;
    positions[one.id] = position.id;
    aboard.push(position.mass);
  });
  const massG = aboard.reduce((sum, body) => sum + body.massG, liquid.massG);
  if (!(massG > 0)) return null;
  const moment = (axis: 0 | 1 | 2) =>
    aboard.reduce((sum, body) => sum + body.massG * (body.cgMm?.[axis] ?? 0), liquid.momentGmm[axis]);
  return {
    cgMm: [moment(0) / massG, moment(1) / massG, moment(2) / massG],
    massG,
    fuelFraction: liquid.fuelFraction,
    positions,
  };
}
