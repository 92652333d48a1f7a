import type { Vec3 } from '../geometry/types';
import { cross } from '../geometry/vec3';
import type { MassProperties, Tensor } from './types';

/** Principal moments in rising order, each with its unit axis; the axes are right-handed. */
export interface Principal {
  readonly momentsGmm2: readonly [number, number, number];
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

/**
 * Principal moments and axes of a symmetric tensor, by cyclic Jacobi turns
 * (Golub & Van Loan, Matrix Computations, 8.5). The first two axes point so that their largest
 * component is positive.
 */
export function principalMoments(t: Tensor): Principal {
  const a = [
    [t.xx, t.xy, t.xz],
    [t.xy, t.yy, t.yz],
    [t.xz, t.yz, t.zz],
  ];
  const axes = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  for (let sweep = 0; sweep < 12 && offDiagonal(a) > 0; sweep += 1) {
    jacobiTurn(a, axes, 0, 1);
    jacobiTurn(a, axes, 0, 2);
    jacobiTurn(a, axes, 1, 2);
  }
  const order = [0, 1, 2].sort((i, j) => a[i]![i]! - a[j]![j]!);
  const [i, j, k] = order as [number, number, number];
  const first = pointed(axes[i] as unknown as Vec3);
  const second = pointed(axes[j] as unknown as Vec3);
  return { momentsGmm2: [a[i]![i]!, a[j]![j]!, a[k]![k]!], axes: [first, second, cross(first, second)] };
}

const offDiagonal = (a: number[][]): number =>
  Math.abs(a[0]![1]!) + Math.abs(a[0]![2]!) + Math.abs(a[1]![2]!);

/** Zeroes a[p][q] by a turn in the plane of axes p and q; rows of `axes` are the axes so far. */
function jacobiTurn(a: number[][], axes: number[][], p: number, q: number): void {
  const ap = a[p]!;
  const aq = a[q]!;
  const off = ap[q]!;
  if (off === 0) return;
  const spread = Math.abs(ap[p]!) + Math.abs(aq[q]!);
  if (Math.abs(off) < 1e-18 * spread) {
    ap[q] = 0;
    aq[p] = 0;
    return;
  }
  const theta = (aq[q]! - ap[p]!) / (2 * off);
  const tan = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const cos = 1 / Math.hypot(tan, 1);
  const sin = tan * cos;
  const r = 3 - p - q;
  const ar = a[r]!;
  const rp = ar[p]!;
  const rq = ar[q]!;
  ap[p] = ap[p]! - tan * off;
  aq[q] = aq[q]! + tan * off;
  ap[q] = 0;
  aq[p] = 0;
  ar[p] = cos * rp - sin * rq;
  ap[r] = ar[p]!;
  ar[q] = sin * rp + cos * rq;
  aq[r] = ar[q]!;
  for (let n = 0; n < 3; n += 1) {
    const vp = axes[p]![n]!;
    const vq = axes[q]![n]!;
    axes[p]![n] = cos * vp - sin * vq;
    axes[q]![n] = sin * vp + cos * vq;
  }
}

function pointed([x, y, z]: Vec3): Vec3 {
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  const backward = Math.abs(x) === most ? x < 0 : Math.abs(y) === most ? y < 0 : z < 0;
  return backward ? [-x, -y, -z] : [x, y, z];
}

/** Radii of gyration about the CG in roll, pitch and yaw (axes x, y, z), mm; null for no mass. */
export function radiiOfGyration({ massG, inertiaAboutCgGmm2: t }: MassProperties): Vec3 | null {
  if (massG === 0) return null;
  return [Math.sqrt(t.xx / massG), Math.sqrt(t.yy / massG), Math.sqrt(t.zz / massG)];
}

/**
 * Why no body can have this tensor, or null. Each principal moment must be zero or more and at most
 * the sum of the other two, since Ixx + Iyy − Izz = 2∫z² dm. Allows one part in 1e9 for rounding.
 */
export function triangleInequalityFault(t: Tensor): string | null {
  const [a, b, c] = principalMoments(t).momentsGmm2;
  if (!Number.isFinite(a + b + c)) return 'An inertia is not a number.';
  const slack = 1e-9 * Math.max(Math.abs(a), Math.abs(c));
  if (a < -slack) return `A principal moment of inertia is negative: ${a}.`;
  if (c > a + b + slack) {
    return `The largest principal moment, ${c}, is more than the sum of the other two, ${a} and ${b}.`;
  }
  return null;
}

/** What is wrong with a body's mass properties, or null. */
export function massFault({ massG, cgMm, inertiaAboutCgGmm2 }: MassProperties): string | null {
  if (!Number.isFinite(massG)) return `The mass must be a number of grams, not ${massG}.`;
  if (massG < 0) return `The mass must be zero or more, not ${massG} g.`;
  if ((massG === 0) !== (cgMm === null)) {
    return cgMm === null ? `A body of ${massG} g must have a CG.` : 'A body of no mass cannot have a CG.';
  }
  if (cgMm !== null && !cgMm.every(Number.isFinite)) return `The CG must be three numbers, not ${cgMm}.`;
  return triangleInequalityFault(inertiaAboutCgGmm2);
}
