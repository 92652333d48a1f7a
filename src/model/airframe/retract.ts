import { cosDeg, sinDeg } from '../../engine/geometry/angle';
import type { Vec3 } from '../../engine/geometry/types';
import { add, cross, dot, normalise, scale, sub } from '../../engine/geometry/vec3';
import { perObject } from '../../engine/memory/memory';
import type { Leg } from '../document/types';

/**
 * The leg as it lies when it is up: axle and spindle turned about the hinge line through its top. A leg that
 * does not retract comes back as it is, and an unchanged one as the very same object.
 */
export const raisedLeg = perObject((leg: Leg): Leg => {
  const axis = leg.retract && normalise(leg.retract.axis);
  if (!leg.retract || !axis) return leg;
  const { angleDeg } = leg.retract;
  return {
    ...leg,
    axleMm: add(leg.topMm, turnAbout(axis, angleDeg, sub(leg.axleMm, leg.topMm))),
    spindle: turnAbout(axis, angleDeg, leg.spindle ?? [0, 1, 0]),
  };
});

/** A vector turned about a unit axis, right-handed: Rodrigues, v cos θ + (k × v) sin θ + k (k·v)(1 − cos θ). */
function turnAbout(axis: Vec3, angleDeg: number, v: Vec3): Vec3 {
  const [sin, cos] = [sinDeg(angleDeg), cosDeg(angleDeg)];
  const along = add(scale(v, cos), scale(cross(axis, v), sin));
  return add(along, scale(axis, dot(axis, v) * (1 - cos)));
}

/** Where a leg goes when it swings up, in words, and the hinge line that does it at a positive angle. */
export const SWINGS: readonly { readonly way: Swing; readonly axis: Vec3 }[] = [
  { way: 'forward', axis: [0, 1, 0] },
  { way: 'aft', axis: [0, -1, 0] },
  { way: 'inward', axis: [-1, 0, 0] },
  { way: 'outward', axis: [1, 0, 0] },
];

export type Swing = 'forward' | 'aft' | 'inward' | 'outward';

/** Which way a leg retracts: one of the four, `askew` about any other hinge line, `fixed` when it does not. */
export function swingOf({ retract }: Leg): Swing | 'askew' | 'fixed' {
  if (!retract) return 'fixed';
  const axis = normalise(retract.axis);
  return SWINGS.find((swing) => axis && dot(swing.axis, axis) > 1 - 1e-9)?.way ?? 'askew';
}
