import { cosDeg, sinDeg } from '../geometry/angle';
import type { Vec3 } from '../geometry/types';
import {
  type Carried,
  carriedFigure,
  carryOver,
  exactly,
  type Figure,
  type Refusal,
  refusal,
  resolutionSigma,
} from './figure';

/** One scale under a wheel, or under any other support that leans on nothing else. */
export interface Scale {
  readonly name: string;
  /** As read, with whatever stands on it. */
  readonly grossG: number;
  /** Chocks, stand or ramp on it, as read with the same scale; 0 for one that was zeroed. */
  readonly tareG: number;
  /** The step of its display, g. */
  readonly resolutionG: number;
  /** What it may be off by besides, g, one sigma. */
  readonly sigmaG?: number;
  /** Where it carries the aircraft, mm from the place that was measured from: the axle, for a wheel that rolls freely. */
  readonly supportMm: Vec3;
  /** Of each coordinate, mm, one sigma. */
  readonly supportSigmaMm: number;
}

/** How the aircraft stood on its scales. */
export interface ScalesSetup {
  readonly scales: readonly Scale[];
  /** Nose up +, degrees; level when left out. */
  readonly pitchDeg?: Figure;
  /** The CG's waterline, mm from the datum: needed when it did not stand level. */
  readonly cgWaterlineMm?: Figure;
  /** The point that the supports were measured from, aircraft frame; the datum when left out. */
  readonly fromMm?: Vec3;
}

/** What the scales say. Aircraft frame, from the datum. */
export interface ScalesWeighing {
  readonly ok: true;
  readonly massG: Figure;
  readonly stationMm: Figure;
  /** Null where all the supports stand in one line along the aircraft, which says nothing about it. */
  readonly buttlineMm: Figure | null;
  /** Of mass, station and buttline, plain covariances in g and mm. */
  readonly covariance: Carried['covariance'];
}

/** Supports farther apart than this across the aircraft say something about the buttline, mm. */
const APART_MM = 1;
/** Steeper than this a wheel is no longer a support on a scale, degrees. */
const STEEPEST_DEG = 60;

/**
 * Mass, station and buttline from two scales or more. The CG lies on the vertical through the centre of the readings:
 *
 *     W = Σ N      h = Σ N·h_i / W      h = x·cos θ + z·sin θ  (θ the pitch, nose up +)      y = Σ N·y_i / W
 *
 * so level it is CG = ΣM/ΣW (FAA-H-8083-1B, chapter 2), and pitched the height of supports and CG has a say. Carries the
 * display's step (reading and tare each), the scales' own sigma, the tape, the pitch and the CG's height over to the
 * answer, first order; the aircraft stands level across.
 */
export function weighOnScales(setup: ScalesSetup): ScalesWeighing | Refusal {
  const sentence = scalesFault(setup);
  if (sentence) return refusal(sentence);
  const { scales, pitchDeg = exactly(0), cgWaterlineMm = exactly(0), fromMm = [0, 0, 0] } = setup;
  const inputs = [pitchDeg, cgWaterlineMm, ...scales.flatMap((scale) => scaleFigures(scale, fromMm))];
  const carried = carryOver(inputs, ([pitch = 0, height = 0, ...of]) => {
    let [mass, along, across] = [0, 0, 0];
    for (let at = 0; at < of.length; at += 4) {
      const [net, x, y, z] = of.slice(at, at + 4) as [number, number, number, number];
      mass += net;
      along += net * (x * cosDeg(pitch) + z * sinDeg(pitch));
      across += net * y;
    }
    return [mass, (along / mass - height * sinDeg(pitch)) / cosDeg(pitch), across / mass];
  });
  const buttlines = scales.map(({ supportMm }) => supportMm[1]);
  const sideways = Math.max(...buttlines) - Math.min(...buttlines) > APART_MM;
  return {
    ok: true,
    massG: carriedFigure(carried, 0),
    stationMm: carriedFigure(carried, 1),
    buttlineMm: sideways ? carriedFigure(carried, 2) : null,
    covariance: carried.covariance,
  };
}

/** What a scale reads without what stands on it besides, g. */
export function netOf({
  grossG,
  tareG,
  resolutionG,
  sigmaG = 0,
}: Pick<Scale, 'grossG' | 'tareG' | 'resolutionG' | 'sigmaG'>): Figure {
  const readings = tareG === 0 ? 1 : 2;
  return {
    value: grossG - tareG,
    sigma: Math.hypot(Math.sqrt(readings) * resolutionSigma(resolutionG), sigmaG),
  };
}

function scaleFigures(scale: Scale, from: Vec3): readonly Figure[] {
  const { supportMm, supportSigmaMm } = scale;
  return [
    netOf(scale),
    ...supportMm.map((coordinate, axis) => ({ value: coordinate + from[axis]!, sigma: supportSigmaMm })),
  ];
}

/** Why these readings give no answer, or null. */
function scalesFault({ scales, pitchDeg, cgWaterlineMm }: ScalesSetup): string | null {
  if (scales.length < 2) return `Weighing needs two scales or more, not ${scales.length}.`;
  for (const scale of scales) {
    const { name, grossG, tareG, resolutionG, supportMm, supportSigmaMm } = scale;
    if (![grossG, tareG, resolutionG, supportSigmaMm, ...supportMm].every(Number.isFinite)) {
      return `${name}: expected figures for reading, tare and place, and one is missing.`;
    }
    if (grossG < tareG) {
      return `${name}: the reading, ${grossG} g, is less than the tare, ${tareG} g; no support pulls.`;
    }
  }
  if (!scales.some(({ grossG, tareG }) => grossG > tareG)) return 'All the scales read nothing.';
  const stations = scales.map(({ supportMm }) => supportMm[0]);
  if (Math.max(...stations) - Math.min(...stations) < APART_MM) {
    return 'All the supports are at one station, so nothing is said about where the CG is along the aircraft.';
  }
  const pitch = pitchDeg?.value ?? 0;
  if (!(Math.abs(pitch) <= STEEPEST_DEG)) {
    return `The pitch must be within ±${STEEPEST_DEG}°, not ${pitch}°.`;
  }
  if (pitch !== 0 && !cgWaterlineMm) {
    return 'It did not stand level, so the height of its CG is needed: weigh it level, or find the height by tilting.';
  }
  return null;
}
