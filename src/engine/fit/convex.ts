import type { Mat3, Vec3 } from '../geometry/types';
import type { LoftSection } from '../mass/shapes';

/** A convex solid in its shape's own frame, mm. */
export type ConvexPiece =
  /** The hull of some points, grown all round by a radius: one point a ball, two a capsule, more a polyhedron. */
  | { readonly kind: 'points'; readonly pointsMm: readonly Vec3[]; readonly radiusMm: number }
  /** The hull of two rounded rectangles across x. */
  | { readonly kind: 'sections'; readonly from: LoftSection; readonly to: LoftSection }
  | { readonly kind: 'ellipsoid'; readonly semiMm: Vec3 };

/**
 * A convex solid where it stands: a core that gives its furthest point in any direction, grown by a
 * radius. Aircraft frame, mm.
 */
export interface Convex {
  readonly radiusMm: number;
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
  /** Writes the core's furthest point along (x, y, z), which need not be a unit vector, to `out[at…at + 2]`. */
  support(x: number, y: number, z: number, out: Float64Array, at: number): void;
}

type Support = Convex['support'];

/** Sets a piece down: turned by `rotation`, then moved to `positionMm`. */
export function placeConvex(piece: ConvexPiece, rotation: Mat3, positionMm: Vec3): Convex {
  const radiusMm = piece.kind === 'points' ? piece.radiusMm : 0;
  const support = placedSupport(piece, rotation, positionMm);
  return { radiusMm, ...boundsOf(support, radiusMm), support };
}

/** A polyhedron (or polygon, or line) by its corners in the aircraft's frame. */
export function convexOfPoints(pointsMm: readonly Vec3[]): Convex {
  const support = pointSupport(listed(pointsMm));
  return { radiusMm: 0, ...boundsOf(support, 0), support };
}

/** The same solid carried along by `byMm`. */
export function movedConvex(convex: Convex, [dx, dy, dz]: Vec3): Convex {
  const { minMm, maxMm } = convex;
  return {
    radiusMm: convex.radiusMm,
    minMm: [minMm[0] + dx, minMm[1] + dy, minMm[2] + dz],
    maxMm: [maxMm[0] + dx, maxMm[1] + dy, maxMm[2] + dz],
    support: (x, y, z, out, at) => {
      convex.support(x, y, z, out, at);
      out[at]! += dx;
      out[at + 1]! += dy;
      out[at + 2]! += dz;
    },
  };
}

function boundsOf(support: Support, radiusMm: number): { readonly minMm: Vec3; readonly maxMm: Vec3 } {
  const p = new Float64Array(3);
  const reach = (x: number, y: number, z: number) => {
    support(x, y, z, p, 0);
    return p[0]! * Math.abs(x) + p[1]! * Math.abs(y) + p[2]! * Math.abs(z) + (x + y + z) * radiusMm;
  };
  return {
    minMm: [reach(-1, 0, 0), reach(0, -1, 0), reach(0, 0, -1)],
    maxMm: [reach(1, 0, 0), reach(0, 1, 0), reach(0, 0, 1)],
  };
}

function placedSupport(piece: ConvexPiece, r: Mat3, t: Vec3): Support {
  if (piece.kind === 'points') {
    return pointSupport(placedPoints(piece.pointsMm, r, t));
  }
  const atCentre =
    piece.kind === 'ellipsoid' ? ellipsoidSupport(piece.semiMm) : sectionSupport(piece.from, piece.to);
  return (x, y, z, out, at) => {
    atCentre(
      r[0] * x + r[3] * y + r[6] * z,
      r[1] * x + r[4] * y + r[7] * z,
      r[2] * x + r[5] * y + r[8] * z,
      out,
      at,
    );
    const [px, py, pz] = [out[at]!, out[at + 1]!, out[at + 2]!];
    out[at] = r[0] * px + r[1] * py + r[2] * pz + t[0];
    out[at + 1] = r[3] * px + r[4] * py + r[5] * pz + t[1];
    out[at + 2] = r[6] * px + r[7] * py + r[8] * pz + t[2];
  };
}

/** Points turned and moved, one after the other in a list. A search for a way in asks for it at each of its poses. */
function placedPoints(pointsMm: readonly Vec3[], r: Mat3, t: Vec3): Float64Array {
  const placed = new Float64Array(3 * pointsMm.length);
  for (let i = 0; i < pointsMm.length; i += 1) {
    const [x, y, z] = pointsMm[i]!;
    placed[3 * i] = r[0] * x + r[1] * y + r[2] * z + t[0];
    placed[3 * i + 1] = r[3] * x + r[4] * y + r[5] * z + t[1];
    placed[3 * i + 2] = r[6] * x + r[7] * y + r[8] * z + t[2];
  }
  return placed;
}

