import { type Band, type BandFit, bandFit } from '../../engine/balance/band';
import { type TravelPoint, travelExtremes } from '../../engine/balance/travel';
import type { Vec3 } from '../../engine/geometry/types';
import type { LiquidState } from '../../engine/liquid/types';
import { massSum } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import { staticMarginPct } from '../../engine/wing/margin';
import { type Body, bodies } from '../airframe/bodies';
import { AT_START, inLoadState, type Positions } from '../airframe/loadSwitches';
import type { Aircraft } from '../document/types';
import { bandStations, estimatedBandStations } from '../stability/band';
import type { StabilityEstimate } from '../stability/stability';
import { certifiedTravel } from './certifiedTravel';
import { isFiniteBalance, noFigures } from './finite';
import { type LiquidTable, liquidStatesAt } from './liquidTable';

export { MOST_FUEL_STATES } from './liquidTable';

/** What the balance depends on besides the aircraft: how much is left, and which way is down. */
export interface Loading {
  /** Usable liquid left, 1 full to 0 dry. */
  readonly fuelFraction: number;
  /** Apparent down in the aircraft's frame, unit; level at rest is [0, 0, −1]. */
  readonly down: Vec3;
  /** What is aboard and how the undercarriage stands; all switches in their first position when left out. */
  readonly positions?: Positions;
  /** Where the neutral point is thought to be, when that is known. */
  readonly estimate?: StabilityEstimate | null;
  /** Whether the estimate belongs to this very structure; it does when this is left out. */
  readonly estimateFresh?: boolean;
}

export const LEVEL: Vec3 = [0, 0, -1];

/** The whole answer for one aircraft at one loading. Aircraft frame, mm and g. */
export interface Balance extends MassProperties {
  /** False where a figure came out as no number; then there is no CG, no travel and no verdict. */
  readonly finite: boolean;
  /** The aircraft in the load state shown: without what is not aboard, legs as they stand. */
  readonly loaded: Aircraft;
  /** The liquid at each point of the travel. */
  readonly liquid: LiquidTable;
  readonly bodies: readonly Body[];
  readonly liquids: readonly LiquidState[];
  readonly usableMl: number;
  readonly remainingMl: number;
  /** From full to dry; a single point when nothing burns. */
  readonly travel: readonly TravelPoint[];
  /** No fuel state puts the CG farther fore or aft than this beyond the ends of the travel, mm. */
  readonly travelWithinMm: number;
  /** The stated limits, or else what the margin wanted makes of the estimate. */
  readonly band: Band | null;
  readonly bandFrom: 'stated' | 'estimate' | null;
  /** What the margin wanted makes of the estimate, whether it is the band or stands beside stated limits. */
  readonly estimatedBand: Band | null;
  readonly estimate: StabilityEstimate | null;
  readonly estimateFresh: boolean;
  /** Estimated static margins; null without an estimate or a CG. */
  readonly margin: StaticMargin | null;
  /** Estimated static margin at each point of the travel, % MAC; empty without an estimate. */
  readonly travelMarginsPct: readonly number[];
  readonly fit: BandFit | null;
}

/** Estimated static margins in % MAC, + when the CG is ahead of the neutral point. */
export interface StaticMargin {
  /** At the loading shown. */
  readonly nowPct: number;
  /** The least over the burn, and the fuel left there. */
  readonly leastPct: number;
  readonly atFuelFraction: number;
}

/** Balances the aircraft at a loading: mass, CG, inertia about it, and the CG travel from full to dry. */
export function balanceAt(aircraft: Aircraft, loading: Loading): Balance {
  const figures = figuresAt(aircraft, loading);
  return isFiniteBalance(figures) ? { ...figures, finite: true } : { ...figures, ...noFigures };
}

function figuresAt(aircraft: Aircraft, loading: Loading): Omit<Balance, 'finite'> {
  const loaded = inLoadState(aircraft, loading.positions ?? AT_START);
  const aboard = bodies(loaded, aircraft);
  const fixed = massSum(aboard.map((body) => body.mass));
  const { table, travel, withinMm } = certifiedTravel(fixed, loaded, loading.down);
  const liquids = table.plumbing ? liquidStatesAt(table.plumbing, loading.fuelFraction, loading.down) : [];
  const whole = massSum([fixed, ...liquids.map((state) => state.mass)]);
  const usableMl = table.plumbing?.usableMl ?? 0;
  const estimate = loading.estimate ?? null;
  const stated = bandStations(aircraft);
  const estimatedBand = estimatedBandStations(aircraft, estimate);
  const band = stated ?? estimatedBand;
  return {
    ...whole,
    loaded,
    bodies: aboard,
    liquid: table,
    liquids,
    usableMl,
    remainingMl: usableMl * loading.fuelFraction,
    travel,
    travelWithinMm: withinMm,
    band,
    bandFrom: stated ? 'stated' : estimatedBand && 'estimate',
    estimatedBand,
    estimate,
    estimateFresh: estimate !== null && (loading.estimateFresh ?? true),
    margin: estimate && staticMargin(estimate, whole, travel),
    travelMarginsPct: estimate ? travel.map(({ cgMm }) => marginAt(estimate, cgMm[0])) : [],
    fit: band && bandFit(travel, band),
  };
}

const marginAt = ({ neutralPointMm, macMm }: StabilityEstimate, stationMm: number) =>
  staticMarginPct(neutralPointMm, stationMm, macMm);

function staticMargin(
  estimate: StabilityEstimate,
  { cgMm }: MassProperties,
  travel: readonly TravelPoint[],
): StaticMargin | null {
  const extremes = travelExtremes(travel);
  if (!cgMm || !extremes) return null;
  const { aftmost } = extremes;
  return {
    nowPct: marginAt(estimate, cgMm[0]),
    leastPct: marginAt(estimate, aftmost.cgMm[0]),
    atFuelFraction: aftmost.fuelFraction,
  };
}
