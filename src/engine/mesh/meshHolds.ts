import type { Vec3 } from '../geometry/types';
import type { Mesh } from '../mass/types';
import { perObject } from '../memory/memory';

/** Triangles by the cells that they cover seen along x, so that a line along x meets few. */
interface Columns {
  readonly low: readonly [y: number, z: number];
  readonly cellMm: readonly [y: number, z: number];
  readonly across: number;
  readonly cells: readonly (readonly number[])[];
}

/** Cells to a side: about as many cells as triangles, within reason. */
const sideOf = (triangles: number): number => Math.min(256, Math.max(1, Math.round(Math.sqrt(triangles))));

const columnsOf = perObject(({ verticesMm, triangles }: Mesh): Columns => {
  let [y0, z0, y1, z1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [, y, z] of verticesMm) {
    y0 = Math.min(y0, y);
    z0 = Math.min(z0, z);
    y1 = Math.max(y1, y);
    z1 = Math.max(z1, z);
  }
  const across = sideOf(triangles.length);
  const cellMm = [(y1 - y0) / across || 1, (z1 - z0) / across || 1] as const;
  const cells: number[][] = Array.from({ length: across * across }, () => []);
  const cellOf = (value: number, low: number, size: number) =>
    Math.min(across - 1, Math.max(0, Math.floor((value - low) / size)));
  for (const [t, [a, b, c]] of triangles.entries()) {
    const [p, q, r] = [verticesMm[a]!, verticesMm[b]!, verticesMm[c]!];
    const row = (pick: (...v: number[]) => number) => cellOf(pick(p[1], q[1], r[1]), y0, cellMm[0]);
    const column = (pick: (...v: number[]) => number) => cellOf(pick(p[2], q[2], r[2]), z0, cellMm[1]);
    for (let i = row(Math.min); i <= row(Math.max); i += 1) {
      for (let j = column(Math.min); j <= column(Math.max); j += 1) cells[i * across + j]!.push(t);
    }
  }
  return { low: [y0, z0], cellMm, across, cells };
});

/**
 * True when a point lies inside a closed mesh, in the mesh's own frame, mm. A line from it forward along x is counted
 * through the skin. An edge is always weighed from the same end, so that the line slips between no two triangles.
 */
export function meshHolds(mesh: Mesh, [x, y, z]: Vec3): boolean {
  const { low, cellMm, across, cells } = columnsOf(mesh);
  const [i, j] = [Math.floor((y - low[0]) / cellMm[0]), Math.floor((z - low[1]) / cellMm[1])];
  // A point on the far rim falls in the last cell.
  const row = i === across && y <= low[0] + across * cellMm[0] ? across - 1 : i;
  const column = j === across && z <= low[1] + across * cellMm[1] ? across - 1 : j;
  if (row < 0 || column < 0 || row >= across || column >= across) return false;
  let winding = 0;
  for (const t of cells[row * across + column]!) {
    const [a, b, c] = mesh.triangles[t]!;
    winding += crossing(mesh.verticesMm[a]!, mesh.verticesMm[b]!, mesh.verticesMm[c]!, x, y, z);
  }
  return winding !== 0;
}

/** +1 or −1 where the line from a point forward (x falling) goes through a triangle, 0 where it passes it by. */
function crossing(a: Vec3, b: Vec3, c: Vec3, x: number, y: number, z: number): number {
  const way = half(a, b, y, z) + half(b, c, y, z) + half(c, a, y, z);
  if (way === 0) return 0;
  // Where the triangle's plane stands over (y, z).
  const [uy, uz, vy, vz] = [b[1] - a[1], b[2] - a[2], c[1] - a[1], c[2] - a[2]];
  const area = uy * vz - uz * vy;
  const [py, pz] = [y - a[1], z - a[2]];
  const s = (py * vz - pz * vy) / area;
  const t = (uy * pz - uz * py) / area;
  return a[0] + s * (b[0] - a[0]) + t * (c[0] - a[0]) < x ? Math.sign(way) : 0;
}

/** Half a turn about the point's line, by the crossing rule: an edge counts where it passes the line's z upward or downward. */
function half(p: Vec3, q: Vec3, y: number, z: number): number {
  if (p[2] > z === q[2] > z) return 0;
  const up = q[2] > p[2];
  const [from, to] = up ? [p, q] : [q, p];
  const atY = from[1] + ((z - from[2]) / (to[2] - from[2])) * (to[1] - from[1]);
  return atY > y ? (up ? 1 : -1) : 0;
}
