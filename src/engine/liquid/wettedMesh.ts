import { polygonArea } from '../geometry/polygon';
import { triangulate } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';
import { addScaled, cross, dot, normalise } from '../geometry/vec3';
import type { Shape } from '../mass/shapes';
import { tessellate } from '../mass/tessellate';
import type { Mesh } from '../mass/types';
import { unitDown } from './liquidInShape';

/** Straight pieces to a full circle when a shape is drawn. */
const SEGMENTS = 48;

/**
 * The liquid in a shape as a closed mesh for display, in the shape's own frame: the shape in facets, cut where
 * down · p = offsetMm, with the free surface as its lid. Empty when the plane passes below the shape. Where a lid has an
 * island in it (a ring-shaped tank) it covers the island once from above and once from below.
 */
export function wettedMesh(shape: Shape, down: Vec3, offsetMm: number, segments = SEGMENTS): Mesh {
  const unit = unitDown(down);
  const { skin, edges } = cutSkin(tessellate(shape, { segments }), unit, offsetMm);
  const corners = [...skin, ...joinedEdges(edges).flatMap((polygon) => lid(polygon, unit))];
  const verticesMm: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  const indices = new Map<string, number>();
  const number = (p: Vec3): number => {
    const key = p.join(' ');
    let index = indices.get(key);
    if (index === undefined) {
      index = verticesMm.push(p) - 1;
      indices.set(key, index);
    }
    return index;
  };
  for (const [a, b, c] of corners) {
    const triangle: [number, number, number] = [number(a), number(b), number(c)];
    if (new Set(triangle).size === 3) triangles.push(triangle);
  }
  return { verticesMm, triangles };
}

/**
 * The edge of the free surface in a shape, in the shape's own frame: closed polygons, each without its first corner
 * repeated, anticlockwise seen from above. A saddle tank may have two. Empty when the plane misses the shape.
 */
export function surfaceOutline(shape: Shape, down: Vec3, offsetMm: number, segments = SEGMENTS): Vec3[][] {
  const { edges } = cutSkin(tessellate(shape, { segments }), unitDown(down), offsetMm);
  return joinedEdges(edges);
}

type Edge = readonly [from: Vec3, to: Vec3];
type Triangle = readonly [Vec3, Vec3, Vec3];

/** The wet part of a mesh's skin, and the edges that its lid has, run so that the lid faces up. */
function cutSkin(mesh: Mesh, down: Vec3, offsetMm: number): { skin: Triangle[]; edges: Edge[] } {
  const depth = mesh.verticesMm.map((p) => dot(down, p) - offsetMm);
  const points = new Map<number, Vec3>();
  const count = mesh.verticesMm.length;
  // Both triangles at an edge get the very same point, so that the pieces join.
  const crossing = (i: number, j: number): Vec3 => {
    const [a, b] = i < j ? [i, j] : [j, i];
    const key = a * count + b;
    let point = points.get(key);
    if (!point) {
      const from = mesh.verticesMm[a]!;
      const to = mesh.verticesMm[b]!;
      const part = depth[a]! / (depth[a]! - depth[b]!);
      point = [
        from[0] + part * (to[0] - from[0]),
        from[1] + part * (to[1] - from[1]),
        from[2] + part * (to[2] - from[2]),
      ];
      points.set(key, point);
    }
    return point;
  };

  const skin: Triangle[] = [];
  const edges: Edge[] = [];
  for (const triangle of mesh.triangles) {
    const polygon: Vec3[] = [];
    let leaves: Vec3 | null = null;
    let enters: Vec3 | null = null;
    for (let k = 0; k < 3; k++) {
      const i = triangle[k]!;
      const j = triangle[(k + 1) % 3]!;
      const wetI = depth[i]! >= 0;
      const wetJ = depth[j]! >= 0;
      if (wetI) polygon.push(mesh.verticesMm[i]!);
      if (wetI === wetJ) continue;
      const point = crossing(i, j);
      polygon.push(point);
      if (wetI) leaves = point;
      else enters = point;
    }
    for (let k = 2; k < polygon.length; k++) skin.push([polygon[0]!, polygon[k - 1]!, polygon[k]!]);
    if (leaves && enters && leaves !== enters) edges.push([enters, leaves]);
  }
  return { skin, edges };
}

/** Edges strung together into closed polygons. */
function joinedEdges(edges: readonly Edge[]): Vec3[][] {
  const next = new Map<Vec3, Vec3>(edges);
  const polygons: Vec3[][] = [];
  while (next.size > 0) {
    const polygon: Vec3[] = [];
    let point: Vec3 | undefined = next.keys().next().value;
    while (point) {
      const to: Vec3 | undefined = next.get(point);
      if (!to) break;
      next.delete(point);
      polygon.push(point);
      point = to;
    }
    if (polygon.length > 2) polygons.push(polygon);
  }
  return polygons;
}

/** Triangles of one polygon of the free surface, facing up where it runs anticlockwise seen from above. */
function lid(polygon: readonly Vec3[], down: Vec3): Triangle[] {
  const [u, v] = levelAxes(down);
  const flat = polygon.map((p) => [dot(u, p), dot(v, p)] as const);
  const clockwise = polygonArea(flat) < 0;
  const order = clockwise ? polygon.toReversed() : polygon;
  return triangulate(clockwise ? flat.toReversed() : flat).map(
    ([a, b, c]): Triangle =>
      clockwise ? [order[c]!, order[b]!, order[a]!] : [order[a]!, order[b]!, order[c]!],
  );
}

/** Unit vectors u and v across `down` with u × v straight up. */
function levelAxes(down: Vec3): readonly [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(down[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const u = normalise(addScaled(helper, down, -dot(helper, down)))!;
  return [u, cross(u, down)];
}
