import type { Band } from './band';
import { bivariateNormalBelow } from './bivariateNormal';
import { beyondEnds } from './normalBox';
import { type LiquidMoment, type TravelPoint, travelExtremes } from './travel';
import { cgPerG, cgPerMm, type MeasuredBody } from './uncertainty';

/** One independent measurement and how it bears on the CG travel. */
export interface Measurement {
  /** The body measured; 'fuel' for the fuel's density, 'band' for where the limits are. */
  readonly bodyId: string;
  readonly quantity: 'mass' | 'station' | 'density' | 'limits';
  /** Standard uncertainty (one sigma): g, mm, or g/ml. */
  readonly sigma: number;
  /** How the CG's station moves with it, mm per unit, at each point of the travel. */
  readonly perUnitMm: readonly number[];
}

/** The masses and stations of bodies that are aboard at all points of a travel, as measurements. */
export function bodyMeasurements(
  bodies: readonly MeasuredBody[],
  travel: readonly TravelPoint[],
): Measurement[] {
  return bodies.flatMap(({ id, mass: { massG, cgMm }, sigmaG, sigmaMm }): Measurement[] =>
    cgMm === null
      ? []
      : [
          {
            bodyId: id,
            quantity: 'mass',
            sigma: sigmaG,
            perUnitMm: travel.map((point) => cgPerG(cgMm, point.massG, point.cgMm)[0]),
          },
          {
            bodyId: id,
            quantity: 'station',
            sigma: sigmaMm[0],
            perUnitMm: travel.map((point) => cgPerMm(massG, point.massG)),
          },
        ],
  );
}

/**
 * The density of all the fuel as one measurement: it scales the liquid's mass where it lies, so the CG moves by
 * (liquid moment − liquid mass·x)/(M·density) per g/ml. `moments` must be those of the travel.
 */
export function densityMeasurement(
  densityGPerMl: number,
  sigmaGPerMl: number,
  moments: readonly LiquidMoment[],
  travel: readonly TravelPoint[],
): Measurement {
  return {
    bodyId: 'fuel',
    quantity: 'density',
    sigma: sigmaGPerMl,
    perUnitMm: travel.map(({ massG, cgMm }, k) => {
      const liquid = moments[k]!;
      return (liquid.momentGmm[0] - liquid.massG * cgMm[0]) / (massG * densityGPerMl);
    }),
  };
}

/**
 * Where both limits are as one measurement, as with a band that hangs on an estimated neutral point: limits that lie so much
 * farther aft are as good as a CG so much farther forward.
 */
export const limitsMeasurement = (sigmaMm: number, travel: readonly TravelPoint[]): Measurement => ({
  bodyId: 'band',
  quantity: 'limits',
  sigma: sigmaMm,
  perUnitMm: travel.map(() => -1),
});

/** The foremost and aftmost CG with their errors: standard uncertainties and correlation. */
interface Ends {
  /** Their places in the travel. */
  readonly at: readonly [foremost: number, aftmost: number];
  readonly foremostMm: number;
  readonly aftmostMm: number;
  readonly foremostSigmaMm: number;
  readonly aftmostSigmaMm: number;
  readonly correlation: number;
}

function endsOf(travel: readonly TravelPoint[], measurements: readonly Measurement[]): Ends | null {
  const extremes = travelExtremes(travel);
  if (!extremes) return null;
  const [f, a] = [travel.indexOf(extremes.foremost), travel.indexOf(extremes.aftmost)];
  let [ff, aa, fa] = [0, 0, 0];
  for (const { sigma, perUnitMm } of measurements) {
    const [atForemost, atAftmost] = [perUnitMm[f]! * sigma, perUnitMm[a]! * sigma];
    ff += atForemost * atForemost;
    aa += atAftmost * atAftmost;
    fa += atForemost * atAftmost;
  }
  return {
    at: [f, a],
    foremostMm: extremes.foremost.cgMm[0],
    aftmostMm: extremes.aftmost.cgMm[0],
    foremostSigmaMm: Math.sqrt(ff),
    aftmostSigmaMm: Math.sqrt(aa),
    correlation: ff > 0 && aa > 0 ? Math.max(-1, Math.min(1, fa / Math.sqrt(ff * aa))) : 0,
  };
}

/** A margin in standard uncertainties. One that is known exactly holds or does not; none left at all still holds. */
const sigmas = (marginMm: number, sigmaMm: number): number =>
  sigmaMm > 0 ? marginMm / sigmaMm : marginMm >= 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;

/** The probability given is the one found less so many standard errors of the method: the safe side. */
const SAFE_ERRORS = 3;
/** So unlikely that it does not matter how much less likely it is. */
const HOPELESS = 1e-6;
/** A point that would have to close up on an end by so many standard uncertainties never takes its place. */
const NEVER = 9;

