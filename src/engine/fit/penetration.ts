import type { Vec3 } from '../geometry/types';
import { cross, dot, normalise, sub } from '../geometry/vec3';
import type { Convex } from './convex';

interface Face {
  readonly corners: readonly [number, number, number];
  readonly outward: Vec3;
  /** Signed distance of its plane from the origin, mm. */
  readonly offsetMm: number;
}

/** The way out of an overlap: a unit direction in which to move the first solid, and how far, mm. */
export interface WayOut {
  readonly direction: Vec3;
  readonly depthMm: number;
}

/** The depth is right to this share of itself, and never too small to clear. */
const share = 1e-3;
const floorMm = 1e-9;
/** More than a touch. */
const sureMm = 1e-6;
const mostSteps = 400;
const mostPoints = 1024;

/**
 * The shortest move that takes one convex solid out of another it overlaps; null when they are apart.
 * The difference a − b is filled from inside with a growing polyhedron until its face nearest the origin
 * lies on the boundary. The move returned always clears: it is measured to a plane that touches a − b.
 * With `yesOrNo` it stops as soon as the polyhedron holds the origin: the move clears but may be too long.
 * G. van den Bergen, Proximity queries and penetration depth computation, Game Developers Conference 2001.
 */
export function penetration(a: Convex, b: Convex, yesOrNo = false): WayOut | null {
  const scratch = new Float64Array(6);
  const reach = a.radiusMm + b.radiusMm;
  let best: WayOut = { direction: [1, 0, 0], depthMm: Number.POSITIVE_INFINITY };
  const furthest = (n: Vec3): Vec3 => {
    a.support(n[0], n[1], n[2], scratch, 0);
    b.support(-n[0], -n[1], -n[2], scratch, 3);
    const point: Vec3 = [
      scratch[0]! - scratch[3]! + reach * n[0],
      scratch[1]! - scratch[4]! + reach * n[1],
      scratch[2]! - scratch[5]! + reach * n[2],
    ];
    const depthMm = dot(point, n);
    if (depthMm < best.depthMm) best = { direction: [-n[0], -n[1], -n[2]], depthMm };
    return point;
  };
  const fill = (seeds: readonly Vec3[]): boolean => {
    const points = firstTetrahedron(furthest, seeds);
    if (points.length < 4) return true;
    let faces = tetrahedronFaces(points);
    for (let step = 0; step < mostSteps && best.depthMm > 0; step += 1) {
      let nearest = faces[0];
      for (const face of faces) if (nearest && face.offsetMm < nearest.offsetMm) nearest = face;
      if (yesOrNo && nearest && nearest.offsetMm > sureMm) return true;
      if (!nearest || best.depthMm - nearest.offsetMm <= share * best.depthMm + floorMm) return true;
      const point = furthest(nearest.outward);
      if (dot(point, nearest.outward) - nearest.offsetMm <= floorMm) return true;
      const grown = growTo(faces, points, point, nearest);
      if (!grown) return false;
      faces = grown;
    }
    return best.depthMm <= 0;
  };
  // Solids that lie symmetrically can leave the polyhedron no sound outline; begun askew it has one.
  if (!fill(axes)) fill(askew);
  return best.depthMm > 0 ? best : null;
}

const axes: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

/** Four directions at angles that no drawing has. */
const askew: readonly Vec3[] = (
  [
    [0.7412, 0.5931, -0.3142],
    [-0.6411, 0.7586, 0.1161],
  ] as const
).flatMap((n) => {
  const u = normalise(n) as Vec3;
  return [u, [-u[0], -u[1], -u[2]] as Vec3];
});

/** Four points of a solid that span a volume; fewer when it has none. */
function firstTetrahedron(furthest: (n: Vec3) => Vec3, directions: readonly Vec3[]): Vec3[] {
  const seeds = directions.map(furthest);
  const first = seeds[0]!;
  const second = mostBy(seeds, (p) => dot(sub(p, first), sub(p, first)));
  const line = normalise(sub(second, first));
  if (!line) return [first];
  const least = axes.reduce((m, n) => (Math.abs(dot(n, line)) < Math.abs(dot(m, line)) ? n : m));
  const side = normalise(cross(line, least))!;
  const other = cross(line, side);
  const round = [side, other].flatMap((n) => [furthest(n), furthest([-n[0], -n[1], -n[2]])]);
  const offLine = (p: Vec3) => {
    const across = cross(sub(p, first), line);
    return dot(across, across);
  };
  const third = mostBy([...seeds, ...round], offLine);
  const up = normalise(cross(line, sub(third, first)));
  if (!up) return [first, second];
  const ends = [furthest(up), furthest([-up[0], -up[1], -up[2]])];
  const height = (p: Vec3) => Math.abs(dot(sub(p, first), up));
  const fourth = mostBy(ends, height);
  return height(fourth) > 1e-9 ? [first, second, third, fourth] : [first, second, third];
}

const mostBy = (points: readonly Vec3[], measure: (p: Vec3) => number): Vec3 =>
  points.reduce((most, p) => (measure(p) > measure(most) ? p : most));

function tetrahedronFaces(points: readonly Vec3[]): Face[] {
  const [a, b, c, d] = points as readonly [Vec3, Vec3, Vec3, Vec3];
  const turned = dot(cross(sub(b, a), sub(c, a)), sub(d, a)) > 0;
  const [i, j] = turned ? [1, 2] : [2, 1];
  const triples = [
    [0, j, i],
    [0, i, 3],
    [i, j, 3],
    [j, 0, 3],
  ] as const;
  return triples.flatMap((corners) => faceOf(points, corners) ?? []);
}

function faceOf(points: readonly Vec3[], corners: Face['corners']): Face | null {
  const [a, b, c] = [points[corners[0]]!, points[corners[1]]!, points[corners[2]]!];
  const outward = normalise(cross(sub(b, a), sub(c, a)));
  return outward && { corners, outward, offsetMm: dot(a, outward) };
}

/** The hull of the polyhedron and one more point; null when rounding leaves no sound outline to join it to. */
function growTo(faces: readonly Face[], points: Vec3[], point: Vec3, from: Face): Face[] | null {
  const kept: Face[] = [];
  const rim = new Map<number, readonly [number, number]>();
  for (const face of faces) {
    if (face !== from && dot(point, face.outward) - face.offsetMm <= floorMm) {
      kept.push(face);
      continue;
    }
    const [i, j, k] = face.corners;
    for (const [p, q] of [
      [i, j],
      [j, k],
      [k, i],
    ] as const) {
      if (!rim.delete(q * mostPoints + p)) rim.set(p * mostPoints + q, [p, q]);
    }
  }
  const apex = points.push(point) - 1;
  for (const [p, q] of rim.values()) {
    const face = faceOf(points, [p, q, apex]);
    if (!face) return null;
    kept.push(face);
  }
  return kept;
}
