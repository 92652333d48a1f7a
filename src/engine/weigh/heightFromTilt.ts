import { cosDeg, sinDeg } from '../geometry/angle';
import type { Vec3 } from '../geometry/types';
import { type Carried, carriedFigure, carryOver, type Figure, type Refusal, refusal } from './figure';

/** One reading of the nose or tail scale with the aircraft held at a pitch. */
export interface TiltReading {
  /** Nose up +, degrees. */
  readonly pitchDeg: Figure;
  /** Net of the scale under the other support, g. */
  readonly readingG: Figure;
  /** What is still in the tanks, as it lies at this pitch; left out when drained. */
  readonly liquid?: { readonly massG: number; readonly cgMm: Vec3 };
}

export interface TiltSetup {
  /** All of it, with whatever is in the tanks, g. */
  readonly massG: Figure;
  /** Axle line that it turns about, [station, waterline], mm. */
  readonly pivotMm: readonly [Figure, Figure];
  /** Axle over the scale that is read, [station, waterline], mm. */
  readonly otherMm: readonly [Figure, Figure];
  readonly readings: readonly TiltReading[];
  /** What all of the liquid may be off by, one sigma as a share of its mass. */
  readonly liquidShareSigma?: number;
}

/** The CG of the aircraft without the liquid that was accounted for. Aircraft frame, from the datum. */
export interface TiltedHeight {
  readonly ok: true;
  readonly massG: Figure;
  readonly stationMm: Figure;
  readonly waterlineMm: Figure;
  /** Of mass, station and waterline, plain covariances in g and mm. */
  readonly covariance: Carried['covariance'];
  /** How far each reading is from the fitted line, g. */
  readonly leftG: readonly number[];
  /** What one gram more on the scale at the steepest tilt does to the waterline, mm, all other readings as they are. */
  readonly mmPerG: number;
}

/** The tangents of the pitches must spread at least so far, or the height is anybody's guess. */
const LEAST_SPREAD = 0.03;
/** And so many sigmas of a pitch: nearer together the errors grow out of the first order, and the ± would be told too small. */
const LEAST_SPREAD_SIGMAS = 6;

/**
 * Height of the CG by weighing tilted. With the supports' axles free to roll, pitch θ and t = tan θ, moments about the pivot
 * axle give, for the reading F over an axle that lies L_x aft and L_z above the pivot,
 *
 *     F·(L_x + L_z·t) = W·(B + V·t)
 *
 * B the CG aft of the pivot, V above it: a straight line in t, fitted by least squares to two angles or more. For a level
 * reading F₀ and equal axles this is V = L·(F − F₀)/(W·tan θ), the principle of ISO 10392 (formula from memory). The geometry amplifies the error
 * of a reading by L/(W·tan θ): small angles give nothing. Liquid is taken off at the place where it lies at each pitch.
 */
export function heightFromTilt(setup: TiltSetup): TiltedHeight | Refusal {
  const sentence = tiltFault(setup);
  if (sentence) return refusal(sentence);
  const { massG, pivotMm, otherMm, readings, liquidShareSigma = 0 } = setup;
  const inputs = [
    { value: 1, sigma: liquidShareSigma },
    massG,
    ...pivotMm,
    ...otherMm,
    ...readings.flatMap(({ pitchDeg, readingG }) => [pitchDeg, readingG]),
  ];
  const fit = (of: readonly number[]) => fitTilt(of, readings);
  const carried = carryOver(inputs, (of) => {
    const { dryG, cg } = fit(of);
    return [dryG, ...cg];
  });
  const at = inputs.map(({ value }) => value);
  const { leftG, cg } = fit(at);
  const steepness = readings.map(({ pitchDeg }) => Math.abs(tangent(pitchDeg.value)));
  // Past share, mass and the two axles the inputs are pairs of pitch and reading.
  const steepest = 7 + 2 * steepness.indexOf(Math.max(...steepness));
  const withMore = fit(at.with(steepest, at[steepest]! + 1)).cg;
  return {
    ok: true,
    massG: carriedFigure(carried, 0),
    stationMm: carriedFigure(carried, 1),
    waterlineMm: carriedFigure(carried, 2),
    covariance: carried.covariance,
    leftG,
    mmPerG: Math.abs(withMore[1]! - cg[1]!),
  };
}

const tangent = (deg: number) => sinDeg(deg) / cosDeg(deg);

function fitTilt(of: readonly number[], readings: readonly TiltReading[]) {
  const [share = 1, mass = 0, pivotX = 0, pivotZ = 0, otherX = 0, otherZ = 0, ...pairs] = of;
  const points = readings.map(({ liquid }, index) => {
    const t = tangent(pairs[2 * index] ?? 0);
    const arm = otherX - pivotX + (otherZ - pivotZ) * t;
    const liquidG = share * (liquid?.massG ?? 0);
    const liquidMoment = liquid ? liquidG * (liquid.cgMm[0] - pivotX + (liquid.cgMm[2] - pivotZ) * t) : 0;
    const dryG = mass - liquidG;
    return { t, arm, dryG, lever: ((pairs[2 * index + 1] ?? 0) * arm - liquidMoment) / dryG };
  });
  const n = points.length;
  const meanT = points.reduce((sum, { t }) => sum + t, 0) / n;
  const meanLever = points.reduce((sum, { lever }) => sum + lever, 0) / n;
  const spread = points.reduce((sum, { t }) => sum + (t - meanT) ** 2, 0);
  const above = points.reduce((sum, { t, lever }) => sum + (t - meanT) * (lever - meanLever), 0) / spread;
  const aft = meanLever - above * meanT;
  const leftG = points.map(({ t, arm, dryG, lever }) => ((lever - aft - above * t) * dryG) / arm);
  return { cg: [pivotX + aft, pivotZ + above], leftG, dryG: points[0]?.dryG ?? mass };
}

