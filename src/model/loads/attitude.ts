import type { Vec3 } from '../../engine/geometry/types';
import { downFromAttitude } from '../../engine/liquid/attitude';
import { massSum } from '../../engine/mass/massProperties';
import { type Balance, LEVEL } from '../balance/balance';
import { liquidStatesAt } from '../balance/liquidTable';

/** How the aircraft is held: nose up +, right wing down +, acceleration along its nose in g, forward +. */
export interface BenchAttitude {
  readonly pitchDeg: number;
  readonly rollDeg: number;
  readonly forwardG: number;
}

/** One that has a name of its own. */
interface NamedAttitude extends BenchAttitude {
  readonly id: string;
  readonly name: string;
}

export const LEVEL_ATTITUDE: BenchAttitude = { pitchDeg: 0, rollDeg: 0, forwardG: 0 };

/**
 * Attitudes that a flight passes through; the launch is one off a bungee, the braking one on wheels. The figures are common
 * practice, no source.
 */
export const ATTITUDES = [
  { id: 'level', name: 'Level', ...LEVEL_ATTITUDE },
  { id: 'climb', name: '30° climb', pitchDeg: 30, rollDeg: 0, forwardG: 0 },
  { id: 'dive', name: '45° dive', pitchDeg: -45, rollDeg: 0, forwardG: 0 },
  { id: 'knife-edge', name: 'Knife edge', pitchDeg: 0, rollDeg: 90, forwardG: 0 },
  { id: 'inverted', name: 'Inverted', pitchDeg: 0, rollDeg: 180, forwardG: 0 },
  { id: 'launch', name: 'Launch, 3 g', pitchDeg: 10, rollDeg: 0, forwardG: 3 },
  { id: 'braking', name: 'Braking, 0.5 g', pitchDeg: 0, rollDeg: 0, forwardG: -0.5 },
] as const satisfies readonly NamedAttitude[];

export const isLevel = ({ pitchDeg, rollDeg, forwardG }: BenchAttitude): boolean =>
  pitchDeg === 0 && rollDeg === 0 && forwardG === 0;

/** The attitude of the list that this very one is; undefined when something of it is different. */
export const namedAttitude = ({ pitchDeg, rollDeg, forwardG }: BenchAttitude): NamedAttitude | undefined =>
  ATTITUDES.find(
    (attitude) =>
      attitude.pitchDeg === pitchDeg && attitude.rollDeg === rollDeg && attitude.forwardG === forwardG,
  );

/** What an attitude is called: its name, or all that is applied: "5° climb, inverted, 3 g forward". */
export function attitudeName(attitude: BenchAttitude): string {
  const named = namedAttitude(attitude);
  if (named) return named.name;
  const { pitchDeg, rollDeg, forwardG } = attitude;
  const pitch = pitchDeg === 0 ? '' : `${figure(pitchDeg)}° ${pitchDeg < 0 ? 'dive' : 'climb'}`;
  const along = forwardG === 0 ? '' : `${figure(forwardG)} g ${forwardG < 0 ? 'braking' : 'forward'}`;
  const words = [pitch, rollWords(rollDeg), along].filter(Boolean).join(', ');
  if (pitch === '' && rollDeg === 0) return `Level, ${words}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function rollWords(rollDeg: number): string {
  const size = Math.abs(rollDeg);
  if (size === 0) return '';
  if (size === 180) return 'inverted';
  if (size === 90) return 'knife edge';
  return `${figure(rollDeg)}° ${rollDeg < 0 ? 'left' : 'right'} bank`;
}

/** A figure without its sign, to a tenth. */
const figure = (value: number) => String(Math.round(Math.abs(value) * 10) / 10);

/** Apparent down in the aircraft's frame; level at rest is always the very same vector. */
export function downOf(attitude: BenchAttitude): Vec3 {
  return isLevel(attitude) ? LEVEL : downFromAttitude({ ...attitude, sideG: 0 });
}

/** One end of the CG's wandering, and the attitude that causes it. */
export interface AttitudeEnd {
  readonly mm: number;
  readonly attitude: string;
}

/** How far the CG wanders along each axis, with the fuel shown, over the attitudes of a flight. */
export interface AttitudeTravel {
  readonly station: { readonly least: AttitudeEnd; readonly most: AttitudeEnd };
  readonly buttline: { readonly least: AttitudeEnd; readonly most: AttitudeEnd };
}

const downs = ATTITUDES.map((attitude) => ({ name: attitude.name, down: downOf(attitude) }));

/** Null without a CG; both ends the same where there is no liquid. */
export function attitudeTravel({ bodies, liquid, remainingMl, usableMl }: Balance): AttitudeTravel | null {
  const fixed = massSum(bodies.map(({ mass }) => mass));
  const { plumbing } = liquid;
  const fraction = usableMl > 0 ? remainingMl / usableMl : 0;
  const ends = downs.flatMap(({ name, down }) => {
    const wet = plumbing ? liquidStatesAt(plumbing, fraction, down).map(({ mass }) => mass) : [];
    const { cgMm } = massSum([fixed, ...wet]);
    return cgMm ? [{ name, cgMm }] : [];
  });
  const [first] = ends;
  if (!first) return null;
  const along = (axis: 0 | 1) => {
    const end = (way: 1 | -1): AttitudeEnd => {
      const best = ends.reduce((a, b) => (way * b.cgMm[axis] > way * a.cgMm[axis] ? b : a), first);
      return { mm: best.cgMm[axis], attitude: best.name };
    };
    return { least: end(-1), most: end(1) };
  };
  return { station: along(0), buttline: along(1) };
}
