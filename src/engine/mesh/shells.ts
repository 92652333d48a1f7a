import type { Triple } from '../geometry/triangulate';
import type { Vec3 } from '../geometry/types';
import { meshProperties } from '../mass/mesh';
import type { Mesh } from '../mass/types';
import { type Edge, edgesOf, runsBack, triangleOf } from './edges';
import { liesIn } from './liesIn';

/** A closed surface parted into its shells, each turned the right way round. */
export interface Shells {
  readonly mesh: Mesh;
  readonly count: number;
  /** Shells that lie in another and are taken as hollows in it. */
  readonly hollows: number;
  /** Triangles that had to be turned round. */
  readonly turned: number;
}

/** Why the surface is no solid's, and where, mm. */
export interface ShellFault {
  readonly sentence: string;
  readonly atMm: readonly Vec3[];
}

/**
 * Parts a surface without open edges into shells that hang together at edges with two triangles, so that two that only
 * touch are two, turns the triangles of each one way round, and each shell outwards, or inwards where it lies in another.
 */
export function shellsOf(verticesMm: readonly Vec3[], triangles: readonly Triple[]): Shells | ShellFault {
  const edges = edgesOf(triangles, verticesMm.length);
  const parted = partedShells(triangles, edges);
  if ('clash' in parted) return faultAt(parted.clash, verticesMm, ONE_SIDED);
  const crowded = crowdedEdge(edges, parted);
  if (crowded) return faultAt(crowded, verticesMm, CROWDED);
  return outwardShells(shellMeshes(verticesMm, triangles, parted));
}

const ONE_SIDED = 'The surface has one side only, as a Möbius band has, so it has no inside';
const CROWDED = 'More than two triangles of one shell meet along an edge, so it does not say what is inside';

const faultAt = ({ from, to }: Edge, verticesMm: readonly Vec3[], sentence: string): ShellFault => ({
  sentence,
  atMm: [verticesMm[from]!, verticesMm[to]!],
});

interface Parted {
  /** The shell of each triangle, counted from 0. */
  readonly shell: Int32Array;
  readonly count: number;
  /** 1 for a triangle that runs the other way round than its shell. */
  readonly flipped: Uint8Array;
}

/** Walks each shell over its plain edges; `clash` is an edge where it comes back turned round. */
function partedShells(
  triangles: readonly Triple[],
  edges: readonly Edge[],
): Parted | { readonly clash: Edge } {
  const beside: { edge: Edge; other: number; turned: boolean }[][] = triangles.map(() => []);
  for (const edge of edges) {
    if (edge.sides.length !== 2) continue;
    const [a, b] = edge.sides as readonly [number, number];
    const turned = runsBack(a) === runsBack(b);
    beside[triangleOf(a)]!.push({ edge, other: triangleOf(b), turned });
    beside[triangleOf(b)]!.push({ edge, other: triangleOf(a), turned });
  }
  const shell = new Int32Array(triangles.length).fill(-1);
  const flipped = new Uint8Array(triangles.length);
  let count = 0;
  for (let first = 0; first < triangles.length; first += 1) {
    if (shell[first]! >= 0) continue;
    shell[first] = count;
    const waiting = [first];
    for (let t = waiting.pop(); t !== undefined; t = waiting.pop()) {
      for (const { edge, other, turned } of beside[t]!) {
        const wanted = flipped[t]! ^ (turned ? 1 : 0);
        if (shell[other]! < 0) {
          shell[other] = count;
          flipped[other] = wanted;
          waiting.push(other);
        } else if (flipped[other] !== wanted) return { clash: edge };
      }
    }
    count += 1;
  }
  return { shell, count, flipped };
}

/** An edge at which a shell has other than one triangle each way; null when there is none. */
function crowdedEdge(edges: readonly Edge[], { shell, flipped }: Parted): Edge | null {
  for (const edge of edges) {
    if (edge.sides.length === 2) continue;
    const ways = new Map<number, number[]>();
    for (const side of edge.sides) {
      const t = triangleOf(side);
      const back = runsBack(side) !== (flipped[t] === 1);
      ways.set(shell[t]!, [...(ways.get(shell[t]!) ?? []), back ? -1 : 1]);
    }
    for (const way of ways.values()) if (way.length !== 2 || way[0]! + way[1]! !== 0) return edge;
  }
  return null;
}

interface Shell extends Mesh {
  /** How many of its triangles run otherwise than in the file. */
  readonly flips: number;
}

/** Each shell with corners of its own. */
function shellMeshes(
  verticesMm: readonly Vec3[],
  triangles: readonly Triple[],
  { shell, count, flipped }: Parted,
): Shell[] {
  const made = Array.from({ length: count }, () => ({
    verticesMm: [] as Vec3[],
    triangles: [] as Triple[],
    index: new Map<number, number>(),
    flips: 0,
  }));
  for (const [t, triangle] of triangles.entries()) {
    const into = made[shell[t]!]!;
    const [a, b, c] = triangle.map((corner) => {
      const before = into.index.get(corner);
      if (before !== undefined) return before;
      into.index.set(corner, into.verticesMm.length);
      return into.verticesMm.push(verticesMm[corner]!) - 1;
    }) as [number, number, number];
    into.triangles.push(flipped[t] ? [a, c, b] : [a, b, c]);
    into.flips += flipped[t]!;
  }
  return made;
}

function outwardShells(shells: readonly Shell[]): Shells {
  const verticesMm: Vec3[] = [];
  const triangles: Triple[] = [];
  let [hollows, turned] = [0, 0];
  for (const shell of shells) {
    const inwards = meshProperties(shell).volumeMm3 < 0;
    const around = shells.filter((other) => other !== shell && liesIn(shell, inwards ? -1 : 1, other)).length;
    const hollow = around % 2 === 1;
    const turn = hollow !== inwards;
    if (hollow) hollows += 1;
    turned += turn ? shell.triangles.length - shell.flips : shell.flips;
    const from = verticesMm.length;
    for (const vertex of shell.verticesMm) verticesMm.push(vertex);
    for (const [a, b, c] of shell.triangles) {
      triangles.push(turn ? [from + a, from + c, from + b] : [from + a, from + b, from + c]);
    }
  }
  return { mesh: { verticesMm, triangles }, count: shells.length, hollows, turned };
}
