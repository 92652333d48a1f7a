import type { Mat3, Vec3 } from '../geometry/types';

/** A box standing anyhow: its centre, the rotation from its own axes to the aircraft's, and half its size, mm. */
export interface OrientedBox {
  readonly centreMm: Vec3;
  readonly rotation: Mat3;
  readonly halfMm: Vec3;
}

const column = (m: Mat3, i: 0 | 1 | 2): Vec3 => [m[i] ?? 0, m[i + 3] ?? 0, m[i + 6] ?? 0];
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * How two boxes overlap: the shortest way to move the first clear of the second, mm, or null when they are
 * apart or only touch. Separating axes: 3 + 3 face normals and 9 edge pairs.
 * Source: S. Gottschalk, M. C. Lin, D. Manocha, OBBTree, SIGGRAPH 1996.
 */
export function boxOverlap(a: OrientedBox, b: OrientedBox): Vec3 | null {
  const axesA = [column(a.rotation, 0), column(a.rotation, 1), column(a.rotation, 2)];
  const axesB = [column(b.rotation, 0), column(b.rotation, 1), column(b.rotation, 2)];
  const apart: Vec3 = [
    a.centreMm[0] - b.centreMm[0],
    a.centreMm[1] - b.centreMm[1],
    a.centreMm[2] - b.centreMm[2],
  ];
  let least = Number.POSITIVE_INFINITY;
  let way: Vec3 = [0, 0, 0];
  const candidates = [...axesA, ...axesB, ...axesA.flatMap((p) => axesB.map((q) => cross(p, q)))];
  for (const raw of candidates) {
    const length = Math.sqrt(dot(raw, raw));
    if (length < 1e-9) continue;
    const axis: Vec3 = [raw[0] / length, raw[1] / length, raw[2] / length];
    let reach = 0;
    for (let i = 0; i < 3; i++) {
      reach += (a.halfMm[i] ?? 0) * Math.abs(dot(axis, axesA[i] as Vec3));
      reach += (b.halfMm[i] ?? 0) * Math.abs(dot(axis, axesB[i] as Vec3));
    }
    const distance = dot(apart, axis);
    const depth = reach - Math.abs(distance);
    if (depth <= 1e-9) return null;
    if (depth < least - 1e-12) {
      least = depth;
      const side = distance < 0 ? -1 : 1;
      way = [axis[0] * depth * side, axis[1] * depth * side, axis[2] * depth * side];
    }
  }
  return way;
}
