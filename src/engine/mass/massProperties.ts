import { poseRotation, turn } from '../geometry/rotation';
import type { Mat3, Pose, Vec3 } from '../geometry/types';
import { mirrorY } from '../geometry/vec3';
import {
  tensorAdd,
  tensorMirror,
  tensorOfPoint,
  tensorRotate,
  tensorScale,
  tensorSubtract,
  zeroTensor,
} from './tensor';
import type { MassProperties, Tensor } from './types';

/**
 * The algebra of mass properties. Every tensor is about the body's own CG, so a body's place enters
 * only as a difference of two CGs and a far-away datum costs no digits.
 * Masses are zero or more: `massFault` says what is wrong with one that is not.
 */

export const noMass: MassProperties = { massG: 0, cgMm: null, inertiaAboutCgGmm2: zeroTensor };

/** A mass with no size. No mass at all when `massG` is 0. */
export const massPoint = (massG: number, positionMm: Vec3): MassProperties =>
  massG === 0 ? noMass : { massG, cgMm: positionMm, inertiaAboutCgGmm2: zeroTensor };

/** Two bodies as one; their tensors must be along the same axes. */
export function massAdd(a: MassProperties, b: MassProperties): MassProperties {
  if (a.cgMm === null) return b;
  if (b.cgMm === null) return a;
  const massG = a.massG + b.massG;
  const share = b.massG / massG;
  const apart: Vec3 = [b.cgMm[0] - a.cgMm[0], b.cgMm[1] - a.cgMm[1], b.cgMm[2] - a.cgMm[2]];
  return {
    massG,
    cgMm: [a.cgMm[0] + share * apart[0], a.cgMm[1] + share * apart[1], a.cgMm[2] + share * apart[2]],
    inertiaAboutCgGmm2: tensorAdd(
      tensorAdd(a.inertiaAboutCgGmm2, b.inertiaAboutCgGmm2),
      tensorOfPoint(a.massG * share, apart),
    ),
  };
}

/** All the bodies as one. Two passes, the CG first, so nothing cancels; an empty list is no mass. */
export function massSum(bodies: Iterable<MassProperties>): MassProperties {
  const list = Array.isArray(bodies) ? (bodies as readonly MassProperties[]) : [...bodies];
  let near: Vec3 | null = null;
  let massG = 0;
  let mx = 0;
  let my = 0;
  let mz = 0;
  for (const { massG: m, cgMm } of list) {
    if (cgMm === null) continue;
    near ??= cgMm;
    massG += m;
    mx += m * (cgMm[0] - near[0]);
    my += m * (cgMm[1] - near[1]);
    mz += m * (cgMm[2] - near[2]);
  }
  if (near === null) return noMass;
  const cgMm: Vec3 = [near[0] + mx / massG, near[1] + my / massG, near[2] + mz / massG];
  return { massG, cgMm, inertiaAboutCgGmm2: inertiaSum(list, cgMm) };
}

/** Inertia of all the bodies about one point, g·mm². */
function inertiaSum(bodies: readonly MassProperties[], aboutMm: Vec3): Tensor {
  let xx = 0;
  let yy = 0;
  let zz = 0;
  let xy = 0;
  let xz = 0;
  let yz = 0;
  for (const { massG: m, cgMm, inertiaAboutCgGmm2: t } of bodies) {
    if (cgMm === null) continue;
    const x = cgMm[0] - aboutMm[0];
    const y = cgMm[1] - aboutMm[1];
    const z = cgMm[2] - aboutMm[2];
    xx += t.xx + m * (y * y + z * z);
    yy += t.yy + m * (x * x + z * z);
    zz += t.zz + m * (x * x + y * y);
    xy += t.xy - m * x * y;
    xz += t.xz - m * x * z;
    yz += t.yz - m * y * z;
  }
  return { xx, yy, zz, xy, xz, yz };
}

/** Below this share of the total, what `massRemove` leaves is rounding and not a body. */
const leftoverShare = 1e-12;

/**
 * What is left of `total` when `part` is taken out; undoes `massAdd`.
 * Throws when the part weighs more than the total.
 */
export function massRemove(total: MassProperties, part: MassProperties): MassProperties {
  if (part.cgMm === null) return total;
  const massG = total.massG - part.massG;
  if (massG < -leftoverShare * total.massG) {
    throw new Error(`massRemove: a part of ${part.massG} g cannot come out of ${total.massG} g.`);
  }
  if (total.cgMm === null || massG <= leftoverShare * total.massG) return noMass;
  const apart: Vec3 = [
    total.cgMm[0] - part.cgMm[0],
    total.cgMm[1] - part.cgMm[1],
    total.cgMm[2] - part.cgMm[2],
  ];
  const lever = part.massG / massG;
  return {
    massG,
    cgMm: [
      total.cgMm[0] + lever * apart[0],
      total.cgMm[1] + lever * apart[1],
      total.cgMm[2] + lever * apart[2],
    ],
    inertiaAboutCgGmm2: tensorSubtract(
      tensorSubtract(total.inertiaAboutCgGmm2, part.inertiaAboutCgGmm2),
      tensorOfPoint(total.massG * lever, apart),
    ),
  };
}

/** The body carried along by `byMm`. */
export function massMove(body: MassProperties, byMm: Vec3): MassProperties {
  if (body.cgMm === null) return body;
  const [x, y, z] = body.cgMm;
  return { ...body, cgMm: [x + byMm[0], y + byMm[1], z + byMm[2]] };
}

/** The body turned about the origin of its frame. */
export function massTurn(body: MassProperties, rotation: Mat3): MassProperties {
  if (body.cgMm === null) return body;
  return {
    massG: body.massG,
    cgMm: turn(rotation, body.cgMm),
    inertiaAboutCgGmm2: tensorRotate(body.inertiaAboutCgGmm2, rotation),
  };
}

/** A body given in its own frame, in the aircraft's: turned, then set down. */
export const massPlace = (body: MassProperties, pose: Pose): MassProperties =>
  massMove(massTurn(body, poseRotation(pose)), pose.positionMm);

/** The mirror image, y → −y. */
export function massMirror(body: MassProperties): MassProperties {
  if (body.cgMm === null) return body;
  return {
    massG: body.massG,
    cgMm: mirrorY(body.cgMm),
    inertiaAboutCgGmm2: tensorMirror(body.inertiaAboutCgGmm2),
  };
}

/** The same body `factor` times as dense. Throws unless the factor is zero or more. */
export function massScale(body: MassProperties, factor: number): MassProperties {
  if (!(factor >= 0)) throw new Error(`massScale: the factor must be zero or more, not ${factor}.`);
  if (body.cgMm === null || factor === 0) return noMass;
  return {
    massG: body.massG * factor,
    cgMm: body.cgMm,
    inertiaAboutCgGmm2: tensorScale(body.inertiaAboutCgGmm2, factor),
  };
}

/**
 * Inertia about a point other than the CG, g·mm², axes unchanged:
 * I_P = I_CG + m(|d|²·1 − d dᵀ).
 */
export function inertiaAbout(body: MassProperties, pointMm: Vec3): Tensor {
  if (body.cgMm === null) return zeroTensor;
  const [x, y, z] = body.cgMm;
  const offset: Vec3 = [x - pointMm[0], y - pointMm[1], z - pointMm[2]];
  return tensorAdd(body.inertiaAboutCgGmm2, tensorOfPoint(body.massG, offset));
}
