import type { Vec3 } from './types';

/** Small vector algebra. Points in mm; every function returns a new vector. */

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const scale = (a: Vec3, factor: number): Vec3 => [a[0] * factor, a[1] * factor, a[2] * factor];

/** a + factor × b. */
export const addScaled = (a: Vec3, b: Vec3, factor: number): Vec3 => [
  a[0] + b[0] * factor,
  a[1] + b[1] * factor,
  a[2] + b[2] * factor,
];

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);

export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** The unit vector along `a`; null when `a` has no direction (zero, or not a number). */
export function normalise(a: Vec3): Vec3 | null {
  const size = length(a);
  return size > 0 && Number.isFinite(size) ? scale(a, 1 / size) : null;
}

/** The point a share `t` of the way from `a` to `b`. */
export const lerp = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** Left for right: y → −y. */
export const mirrorY = (a: Vec3): Vec3 => [a[0], -a[1], a[2]];