/**
 * The probability that the whole travel lies in the band, limits included, under the first-order Gaussian model: every
 * point's station is linear in the errors, which the points share. P(foremost ≥ forward limit and aftmost ≤ aft limit) of the
 * points that are foremost and aftmost as weighed is bivariate normal and in closed form; what other points may turn out to
 * be instead, as with tanks near the CG, is integrated (see `beyondEnds`) and only ever lowers it. It errs to the low side
 * by three standard errors of that integral. Null for an empty travel.
 */
export function probabilityInBand(
  travel: readonly TravelPoint[],
  measurements: readonly Measurement[],
  band: Band,
): number | null {
  const ends = endsOf(travel, measurements);
  if (!ends) return null;
  const asWeighed = probabilityOfEnds(ends, band);
  const others = rivals(travel, measurements);
  if (others === null || asWeighed < HOPELESS) return asWeighed;
  const points = [...ends.at, ...others].map((k) => ({
    mean: travel[k]!.cgMm[0],
    loadings: measurements.map(({ sigma, perUnitMm }) => sigma * perUnitMm[k]!),
  }));
  const { value, error } = beyondEnds(points, [band.forwardMm, band.aftMm]);
  return Math.max(0, asWeighed + Math.min(0, value) - SAFE_ERRORS * error);
}

/**
 * The points that may turn out to be foremost or aftmost instead of those that are as weighed; null when none of them may,
 * nor the two change places.
 */
function rivals(travel: readonly TravelPoint[], measurements: readonly Measurement[]): number[] | null {
  const ends = travelExtremes(travel)!;
  const at = [travel.indexOf(ends.foremost), travel.indexOf(ends.aftmost)] as const;
  const mayPass = (k: number, end: number) => {
    const apartMm = Math.abs(travel[k]!.cgMm[0] - travel[end]!.cgMm[0]);
    let variance = 0;
    for (const { sigma, perUnitMm } of measurements) {
      const step = sigma * (perUnitMm[k]! - perUnitMm[end]!);
      variance += step * step;
    }
    return apartMm * apartMm < NEVER * NEVER * variance;
  };
  const others = travel.flatMap((_, k) => (!at.includes(k) && at.some((end) => mayPass(k, end)) ? [k] : []));
  return others.length > 0 || mayPass(at[0], at[1]) ? others : null;
}

const probabilityOfEnds = (ends: Ends, { forwardMm, aftMm }: Band): number =>
  // The forward margin shrinks as the aft margin grows, hence the sign of the correlation.
  bivariateNormalBelow(
    sigmas(ends.foremostMm - forwardMm, ends.foremostSigmaMm),
    sigmas(aftMm - ends.aftmostMm, ends.aftmostSigmaMm),
    -ends.correlation,
  );

/** What it would help to know one measurement perfectly. */
export interface Ranked {
  readonly bodyId: string;
  readonly quantity: Measurement['quantity'];
  /** What it adds to the variance of the CG's station at the end of the travel in question, mm². */
  readonly varianceMm2: number;
  /** Its share of that variance, 0 to 1; 0 where there is none. */
  readonly share: number;
}

/** The probability that the whole travel lies in the band, were one measurement known perfectly; null for an empty travel. */
export const probabilityIfPerfect = (
  travel: readonly TravelPoint[],
  measurements: readonly Measurement[],
  band: Band,
  perfect: Pick<Measurement, 'bodyId' | 'quantity'>,
): number | null =>
  probabilityInBand(
    travel,
    measurements.filter(
      (measurement) => measurement.bodyId !== perfect.bodyId || measurement.quantity !== perfect.quantity,
    ),
    band,
  );

/**
 * The measurements, the one whose improvement helps most first: by the variance that it adds to the CG's station at the
 * end of the travel (foremost or aftmost) that is fewest standard uncertainties inside its limit. The variances sum to
 * that end's. The probability does not order them: near certainty all gains vanish, and outside the band better measurements
 * lower it. Empty for an empty travel.
 */
export function ranking(
  travel: readonly TravelPoint[],
  measurements: readonly Measurement[],
  band: Band,
): Ranked[] {
  const ends = endsOf(travel, measurements);
  const extremes = travelExtremes(travel);
  if (!ends || !extremes) return [];
  const forward = sigmas(ends.foremostMm - band.forwardMm, ends.foremostSigmaMm);
  const aft = sigmas(band.aftMm - ends.aftmostMm, ends.aftmostSigmaMm);
  const critical = travel.indexOf(aft <= forward ? extremes.aftmost : extremes.foremost);
  const totalMm2 = (aft <= forward ? ends.aftmostSigmaMm : ends.foremostSigmaMm) ** 2;
  return measurements
    .map(({ bodyId, quantity, sigma, perUnitMm }): Ranked => {
      const varianceMm2 = (perUnitMm[critical]! * sigma) ** 2;
      return { bodyId, quantity, varianceMm2, share: totalMm2 > 0 ? varianceMm2 / totalMm2 : 0 };
    })
    .sort((a, b) => b.varianceMm2 - a.varianceMm2);
}
