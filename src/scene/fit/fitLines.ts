import type { OrientedBox } from '../../engine/fit/orientedBox';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { add, addScaled, cross, distance, lerp, normalise, scale, sub } from '../../engine/geometry/vec3';
import type { Bay } from '../../model/document/types';

/** A gap shorter than this has its leaders outside, mm. */
const SHORT_MM = 16;
const LEADER_MM = 12;
const TICK_MM = 5;

/** A dimension line between two points, as pairs: ticks at both, and leaders beyond them where the gap is short. */
export function dimensionPairs(from: Vec3, to: Vec3): number[] {
  const along = normalise(sub(to, from));
  if (!along) return [...from, ...to];
  const across = normalise(cross(along, Math.abs(along[2]) < 0.8 ? [0, 0, 1] : [0, 1, 0])) ?? [0, 1, 0];
  const upright = cross(along, across);
  const tick = (at: Vec3, way: Vec3) => [...addScaled(at, way, -TICK_MM), ...addScaled(at, way, TICK_MM)];
  const leader = distance(from, to) < SHORT_MM ? LEADER_MM : 0;
  return [
    ...addScaled(from, along, -leader),
    ...addScaled(to, along, leader),
    ...[from, to].flatMap((end) => [...tick(end, across), ...tick(end, upright)]),
  ];
}

/** A line through points, as pairs. */
export const throughPairs = (points: readonly Vec3[]): number[] =>
  points.slice(1).flatMap((to, i) => [...(points[i] ?? to), ...to]);

/** The same in dashes as long as the gaps between them, mm. */
export function dashedPairs(points: readonly Vec3[], dashMm: number): number[] {
  const pairs: number[] = [];
  for (const [i, to] of points.slice(1).entries()) {
    const from = points[i] ?? to;
    const longMm = distance(from, to);
    const count = Math.max(1, Math.round(longMm / dashMm / 2));
    for (let k = 0; k < count; k += 1) {
      pairs.push(...lerp(from, to, k / count), ...lerp(from, to, (k + 0.5) / count));
    }
  }
  return pairs;
}

/** The edges of a box about the origin as pairs of corners, each −1 or 1 along each axis. */
const EDGES: readonly (readonly [Vec3, Vec3])[] = [0, 1, 2].flatMap((along) =>
  [-1, 1].flatMap((u) =>
    [-1, 1].map((v) => {
      const corner = (end: number): Vec3 => {
        const signs = [0, 0, 0];
        signs[along] = end;
        signs[(along + 1) % 3] = u;
        signs[(along + 2) % 3] = v;
        return [signs[0] ?? 0, signs[1] ?? 0, signs[2] ?? 0];
      };
      return [corner(-1), corner(1)] as const;
    }),
  ),
);

/** A bay's twelve edges in dashes. */
export function bayPairs(bay: Bay, dashMm: number): number[] {
  const half: Vec3 = [bay.lengthMm / 2, bay.widthMm / 2, bay.heightMm / 2];
  const at = (corner: Vec3) =>
    pointToAircraft(bay, [corner[0] * half[0], corner[1] * half[1], corner[2] * half[2]]);
  return EDGES.flatMap(([from, to]) => dashedPairs([at(from), at(to)], dashMm));
}

/** The twelve edges of a box however it is turned. */
export function boxPairs({ centreMm, rotation: r, halfMm: h }: OrientedBox): number[] {
  const axes: readonly Vec3[] = [
    [r[0], r[3], r[6]],
    [r[1], r[4], r[7]],
    [r[2], r[5], r[8]],
  ];
  const at = (corner: Vec3) =>
    axes.reduce<Vec3>((p, axis, i) => add(p, scale(axis, (corner[i] ?? 0) * (h[i] ?? 0))), centreMm);
  return EDGES.flatMap(([from, to]) => [...at(from), ...at(to)]);
}
