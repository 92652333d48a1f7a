import { stepsUp } from '../../engine/geometry/wholeSteps';
import type { Figure } from '../../engine/weigh/figure';
import type { RecommendedTilt } from '../../engine/weigh/heightFromTilt';
import { formatAngle, formatInertia, formatNumber } from '../units';
import type { OfReading } from '../weigh/measured';
import type { Swung, SwungAxis } from '../weigh/swung';
import { lengthUp, type Say } from './say';

const axisNames: Readonly<Record<SwungAxis, string>> = { roll: 'roll', pitch: 'pitch', yaw: 'yaw' };
export const axisOfSwing = (axis: SwungAxis): string => axisNames[axis];

/** Inertia is shown to this, g·mm²: 0.0001 kg·m². */
const STEP_GMM2 = 1e5;

/** "0.4120 ± 0.0130 kg·m²", two standard uncertainties, rounded up; without its unit for a row that names it. */
export const inertiaFigure = ({ value, sigma }: Figure, unit = true): string =>
  `${formatInertia(value, { unit: false })} ± ${formatInertia(stepsUp((2 * sigma) / STEP_GMM2) * STEP_GMM2, { unit })}`;

const percent = (share: number) => `${formatNumber(Math.max(1, stepsUp(Math.abs(share) * 100)), 0)} %`;

/** One sentence: whether swing and list agree, and by how much. */
export function swungSentence({ axis, swung, listed, agrees, confidence }: Swung): string {
  const share = (swung.value - listed.value) / listed.value;
  const at = `${Math.round(confidence * 100)} %`;
  return agrees
    ? `Swing and list agree in ${axis} within ${percent(share)} at ${at} confidence.`
    : `Swing and list do not agree in ${axis} at ${at} confidence: swung, it is ${percent(share)} ${share > 0 ? 'more' : 'less'}.`;
}

/** Short, for the log. */
export const swungFact = ({ axis, swung, listed, agrees }: Swung): string => {
  const share = (swung.value - listed.value) / listed.value;
  return agrees
    ? `${axis} agrees within ${percent(share)}`
    : `${axis} ${percent(share)} ${share > 0 ? 'more' : 'less'} than listed`;
};

/** What the air has to do with it. */
export function airWords({ air, swung, lessAir }: Swung): string {
  const share = percent(air.value / (swung.value + (lessAir ? air.value : 0)));
  return lessAir
    ? `${inertiaFigure(air)} of it, ${share}, was air that swung along: an estimate from the wings and tails as flat plates, and taken off.`
    : `A light, large model swings air along with it: by an estimate from its wings and tails ${inertiaFigure(air)}, ${share} of what was swung. It has not been taken off.`;
}

/** What no swing sees, or the list does not know. */
export const LIST_SHAPES =
  'The ± of the list counts its masses and places; each part is taken as evenly filled, which its inertia need not be.';

/** "Period 2.003 s ± 0.008 s, the median of 5 runs". */
export function periodWords({ value, sigma }: Figure, runs: number): string {
  const plusMinus = formatNumber(stepsUp(2000 * sigma) / 1000, 3);
  const of = runs === 1 ? 'of 1 run; three or more show a slip' : `the median of ${runs} runs`;
  return `Period ${formatNumber(value, 3)} s ± ${plusMinus} s, ${of}.`;
}

/** How it must hang for the sums to hold. */
export function hangingHint(how: OfReading<'swing'>['how'], axis: SwungAxis): string {
  const way = uprightWays[axis];
  switch (how) {
    case 'bifilar':
      return `Hang it ${way}, on two threads of one length, upright and side by side, the CG midway between them. Turn it about the upright through the CG and let it swing back and forth.`;
    case 'trifilar':
      return `Set it ${way} on a plate that hangs on three threads at one distance from the middle, the CG over the middle. Turn the plate and let it swing.`;
    case 'compound':
      return `Hang it ${pendulumWays[axis]} from a level axis that it swings about like a pendulum, and measure from that axis to the CG. A short arm, about as long as the aircraft is spread out, tells most; a long one drowns its own inertia.`;
  }
}

const uprightWays: Readonly<Record<SwungAxis, string>> = {
  roll: 'nose up',
  pitch: 'on its side, one wing tip up',
  yaw: 'level, as it stands',
};
const pendulumWays: Readonly<Record<SwungAxis, string>> = {
  roll: 'level, the axis fore and aft above it,',
  pitch: 'level, the axis across above it,',
  yaw: 'nose up, with its own vertical level and along the axis,',
};

/** The angle to take, and what it would give. */
export function tiltWords(tilt: RecommendedTilt | null, say: Say): string {
  if (!tilt) {
    return 'By the list no tilt of 5° or more keeps weight on this scale: put the scale under the other axle.';
  }
  const { pitchDeg, sigmaMm } = tilt;
  return `Besides level, ${formatAngle(Math.abs(pitchDeg))} nose ${pitchDeg > 0 ? 'up' : 'down'} is the tilt to take: by the list it gives the height to ± ${lengthUp(2 * sigmaMm, say)}.`;
}
