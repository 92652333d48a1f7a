import type { Triple } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';

/** An edge from its lower corner to its higher, and the triangles at it. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  /** Twice a triangle's number, and one more where it runs along the edge from `to` to `from`. */
  readonly sides: readonly number[];
}

/** Every edge of some triangles with all that meet at it. */
export function edgesOf(triangles: readonly Triple[], corners: number): readonly Edge[] {
  const edges = new Map<number, { from: number; to: number; sides: number[] }>();
  for (const [t, [a, b, c]] of triangles.entries()) {
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const [from, to] = p < q ? [p, q] : [q, p];
      const side = 2 * t + (p < q ? 0 : 1);
      const edge = edges.get(from * corners + to);
      if (edge) edge.sides.push(side);
      else edges.set(from * corners + to, { from, to, sides: [side] });
    }
  }
  return [...edges.values()];
}

export const triangleOf = (side: number): number => side >> 1;
export const runsBack = (side: number): boolean => side % 2 === 1;

/** The rims of a surface's holes as lines through its corners, mm; a rim that closes ends where it began. The longest first. */
export function rims(open: readonly Edge[], verticesMm: readonly Vec3[]): Vec3[][] {
  const ways = new Map<number, Set<number>>();
  const put = (from: number, to: number) => {
    const onward = ways.get(from);
    if (onward) onward.add(to);
    else ways.set(from, new Set([to]));
  };
  for (const { from, to } of open) {
    put(from, to);
    put(to, from);
  }
  const take = (from: number): number | null => {
    const to = ways.get(from)?.values().next().value;
    if (to === undefined) return null;
    ways.get(from)?.delete(to);
    ways.get(to)?.delete(from);
    return to;
  };
  const lines: Vec3[][] = [];
  // Ends of lines first, so that a line that does not close is walked from end to end.
  const starts = [...ways.keys()].sort((a, b) => ways.get(a)!.size - ways.get(b)!.size);
  for (const start of starts) {
    for (let next = take(start); next !== null; next = take(start)) {
      const line = [verticesMm[start]!];
      for (let at: number | null = next; at !== null; at = at === start ? null : take(at)) {
        line.push(verticesMm[at]!);
      }
      lines.push(line);
    }
  }
  return lines.sort((a, b) => b.length - a.length);
}
