import { positionOf, switchesOf } from '../airframe/loadSwitches';
import type { Aircraft, ScaleReading, WeighIn, WeighLine } from '../document/types';
import { tiltToTake } from './byTilt';
import { positionsOf } from './thought';
import { lastWeighIn, weighInsOf } from './weighIns';
import { axlesOf, wheelsOf } from './wheels';

type Reading = WeighIn['reading'];
/** The load state, by switch. */
type Switched = WeighIn['switches'];

/** Kitchen scales and a tape, where nothing else is said. Common practice, no source. */
const USUAL = {
  resolutionG: 1,
  tapeMm: 2,
  pitchPlusMinusDeg: 0.2,
  standMm: 2,
  massPlusMinusG: 2,
  lineMm: 3,
  thumbS: 0.2,
  amplitudeDeg: 5,
} as const;

/** Scales under every wheel, nothing read yet; two places to be measured where there are no wheels. */
export function freshScales(aircraft: Aircraft): Reading {
  const wheels = wheelsOf(aircraft);
  const supports =
    wheels.length > 1
      ? wheels
      : [
          { name: 'Front support', axleMm: [0, 0, 0] as const },
          { name: 'Rear support', axleMm: [0, 0, 0] as const },
        ];
  return {
    by: 'scales',
    scales: supports.map(({ name, axleMm }) => ({ name, grossG: 0, tareG: 0, supportMm: axleMm })),
    resolutionG: USUAL.resolutionG,
    tapeMm: USUAL.tapeMm,
    pitchDeg: 0,
    pitchPlusMinusDeg: USUAL.pitchPlusMinusDeg,
  };
}

/** One scale more, its place still to be measured. */
export const freshScale = (others: readonly ScaleReading[]): ScaleReading => ({
  name: `Support ${others.length + 1}`,
  grossG: 0,
  tareG: 0,
  supportMm: [0, 0, 0],
});

/** A stand with nothing added, its place still to be measured. */
export const freshStand = (aircraft: Aircraft, fuelPct: number, switches: Switched = []): Reading => ({
  by: 'stand',
  supportMm: null,
  plusMinusMm: USUAL.standMm,
  addedG: 0,
  addedAtMm: 0,
  ...whole(aircraft, fuelPct, switches),
});

/** Hung by nose and tail with nothing laid on: level across. */
export const freshAcross = { addedG: 0, plusMinusG: 1, addedAtMm: 0 } as const;

/** The whole as it was weighed last so loaded, by the scales themselves; null when it never was. */
function weighedBefore(aircraft: Aircraft, fuelPct: number, switches: Switched): number | null {
  const same = weighInsOf(aircraft).filter(
    (entry) =>
      entry.reading.by === 'scales' &&
      entry.fuelPct === fuelPct &&
      switchesOf(aircraft).every(
        (each) => positionOf(each, positionsOf(entry)).id === positionOf(each, positionsOf({ switches })).id,
      ),
  );
  const reading = lastWeighIn({ ...aircraft, weighIns: same })?.reading;
  if (reading?.by !== 'scales') return null;
  const sum = reading.scales.reduce((total, { grossG, tareG }) => total + grossG - tareG, 0);
  return sum > 0 ? sum : null;
}

const whole = (aircraft: Aircraft, fuelPct: number, switches: Switched) => ({
  massG: weighedBefore(aircraft, fuelPct, switches),
  massPlusMinusG: USUAL.massPlusMinusG,
});

/** Two lines with their points still to be measured. */
export const freshLines = (aircraft: Aircraft, fuelPct: number, switches: Switched = []): Reading => ({
  by: 'lines',
  view: 'side',
  lines: [freshLine('Hung by the nose'), freshLine('Hung by the tail')],
  plusMinusMm: USUAL.lineMm,
  ...whole(aircraft, fuelPct, switches),
});

export const freshLine = (name: string) =>
  ({ name, throughMm: [0, 0, 0], andMm: [0, 0, 0] }) as const satisfies WeighLine;

/** What is tilted to where the list recommends nothing, degrees nose up. */
const USUAL_TILT_DEG = 10;

/** Turned about the main axle with a scale under the nose or tail wheel; level to begin with, and once tilted as far as is best. */
export function freshTilt(aircraft: Aircraft, fuelPct: number, switches: Switched = []): Reading {
  const axles = axlesOf(aircraft);
  const reading = {
    by: 'tilt',
    ...whole(aircraft, fuelPct, switches),
    pivotMm: axles?.mainMm ?? [0, 0, 0],
    otherMm: axles?.otherMm ?? [0, 0, 0],
    tareG: 0,
    resolutionG: USUAL.resolutionG,
    tapeMm: USUAL.tapeMm,
    pitchPlusMinusDeg: USUAL.pitchPlusMinusDeg,
    readings: [{ pitchDeg: 0, grossG: 0 }],
  } as const satisfies Reading;
  const pitchDeg = tiltToTake(aircraft, { fuelPct, switches }, reading)?.pitchDeg ?? USUAL_TILT_DEG;
  return { ...reading, readings: [...reading.readings, { pitchDeg, grossG: 0 }] };
}

/** On two threads, nothing timed yet. */
export const freshSwing = (aircraft: Aircraft, fuelPct: number, switches: Switched = []): Reading => ({
  by: 'swing',
  axis: 'yaw',
  how: 'bifilar',
  ...whole(aircraft, fuelPct, switches),
  apartMm: 0,
  threadMm: 0,
  tapeMm: USUAL.tapeMm,
  amplitudeDeg: USUAL.amplitudeDeg,
  runs: [],
  thumbS: USUAL.thumbS,
});
