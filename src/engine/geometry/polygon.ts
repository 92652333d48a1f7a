/** A corner of a plane polygon, mm. */
export type Corner = readonly [u: number, v: number];

/** ∫dA, ∫u dA, ∫v dA, ∫u² dA, ∫uv dA, ∫v² dA. Negative throughout for a clockwise polygon. */
export interface PolygonMoments {
  readonly area: number;
  readonly u: number;
  readonly v: number;
  readonly uu: number;
  readonly uv: number;
  readonly vv: number;
}

/**
 * Area moments of a simple polygon about the point (u0, v0), exact (Green's theorem on each edge).
 * Pick a point near the polygon: the terms then do not cancel.
 */
export function polygonMoments(corners: readonly Corner[], u0 = 0, v0 = 0): PolygonMoments {
  let area = 0;
  let u = 0;
  let v = 0;
  let uu = 0;
  let uv = 0;
  let vv = 0;
  let previous = corners.at(-1);
  for (const corner of corners) {
    const a = (previous?.[0] ?? 0) - u0;
    const b = (previous?.[1] ?? 0) - v0;
    const c = corner[0] - u0;
    const d = corner[1] - v0;
    const twice = a * d - c * b;
    area += twice / 2;
    u += ((a + c) * twice) / 6;
    v += ((b + d) * twice) / 6;
    uu += ((a * a + a * c + c * c) * twice) / 12;
    uv += ((a * d + 2 * a * b + 2 * c * d + c * b) * twice) / 24;
    vv += ((b * b + b * d + d * d) * twice) / 12;
    previous = corner;
  }
  return { area, u, v, uu, uv, vv };
}

/** Signed area, + counterclockwise from u to v. */
export const polygonArea = (corners: readonly Corner[]): number =>
  polygonMoments(corners, corners[0]?.[0], corners[0]?.[1]).area;

/** The same polygon, counterclockwise. */
export const counterclockwise = (corners: readonly Corner[]): readonly Corner[] =>
  polygonArea(corners) < 0 ? corners.toReversed() : corners;

/** Twice the signed area of the triangle a, b, c. */
export const turnOf = (a: Corner, b: Corner, c: Corner): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);

/** True when two edges that are not neighbours meet, or a corner is repeated. */
export function polygonCrossesItself(corners: readonly Corner[]): boolean {
  const n = corners.length;
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const a = corners[i]!;
      const b = corners[(i + 1) % n]!;
      const c = corners[j]!;
      const d = corners[(j + 1) % n]!;
      if (j === i + 1 ? foldsBack(a, b, d) : (j + 1) % n === i ? foldsBack(c, a, b) : edgesMeet(a, b, c, d)) {
        return true;
      }
    }
  }
  return false;
}

/** At corner b the outline runs straight back over the edge it came along. */
function foldsBack(a: Corner, b: Corner, c: Corner): boolean {
  const back = (a[0] - b[0]) * (c[0] - b[0]) + (a[1] - b[1]) * (c[1] - b[1]);
  const same = (a[0] === b[0] && a[1] === b[1]) || (c[0] === b[0] && c[1] === b[1]);
  return same || (turnOf(a, b, c) === 0 && back > 0);
}

function edgesMeet(a: Corner, b: Corner, c: Corner, d: Corner): boolean {
  const c1 = Math.sign(turnOf(a, b, c));
  const d1 = Math.sign(turnOf(a, b, d));
  const a1 = Math.sign(turnOf(c, d, a));
  const b1 = Math.sign(turnOf(c, d, b));
  if (c1 * d1 < 0 && a1 * b1 < 0) return true;
  const on = (p: Corner, q: Corner, r: Corner) =>
    Math.min(p[0], q[0]) <= r[0] &&
    r[0] <= Math.max(p[0], q[0]) &&
    Math.min(p[1], q[1]) <= r[1] &&
    r[1] <= Math.max(p[1], q[1]);
  return (
    (c1 === 0 && on(a, b, c)) ||
    (d1 === 0 && on(a, b, d)) ||
    (a1 === 0 && on(c, d, a)) ||
    (b1 === 0 && on(c, d, b))
  );
}
