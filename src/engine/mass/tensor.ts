import type { Mat3, Vec3 } from '../geometry/types';
import type { Tensor } from './types';

/** Symmetric tensors. Products are tensor elements: xy = −∫xy dm. */

export const zeroTensor: Tensor = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };

export const diagonalTensor = (xx: number, yy: number, zz: number): Tensor => ({
  xx,
  yy,
  zz,
  xy: 0,
  xz: 0,
  yz: 0,
});

export const tensorAdd = (a: Tensor, b: Tensor): Tensor => ({
  xx: a.xx + b.xx,
  yy: a.yy + b.yy,
  zz: a.zz + b.zz,
  xy: a.xy + b.xy,
  xz: a.xz + b.xz,
  yz: a.yz + b.yz,
});

export const tensorSubtract = (a: Tensor, b: Tensor): Tensor => ({
  xx: a.xx - b.xx,
  yy: a.yy - b.yy,
  zz: a.zz - b.zz,
  xy: a.xy - b.xy,
  xz: a.xz - b.xz,
  yz: a.yz - b.yz,
});

export const tensorScale = (t: Tensor, factor: number): Tensor => ({
  xx: t.xx * factor,
  yy: t.yy * factor,
  zz: t.zz * factor,
  xy: t.xy * factor,
  xz: t.xz * factor,
  yz: t.yz * factor,
});

/** The inertia tensor from the plain moments ∫xx dm, ∫yy dm, …, ∫yz dm. */
export const tensorFromSecondMoments = (
  xx: number,
  yy: number,
  zz: number,
  xy: number,
  xz: number,
  yz: number,
): Tensor => ({ xx: yy + zz, yy: xx + zz, zz: xx + yy, xy: -xy, xz: -xz, yz: -yz });

/** A point mass's inertia about a point `offsetMm` away: m(|d|²·1 − d dᵀ), the parallel-axis term. */
export function tensorOfPoint(massG: number, [x, y, z]: Vec3): Tensor {
  return tensorFromSecondMoments(
    massG * x * x,
    massG * y * y,
    massG * z * z,
    massG * x * y,
    massG * x * z,
    massG * y * z,
  );
}

/** The tensor of a body turned by `r`: R T Rᵀ. */
export function tensorRotate(t: Tensor, r: Mat3): Tensor {
  const [a, b, c, d, e, f, g, h, i] = r;
  const ax = a * t.xx + b * t.xy + c * t.xz;
  const ay = a * t.xy + b * t.yy + c * t.yz;
  const az = a * t.xz + b * t.yz + c * t.zz;
  const dx = d * t.xx + e * t.xy + f * t.xz;
  const dy = d * t.xy + e * t.yy + f * t.yz;
  const dz = d * t.xz + e * t.yz + f * t.zz;
  const gx = g * t.xx + h * t.xy + i * t.xz;
  const gy = g * t.xy + h * t.yy + i * t.yz;
  const gz = g * t.xz + h * t.yz + i * t.zz;
  return {
    xx: ax * a + ay * b + az * c,
    yy: dx * d + dy * e + dz * f,
    zz: gx * g + gy * h + gz * i,
    xy: ax * d + ay * e + az * f,
    xz: ax * g + ay * h + az * i,
    yz: dx * g + dy * h + dz * i,
  };
}

/** The tensor of the mirror image (y → −y): the products with one y in them change sign. */
export const tensorMirror = (t: Tensor): Tensor => ({ ...t, xy: -t.xy, yz: -t.yz });
