import { propagate, standardUncertainty } from '../../engine/balance/uncertainty';
import type { Vec3 } from '../../engine/geometry/types';
import { lastPerObject } from '../../engine/memory/memory';
import { airSwungAlong } from '../../engine/weigh/airSwungAlong';
import { type Figure, type Refusal, refusal } from '../../engine/weigh/figure';
import { inertiaFromSwing, type Swing } from '../../engine/weigh/inertiaFromSwing';
import { periodOfRuns } from '../../engine/weigh/swingPeriod';
import type { Aircraft, WeighIn } from '../document/types';
import { airStrips } from './airStrips';
import { wholeFigure } from './byStand';
import type { OfReading } from './measured';
import { thoughtAt } from './thought';

export type SwungAxis = OfReading<'swing'>['axis'];

/** A swing held against the list as it stands now. Inertia about the axis through the CG, g·mm². */
export interface Swung {
  readonly ok: true;
  readonly axis: SwungAxis;
  readonly periodS: Figure;
  /** As it swung, with the air taken off where that was asked for. */
  readonly swung: Figure;
  readonly listed: Figure;
  /** What the air that swings along is estimated to add. */
  readonly air: Figure;
  readonly lessAir: boolean;
  readonly agrees: boolean;
  readonly confidence: number;
}

const axes: Readonly<
  Record<SwungAxis, { readonly index: 0 | 1 | 2; readonly unit: Vec3; readonly up: Vec3 }>
> = {
  roll: { index: 0, unit: [1, 0, 0], up: [0, 0, 1] },
  pitch: { index: 1, unit: [0, 1, 0], up: [0, 0, 1] },
  // As a pendulum about its vertical axis it hangs nose up.
  yaw: { index: 2, unit: [0, 0, 1], up: [-1, 0, 0] },
};

const CONFIDENCE = 0.95;
/** So many sigmas hold that share of normal errors. */
const AT_95 = 1.959964;

/** The same answer again for the same aircraft and weigh-in. */
export const swungAgainst = (aircraft: Aircraft, weighIn: WeighIn): Swung | Refusal =>
  lastSwung(weighIn, aircraft);

const lastSwung = lastPerObject((weighIn: WeighIn, aircraft: Aircraft) => swungOf(aircraft, weighIn));

function swungOf(aircraft: Aircraft, weighIn: WeighIn): Swung | Refusal {
  const { reading } = weighIn;
  if (reading.by !== 'swing') return refusal('Nothing was swung.');
  const expected = propagate(thoughtAt(aircraft, weighIn).suspects);
  if (!expected?.mass.cgMm)
    return refusal('Nothing aboard has a mass yet, so there is nothing to hold it against.');
  const massG = wholeFigure(reading.massG, reading.massPlusMinusG);
  if (!massG) return refusal('The mass of the whole aircraft is needed: weigh it first.');
  const periodS = periodOfRuns(reading.runs, standardUncertainty(reading.thumbS));
  if (!periodS.ok) return periodS;
  const { axis, lessAir = false } = reading;
  const { index, unit, up } = axes[axis];
  const [x, y, z] = expected.mass.cgMm;
  const arm = reading.how === 'compound' ? reading.apartMm : 0;
  const about: Vec3 = [x + arm * up[0], y + arm * up[1], z + arm * up[2]];
  const air = airSwungAlong(airStrips(aircraft), unit, about);
  const answer = inertiaFromSwing(swingOf(reading, massG, periodS), {
    amplitudeDeg: reading.amplitudeDeg,
    ...(lessAir && { airGmm2: air }),
  });
  if (!answer.ok) return answer;
  const { xx, yy, zz } = expected.mass.inertiaAboutCgGmm2;
  const listed = { value: [xx, yy, zz][index]!, sigma: expected.inertiaSigmaGmm2[index] };
  const swung = answer.inertiaGmm2;
  return {
    ok: true,
    axis,
    periodS,
    swung,
    listed,
    air,
    lessAir,
    agrees: Math.abs(swung.value - listed.value) <= AT_95 * Math.hypot(swung.sigma, listed.sigma),
    confidence: CONFIDENCE,
  };
}

function swingOf(reading: OfReading<'swing'>, massG: Figure, periodS: Figure): Swing {
  const { how, apartMm, threadMm, tapeMm, plate } = reading;
  const taped = (value: number): Figure => ({ value, sigma: standardUncertainty(tapeMm) });
  switch (how) {
    case 'bifilar':
      return { kind: how, massG, periodS, spacingMm: taped(apartMm), lengthMm: taped(threadMm) };
    case 'trifilar':
      return {
        kind: how,
        massG,
        periodS,
        radiusMm: taped(apartMm),
        lengthMm: taped(threadMm),
        ...(plate && {
          plate: {
            massG: { value: plate.massG, sigma: massG.sigma },
            periodS: { value: plate.periodS, sigma: periodS.sigma },
          },
        }),
      };
    case 'compound':
      return { kind: how, massG, periodS, armMm: taped(apartMm) };
  }
}