/** Why these readings give no height, or null. */
function tiltFault({ massG, pivotMm, otherMm, readings }: TiltSetup): string | null {
  if (readings.length < 2) return `Two angles or more are needed, not ${readings.length}.`;
  if (!(massG.value > 0)) return `The mass must be more than 0 g, not ${massG.value} g.`;
  if (!(Math.abs(pivotMm[0].value - otherMm[0].value) >= 1)) {
    return 'The two axles are at one station: expected the axle it turns about and another one ahead of it or behind.';
  }
  const faulty = readings.map((reading, at) => readingFault(reading, at, massG.value)).find(Boolean);
  if (faulty) return faulty;
  const tangents = readings.map(({ pitchDeg }) => tangent(pitchDeg.value));
  const spread = Math.max(...tangents) - Math.min(...tangents);
  if (spread < LEAST_SPREAD) return 'The angles are too close together: tilt it farther for one of them.';
  const unsure = Math.max(...readings.map(({ pitchDeg: { sigma } }) => sigma));
  if (spread < LEAST_SPREAD_SIGMAS * tangent(unsure)) {
    return `The angles are too close together for angles that may be off by ±${2 * unsure}°: tilt it farther for one of them, or read it better.`;
  }
  return null;
}

/** Sums and differences of readings, without their rounding errors, g. */
const tenth = (grams: number) => Math.round(grams * 10) / 10;

function readingFault(
  { pitchDeg, readingG, liquid }: TiltReading,
  at: number,
  wholeG: number,
): string | null {
  const where = `Reading ${at + 1}`;
  const grams = readingG.value;
  if (!(Math.abs(pitchDeg.value) <= 60))
    return `${where}: a pitch must be within ±60°, not ${pitchDeg.value}°.`;
  if (!(grams >= 0)) return `${where}: the scale must read 0 g or more, not ${tenth(grams)} g.`;
  if (grams > wholeG)
    return `${where}: ${tenth(grams)} g on one scale is more than the whole aircraft, ${wholeG} g.`;
  if (liquid && !(liquid.massG < wholeG)) {
    return `${where}: ${tenth(liquid.massG)} g of liquid is not less than the whole aircraft, ${wholeG} g.`;
  }
  return null;
}

/** What a level reading and one tilt would give. */
export interface RecommendedTilt {
  readonly pitchDeg: number;
  /** One sigma of the waterline, mm. */
  readonly sigmaMm: number;
}

/** So much of the whole must stay on the scale that is read, or it lifts off. */
const LEAST_SHARE = 0.03;

/**
 * The tilt to take beside a level reading, in whole degrees nose up or down: the flattest within 10 % of the least error that is to be had up to `mostDeg`, with
 * a share of the mass still on the scale that is read. Null where no angle from 5° keeps it there.
 */
export function recommendedTilt(
  { massG, pivotMm, otherMm }: Omit<TiltSetup, 'readings'>,
  expectedCgMm: Vec3,
  {
    readingSigmaG,
    pitchSigmaDeg,
    noseUp = true,
    mostDeg = 25,
  }: {
    readonly readingSigmaG: number;
    readonly pitchSigmaDeg: number;
    readonly noseUp?: boolean;
    readonly mostDeg?: number;
  },
): RecommendedTilt | null {
  const reading = (pitch: number): TiltReading => {
    const t = tangent(pitch);
    const arm = otherMm[0].value - pivotMm[0].value + (otherMm[1].value - pivotMm[1].value) * t;
    const lever = expectedCgMm[0] - pivotMm[0].value + (expectedCgMm[2] - pivotMm[1].value) * t;
    return {
      pitchDeg: { value: pitch, sigma: pitchSigmaDeg },
      readingG: { value: (massG.value * lever) / arm, sigma: readingSigmaG },
    };
  };
  const tilts: RecommendedTilt[] = [];
  for (let deg = 5; deg <= mostDeg; deg += 1) {
    const pitchDeg = noseUp ? deg : -deg;
    const tilted = reading(pitchDeg);
    const share = tilted.readingG.value / massG.value;
    if (!(share >= LEAST_SHARE && share <= 1 - LEAST_SHARE)) break;
    const height = heightFromTilt({ massG, pivotMm, otherMm, readings: [reading(0), tilted] });
    if (height.ok) tilts.push({ pitchDeg, sigmaMm: height.waterlineMm.sigma });
  }
  const least = Math.min(...tilts.map(({ sigmaMm }) => sigmaMm));
  return tilts.find(({ sigmaMm }) => sigmaMm <= 1.1 * least) ?? null;
}
