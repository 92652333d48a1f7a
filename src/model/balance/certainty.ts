import {
  limitsMeasurement,
  type Measurement,
  probabilityInBand,
  type Ranked,
  ranking,
} from '../../engine/balance/bandProbability';
import {
  COVERAGE_FACTOR,
  propagate,
  standardUncertainty,
  type Uncertainty,
} from '../../engine/balance/uncertainty';
import type { Vec3 } from '../../engine/geometry/types';
import { massSum } from '../../engine/mass/massProperties';
import type { Tensor } from '../../engine/mass/types';
import { lastOnly } from '../../engine/memory/memory';
import { fuelDensity } from '../airframe/tanks';
import type { Aircraft } from '../document/types';
import type { Balance } from './balance';
import { bandSigmaOf } from './bandSigma';
import { densityPlusMinus, type MeasuredThing, measuredThings, travelMeasurements } from './measurements';

/** How far 95 % of the cases lie from the middle, in standard uncertainties: along a line (GUM, k = 2) … */
export const LINE_95 = COVERAGE_FACTOR;
/** … and in the two directions of a picture: the 95 % point of chi-square with two degrees of freedom is 5.991. */
export const PICTURE_95 = Math.sqrt(5.991);

/** How well the CG is known at the loading shown. Covariances are plain, not tensor elements; mm². */
export interface CgError {
  readonly sigmaMm: Vec3;
  readonly covarianceMm2: Tensor;
  readonly massSigmaG: number;
}

/**
 * The error of the CG at the loading shown: everything aboard as measured, each tank with what is in it where the
 * tank is, and the density of the fuel. Null without a CG. Quick enough for every frame of a drag; the same answer
 * again for the same balance.
 */
export const cgErrorOf = lastOnly(cgError);

/** Everything aboard as measured, each tank with what is in it, and what their errors come to; null without a CG. */
export const carriedOver = lastOnly(carry);

function carry(
  aircraft: Aircraft,
  { bodies, liquids }: Balance,
): { readonly things: readonly MeasuredThing[]; readonly sum: Uncertainty } | null {
  const liquidIn = new Map(liquids.map(({ tankId, mass }) => [tankId, mass]));
  const things = measuredThings(aircraft, bodies);
  const sum = propagate(
    things.map((thing) => {
      const liquid = liquidIn.get(thing.id);
      return liquid ? { ...thing, mass: massSum([thing.mass, liquid]) } : thing;
    }),
  );
  return sum && { things, sum };
}

function cgError(aircraft: Aircraft, balance: Balance): CgError | null {
  const { liquids, cgMm, massG, loaded } = balance;
  const propagated = carriedOver(aircraft, balance)?.sum;
  if (!propagated || !cgMm) return null;
  const c = propagated.cgCovarianceMm2;
  const liquid = massSum(liquids.map(({ mass }) => mass));
  if (!liquid.cgMm || !loaded.fuel)
    return { sigmaMm: propagated.cgSigmaMm, covarianceMm2: c, massSigmaG: propagated.massSigmaG };
  const shareOff = standardUncertainty(densityPlusMinus(aircraft)) / fuelDensity(loaded.fuel);
  const offG = shareOff * liquid.massG;
  const [x, y, z] = [0, 1, 2].map((axis) => (offG * (liquid.cgMm![axis]! - cgMm[axis]!)) / massG) as [
    number,
    number,
    number,
  ];
  const covarianceMm2 = {
    xx: c.xx + x * x,
    yy: c.yy + y * y,
    zz: c.zz + z * z,
    xy: c.xy + x * y,
    xz: c.xz + x * z,
    yz: c.yz + y * z,
  };
  return {
    sigmaMm: [Math.sqrt(covarianceMm2.xx), Math.sqrt(covarianceMm2.yy), Math.sqrt(covarianceMm2.zz)],
    covarianceMm2,
    massSigmaG: Math.hypot(propagated.massSigmaG, offG),
  };
}

/** One measurement that could be bettered. */
export interface Improvement extends Ranked {
  readonly name: string;
  /** The ± that it has now, in g, mm or g/ml: two standard uncertainties. */
  readonly plusMinus: number;
}

/** How sure it is that the whole burn stays in the band, and what would make it surer. */
export interface Certainty {
  /** ± of the CG's station, 95 %, at each point of the travel, mm. */
  readonly travelPlusMinusMm: readonly number[];
  /** Null without a band. */
  readonly probability: number | null;
  /** What helps most first; empty without a band. */
  readonly ranking: readonly Improvement[];
}

/** So many improvements are named. */
const MOST_NAMED = 5;

/**
 * Carries every ± over to the travel. The travel is that of the load state shown. Takes from a millisecond to some tens of
 * them, so it is asked for at rest; the same answer again for the same balance.
 * @param bandSigmaMm the standard uncertainty of where both limits are, as with a band that hangs on an estimated neutral
 * point; that of the estimate when left out, 0 for stated limits
 */
export const certaintyOf = (
  aircraft: Aircraft,
  balance: Balance,
  bandSigmaMm = bandSigmaOf(balance),
): Certainty => lastCertainty(aircraft, balance, bandSigmaMm);

const lastCertainty = lastOnly(certainty);

function certainty(aircraft: Aircraft, balance: Balance, bandSigmaMm: number): Certainty {
  const { travel, band } = balance;
  const { things, measured } = measurementsOf(aircraft, balance);
  const againstBand = bandSigmaMm > 0 ? [...measured, limitsMeasurement(bandSigmaMm, travel)] : measured;
  const best = band ? ranking(travel, againstBand, band).slice(0, MOST_NAMED) : [];
  return {
    travelPlusMinusMm: travel.map((_, point) => LINE_95 * sigmaAt(measured, point)),
    probability: band && probabilityInBand(travel, againstBand, band),
    ranking: best.map((ranked) => improvement(ranked, againstBand, things)),
  };
}

/** The standard uncertainty of the CG's station at each point of the travel, mm; the band has no say in it. */
export function travelSigmasMm(aircraft: Aircraft, balance: Balance): readonly number[] {
  const { measured } = measurementsOf(aircraft, balance);
  return balance.travel.map((_, point) => sigmaAt(measured, point));
}

function measurementsOf(aircraft: Aircraft, { bodies, travel, liquid }: Balance) {
  const things = measuredThings(aircraft, bodies);
  return { things, measured: travelMeasurements(aircraft, things, liquid, travel) };
}

const sigmaAt = (measured: readonly Measurement[], point: number) =>
  Math.sqrt(measured.reduce((sum, { sigma, perUnitMm }) => sum + (sigma * (perUnitMm[point] ?? 0)) ** 2, 0));

function improvement(
  ranked: Ranked,
  measured: readonly Measurement[],
  things: readonly MeasuredThing[],
): Improvement {
  const measurement = measured.find(
    ({ bodyId, quantity }) => bodyId === ranked.bodyId && quantity === ranked.quantity,
  );
  const name =
    ranked.quantity === 'density'
      ? 'Density of the fuel'
      : ranked.quantity === 'limits'
        ? 'Estimated neutral point'
        : (things.find(({ id }) => id === ranked.bodyId)?.name ?? ranked.bodyId);
  return { ...ranked, name, plusMinus: COVERAGE_FACTOR * (measurement?.sigma ?? 0) };
}
