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

export const LEVEL_ATTITUDE: BenchAttitude = { pitchDeg: 0, rollDeg: 0, forwardG: 0 };

/** Attitudes that a flight passes through; the launch is one off a bungee. */
export const ATTITUDES = [
  { id: 'level', name: 'Level', ...LEVEL_ATTITUDE },
  { id: 'climb', name: '30° climb', pitchDeg: 30, rollDeg: 0, forwardG: 0 },
  { id: 'dive', name: '45° dive', pitchDeg: -45, rollDeg: 0, forwardG: 0 },
  { id: 'knife-edge', name: 'Knife edge', pitchDeg: 0, rollDeg: 90, forwardG: 0 },
  { id: 'launch', name: 'Launch, 3 g', pitchDeg: 10, rollDeg: 0, forwardG: 3 },
] as const;

export const isLevel = ({ pitchDeg, rollDeg, forwardG }: BenchAttitude): boolean =>
  pitchDeg === 0 && rollDeg === 0 && forwardG === 0;

/** The name of an attitude, or which way the nose points. */
export function attitudeName({ pitchDeg, rollDeg, forwardG }: BenchAttitude): string {
  const known = ATTITUDES.find(
    (one) => one.pitchDeg === pitchDeg && one.rollDeg === rollDeg && one.forwardG === forwardG,
  );
  return known?.name ?? (pitchDeg < 0 ? `${-pitchDeg}° dive` : `${pitchDeg}° climb`);
}

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
