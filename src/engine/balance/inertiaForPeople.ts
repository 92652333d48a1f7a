import type { Vec3 } from '../geometry/types';
import {
  type Principal,
  principalMoments,
  radiiOfGyration,
  triangleInequalityFault,
} from '../mass/principal';
import type { MassProperties, Tensor } from '../mass/types';

/** A uniform box with the mass, CG and inertia of a body. */
export interface EquivalentBox {
  readonly centreMm: Vec3;
  /** Along the axes, longest first, mm. */
  readonly sidesMm: Vec3;
  /** Unit axes, right-handed, aircraft frame. */
  readonly axes: Principal['axes'];
}

/** Inertia in terms that a person can picture, aircraft frame. */
export interface InertiaForPeople {
  readonly principal: Principal;
  /** Null when no box can have such inertia; `warning` says why. */
  readonly box: EquivalentBox | null;
  /** Radii of gyration about the CG in roll, pitch and yaw, mm; null when a moment is negative. */
  readonly radiiMm: Vec3 | null;
  readonly tiltDeg: number;
  /** Why no body can have this inertia, in a sentence; null when one can. */
  readonly warning: string | null;
}

/** Box, principal axes, radii of gyration and tilt of a body; null for no mass. */
export function inertiaForPeople(mass: MassProperties): InertiaForPeople | null {
  if (mass.cgMm === null) return null;
  const { xx, yy, zz } = mass.inertiaAboutCgGmm2;
  return {
    principal: principalMoments(mass.inertiaAboutCgGmm2),
    box: equivalentBox(mass),
    radiiMm: Math.min(xx, yy, zz) >= 0 ? radiiOfGyration(mass) : null,
    tiltDeg: tiltDeg(mass.inertiaAboutCgGmm2),
    warning: triangleInequalityFault(mass.inertiaAboutCgGmm2),
  };
}

/**
 * The uniform box of the same mass, CG and inertia. From A = m(b² + c²)/12 and so on round (Beer & Johnston, Statics, table
 * of mass moments), a² = 6(B + C − A)/m. Null for no mass and for inertia that no body can have.
 */
export function equivalentBox({
  massG,
  cgMm,
  inertiaAboutCgGmm2: tensor,
}: MassProperties): EquivalentBox | null {
  if (cgMm === null || triangleInequalityFault(tensor) !== null) return null;
  const {
    momentsGmm2: [a, b, c],
    axes,
  } = principalMoments(tensor);
  const side = (along: number, other: number, another: number) =>
    Math.sqrt(Math.max(0, (6 * (other + another - along)) / massG));
  return { centreMm: cgMm, sidesMm: [side(a, b, c), side(b, c, a), side(c, a, b)], axes };
}

/**
 * How far the long principal axis is turned out of the x axis in the x–z plane, degrees, over −90 up to 90: positive when
 * it rises towards the tail (nose low, tail high). tan 2ε = 2P/(Izz − Ixx) with P = ∫xz dm (SFTE Flight Test Engineering
 * Reference Handbook, 7.4.6); our tensor element is xz = −P. Of the two axes in the plane it is the one of least moment. It is
 * a principal axis of the body where xy and yz vanish, as in a symmetric aircraft.
 */
export const tiltDeg = ({ xx, zz, xz }: Tensor): number =>
  (Math.atan2(0 - 2 * xz, zz - xx) * 180) / Math.PI / 2;