function listed(pointsMm: readonly Vec3[]): Float64Array {
  const list = new Float64Array(3 * pointsMm.length);
  for (let i = 0; i < pointsMm.length; i += 1) list.set(pointsMm[i]!, 3 * i);
  return list;
}

const pointSupport = (points: Float64Array): Support =>
  points.length > 3 * manyPoints ? boxedSupport(points) : plainSupport(points);

const plainSupport =
  (points: Float64Array): Support =>
  (x, y, z, out, at) =>
    putPoint(points, farthest(points, 0, points.length, x, y, z, 0), out, at);

/** Of the points that begin from `from` until `end` in the list, the one that lies farther out than that at `best`; else `best`. */
function farthest(
  points: Float64Array,
  from: number,
  end: number,
  x: number,
  y: number,
  z: number,
  best: number,
): number {
  let found = best;
  let most = along(points, best, x, y, z);
  for (let i = from; i < end; i += 3) {
    const reach = along(points, i, x, y, z);
    if (reach > most) {
      most = reach;
      found = i;
    }
  }
  return found;
}

const along = (points: Float64Array, i: number, x: number, y: number, z: number): number =>
  points[i]! * x + points[i + 1]! * y + points[i + 2]! * z;

function putPoint(points: Float64Array, i: number, out: Float64Array, at: number): void {
  out[at] = points[i]!;
  out[at + 1] = points[i + 1]!;
  out[at + 2] = points[i + 2]!;
}

/** From so many points on they are looked through box by box, and so many share a box. */
const manyPoints = 96;
const perBox = 24;

/** The same for many points, neighbours in space being neighbours in the list: a box that reaches no farther is passed by. */
function boxedSupport(points: Float64Array): Support {
  const count = Math.ceil(points.length / (3 * perBox));
  const boxes = new Float64Array(6 * count);
  for (let box = 0; box < count; box += 1) {
    for (let axis = 0; axis < 3; axis += 1) {
      let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      const end = Math.min(points.length, 3 * perBox * (box + 1));
      for (let i = 3 * perBox * box + axis; i < end; i += 3) {
        low = Math.min(low, points[i]!);
        high = Math.max(high, points[i]!);
      }
      boxes[6 * box + axis] = low;
      boxes[6 * box + 3 + axis] = high;
    }
  }
  return (x, y, z, out, at) => {
    let best = 0;
    for (let box = 0; box < count; box += 1) {
      const k = 6 * box;
      const reach =
        x * boxes[x > 0 ? k + 3 : k]! + y * boxes[y > 0 ? k + 4 : k + 1]! + z * boxes[z > 0 ? k + 5 : k + 2]!;
      if (reach <= along(points, best, x, y, z)) continue;
      const end = Math.min(points.length, 3 * perBox * (box + 1));
      best = farthest(points, 3 * perBox * box, end, x, y, z, best);
    }
    putPoint(points, best, out, at);
  };
}

const ellipsoidSupport =
  ([a, b, c]: Vec3): Support =>
  (x, y, z, out, at) => {
    const size = Math.sqrt(a * a * x * x + b * b * y * y + c * c * z * z) || 1;
    out[at] = (a * a * x) / size;
    out[at + 1] = (b * b * y) / size;
    out[at + 2] = (c * c * z) / size;
  };

/** A rounded rectangle is a smaller rectangle grown by a quarter-ellipse round: the two supports add. */
function sectionSupport(from: LoftSection, to: LoftSection): Support {
  const measures = [from, to].map(({ xMm, widthMm, heightMm, centreYMm, centreZMm, roundness }) => {
    const [a, b] = [widthMm / 2, heightMm / 2];
    return {
      x: xMm,
      cy: centreYMm,
      cz: centreZMm,
      flatY: a * (1 - roundness),
      flatZ: b * (1 - roundness),
      roundY: a * roundness,
      roundZ: b * roundness,
    };
  });
  return (x, y, z, out, at) => {
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < 2; i += 1) {
      const s = measures[i]!;
      const round = Math.sqrt((s.roundY * y) ** 2 + (s.roundZ * z) ** 2) || 1;
      const py = s.cy + Math.sign(y) * s.flatY + (s.roundY * s.roundY * y) / round;
      const pz = s.cz + Math.sign(z) * s.flatZ + (s.roundZ * s.roundZ * z) / round;
      const along = s.x * x + py * y + pz * z;
      if (along <= most) continue;
      most = along;
      out[at] = s.x;
      out[at + 1] = py;
      out[at + 2] = pz;
    }
  };
}
