import type { Vec3 } from '../geometry/types';
import { lerp } from '../geometry/vec3';
import { around } from '../mass/shapeBounds';
import type { Mesh } from '../mass/types';
import { meshHolds } from '../mesh/meshHolds';

/** The most pieces that a mesh is covered with. */
const mostPieces = 48;
/** A piece is divided while its hull stands off its skin by more than this, mm, or this share of the mesh's size. */
const standOffMm = 0.1;
const standOffShare = 2e-3;

/** A piece of skin: a triangle or what a cell leaves of it, with its outward direction (any length). */
interface Facet {
  readonly corners: readonly Vec3[];
  readonly outward: Vec3;
}

/** What of a solid lies in a box, as the points whose hull covers it. */
interface Cell {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
  readonly facets: readonly Facet[];
  readonly points: readonly Vec3[];
  /** How far the hull of the points reaches out past the plane of a facet, mm: 0 for a convex piece. */
  readonly standOffMm: number;
}

/**
 * A closed mesh covered by convex pieces, each as the points whose hull it is; own frame, mm. Together they hold all of
 * the solid and, in its hollows, somewhat more, so that a clash is never missed and one may be told where a little room is
 * left. The solid is cut by planes across its axes, at each turn the piece that stands off farthest, into at most 48.
 */
export function convexCover(mesh: Mesh): (readonly Vec3[])[] {
  const { minMm, maxMm } = around(mesh.verticesMm);
  const sizeMm = Math.hypot(maxMm[0] - minMm[0], maxMm[1] - minMm[1], maxMm[2] - minMm[2]);
  const enough = Math.max(standOffMm, standOffShare * sizeMm);
  const cells = [cellOf(mesh, minMm, maxMm, facetsOf(mesh))].flatMap((cell) => cell ?? []);
  while (cells.length < mostPieces) {
    const worst = cells.reduce((most, cell) => (cell.standOffMm > most.standOffMm ? cell : most), cells[0]!);
    if (!worst || worst.standOffMm <= enough) break;
    cells.splice(cells.indexOf(worst), 1, ...halves(mesh, worst));
  }
  return cells.map(({ points }) => points);
}

function facetsOf({ verticesMm, triangles }: Mesh): Facet[] {
  return triangles.map(([i, j, k]) => {
    const corners = [verticesMm[i]!, verticesMm[j]!, verticesMm[k]!] as const;
    const [a, b, c] = corners;
    const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
    return { corners, outward: [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] };
  });
}

/** A cell cut in two in the middle of what is in it, across its longest side. */
function halves(mesh: Mesh, { minMm, maxMm, facets, points }: Cell): Cell[] {
  const box = around(points);
  const size = (axis: number) => box.maxMm[axis]! - box.minMm[axis]!;
  const axis = [0, 1, 2].reduce((most, other) => (size(other) > size(most) ? other : most));
  const atMm = (box.minMm[axis]! + box.maxMm[axis]!) / 2;
  const low = facets.flatMap((facet) => clipped(facet, axis, atMm, 1) ?? []);
  const high = facets.flatMap((facet) => clipped(facet, axis, atMm, -1) ?? []);
  const set = (corner: Vec3): Vec3 => corner.map((mm, k) => (k === axis ? atMm : mm)) as unknown as Vec3;
  return [cellOf(mesh, minMm, set(maxMm), low), cellOf(mesh, set(minMm), maxMm, high)].flatMap(
    (cell) => cell ?? [],
  );
}

/** What of a facet lies below a plane across an axis (`side` 1) or above it (−1). Sutherland & Hodgman, 1974. */
function clipped(facet: Facet, axis: number, atMm: number, side: 1 | -1): Facet | null {
  const { corners } = facet;
  const over = (p: Vec3) => side * (p[axis]! - atMm);
  if (corners.every((p) => over(p) <= 0)) return facet;
  const part: Vec3[] = [];
  for (const [i, p] of corners.entries()) {
    const q = corners[(i + 1) % corners.length]!;
    const [up, uq] = [over(p), over(q)];
    if (up <= 0) part.push(p);
    if ((up < 0 && uq > 0) || (up > 0 && uq < 0)) {
      const at = lerp(p, q, up / (up - uq));
      part.push(at.map((mm, k) => (k === axis ? atMm : mm)) as unknown as Vec3);
    }
  }
  return part.length > 0 ? { corners: part, outward: facet.outward } : null;
}

/** The corners of the skin in a cell, and of the cell itself where they lie in the solid; null where nothing does. */
function cellOf(mesh: Mesh, minMm: Vec3, maxMm: Vec3, facets: readonly Facet[]): Cell | null {
  // A corner of the mesh is one and the same object in every triangle at it.
  const points = new Set<Vec3>();
  for (const { corners } of facets) for (const p of corners) points.add(p);
  for (let k = 0; k < 8; k += 1) {
    const corner = [0, 1, 2].map((axis) => (k & (1 << axis) ? maxMm : minMm)[axis]!) as unknown as Vec3;
    if (meshHolds(mesh, corner)) points.add(corner);
  }
  if (points.size === 0) return null;
  const list = [...points];
  return { minMm, maxMm, facets, points: list, standOffMm: standOff(facets, list) };
}

/** So many facets of a cell are looked at, spread over all of them. */
const mostLooked = 160;

function standOff(facets: readonly Facet[], points: readonly Vec3[]): number {
  const every = Math.max(1, Math.ceil(facets.length / mostLooked));
  let most = 0;
  for (let i = 0; i < facets.length; i += every) {
    const { corners, outward } = facets[i]!;
    const size = Math.hypot(...outward);
    if (size === 0) continue;
    const [nx, ny, nz] = [outward[0] / size, outward[1] / size, outward[2] / size];
    const facetAt = corners[0]![0] * nx + corners[0]![1] * ny + corners[0]![2] * nz;
    for (const [x, y, z] of points) most = Math.max(most, x * nx + y * ny + z * nz - facetAt);
  }
  return most;
}
