import { allowedStations, type Band, type BandFit, bandFit, bestStation } from '../engine/balance/band';
import { cgTravel, type LiquidMoment, type TravelPoint, travelExtremes } from '../engine/balance/travel';
import type { Vec3 } from '../engine/geometry/types';
import { liquidState } from '../engine/liquid/liquidState';
import { type Plumbing, plumbing, tankVolumesAfter } from '../engine/liquid/plumbing';
import type { LiquidState } from '../engine/liquid/types';
import { massSum } from '../engine/mass/massProperties';
import type { MassProperties } from '../engine/mass/types';
import { staticMarginPct } from '../engine/wing/margin';
import { bandStations, estimatedBandStations } from './band';
import { type Body, bodies } from './bodies';
import { itemById } from './edit';
import type { StabilityEstimate } from './stability';
import { engineTanks } from './tanks';
import type { Aircraft } from './types';

/** What the balance depends on besides the aircraft: how much is left, and which way is down. */
export interface Loading {
  /** Usable liquid left, 1 full to 0 dry. */
  readonly fuelFraction: number;
  /** Apparent down in the aircraft's frame, unit; level at rest is [0, 0, −1]. */
  readonly down: Vec3;
  /** Where the neutral point is thought to be, when that is known. */
  readonly estimate?: StabilityEstimate | null;
  /** Whether the estimate belongs to this very structure; it does when this is left out. */
  readonly estimateFresh?: boolean;
}

export const LEVEL: Vec3 = [0, 0, -1];

/** The whole answer for one aircraft at one loading. Aircraft frame, mm and g. */
export interface Balance extends MassProperties {
  readonly bodies: readonly Body[];
  readonly liquids: readonly LiquidState[];
  readonly usableMl: number;
  readonly remainingMl: number;
  /** From full to dry; a single point when nothing burns. */
  readonly travel: readonly TravelPoint[];
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

/** Fuel states along the burn, full to dry, at which the travel is computed. */
export const FUEL_STATES = 64;

interface LiquidTable {
  readonly plumbing: Plumbing | null;
  readonly moments: readonly LiquidMoment[];
}

const DRY: LiquidTable = { plumbing: null, moments: [{ fuelFraction: 0, massG: 0, momentGmm: [0, 0, 0] }] };

const sumMoments = (fuelFraction: number, states: readonly LiquidState[]): LiquidMoment => {
  let massG = 0;
  let [x, y, z] = [0, 0, 0];
  for (const { mass } of states) {
    if (!mass.cgMm) continue;
    massG += mass.massG;
    x += mass.massG * mass.cgMm[0];
    y += mass.massG * mass.cgMm[1];
    z += mass.massG * mass.cgMm[2];
  }
  return { fuelFraction, massG, momentGmm: [x, y, z] };
};

const statesAt = (plumbed: Plumbing, fuelFraction: number, down: Vec3): LiquidState[] => {
  const volumes = tankVolumesAfter(plumbed, (1 - fuelFraction) * plumbed.usableMl, down);
  return plumbed.tanks.map((tank, i) => liquidState(tank, volumes[i] ?? 0, down));
};

function liquidTable(aircraft: Aircraft, down: Vec3): LiquidTable {
  const tanks = engineTanks(aircraft);
  if (tanks.length === 0) return DRY;
  const plumbed = plumbing(tanks);
  if ('faults' in plumbed) return DRY;
  const count = plumbed.usableMl > 0 ? FUEL_STATES : 1;
  const moments = Array.from({ length: count }, (_, i) => {
    const fuelFraction = count === 1 ? 0 : 1 - i / (count - 1);
    return sumMoments(fuelFraction, statesAt(plumbed, fuelFraction, down));
  });
  return { plumbing: plumbed, moments };
}

/** The last table, kept because a part being dragged leaves the tanks as they are. */
let kept: { tanks: Aircraft['tanks']; fuel: Aircraft['fuel']; down: Vec3; table: LiquidTable } | null = null;

function tableFor(aircraft: Aircraft, down: Vec3): LiquidTable {
  if (kept && kept.tanks === aircraft.tanks && kept.fuel === aircraft.fuel && kept.down === down)
    return kept.table;
  kept = { tanks: aircraft.tanks, fuel: aircraft.fuel, down, table: liquidTable(aircraft, down) };
  return kept.table;
}

/** Balances the aircraft at a loading: mass, CG, inertia about it, and the CG travel from full to dry. */
export function balanceAt(aircraft: Aircraft, loading: Loading): Balance {
  const aboard = bodies(aircraft);
  const table = tableFor(aircraft, loading.down);
  const liquids = table.plumbing ? statesAt(table.plumbing, loading.fuelFraction, loading.down) : [];
  const fixed = massSum(aboard.map((body) => body.mass));
  const whole = massSum([fixed, ...liquids.map((state) => state.mass)]);
  const usableMl = table.plumbing?.usableMl ?? 0;
  const travel = cgTravel(fixed, table.moments);
  const estimate = loading.estimate ?? null;
  const stated = bandStations(aircraft);
  const estimatedBand = estimatedBandStations(aircraft, estimate);
  const band = stated ?? estimatedBand;
  return {
    ...whole,
    bodies: aboard,
    liquids,
    usableMl,
    remainingMl: usableMl * loading.fuelFraction,
    travel,
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

/** Where an item may stand so that every fuel state stays in the band, and where the least margin is greatest. */
export interface Room {
  readonly allowed: { readonly fromMm: number; readonly toMm: number } | null;
  readonly bestMm: number;
}

/** The room along the station axis for a part or a tank with what is in it; null without a band or a mass. */
export function roomFor(aircraft: Aircraft, balance: Balance, itemId: string, down: Vec3): Room | null {
  if (!balance.band) return null;
  const own = massSum(balance.bodies.filter((body) => body.sourceId === itemId).map((body) => body.mass));
  const { plumbing: plumbed } = tableFor(aircraft, down);
  const tankIndex = plumbed?.tanks.findIndex((tank) => tank.id === itemId) ?? -1;
  const liquidG = (fuelFraction: number) => {
    const tank = plumbed?.tanks[tankIndex];
    if (!plumbed || !tank) return 0;
    const volumes = tankVolumesAfter(plumbed, (1 - fuelFraction) * plumbed.usableMl, down);
    return (volumes[tankIndex] ?? 0) * tank.densityGPerMl;
  };
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  const movable = {
    stationMm: item.positionMm[0],
    massesG: balance.travel.map((point) => own.massG + liquidG(point.fuelFraction)),
  };
  const bestMm = bestStation(balance.travel, movable, balance.band);
  return bestMm === null ? null : { allowed: allowedStations(balance.travel, movable, balance.band), bestMm };
}
