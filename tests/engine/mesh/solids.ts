import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Mesh } from '../../../src/engine/mass/types';

/** Known solids as meshes, written out here so that they do not lean on the engine's own facets. mm. */

/** A brick from one corner to the other. */
export function brick([ax, ay, az]: Vec3, [bx, by, bz]: Vec3): Mesh {
  const verticesMm: Vec3[] = [
    [ax, ay, az],
    [bx, ay, az],
    [bx, by, az],
    [ax, by, az],
    [ax, ay, bz],
    [bx, ay, bz],
    [bx, by, bz],
    [ax, by, bz],
  ];
  const quads = [
    [0, 3, 2, 1],
    [4, 5, 6, 7],
    [0, 1, 5, 4],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 0, 4, 7],
  ] as const;
  return {
    verticesMm,
    triangles: quads.flatMap(([a, b, c, d]) => [[a, b, c] as const, [a, c, d] as const]),
  };
}

/** A grid of points bent round: `u` and `v` both close on themselves. */
function closedGrid(u: number, v: number, at: (u: number, v: number) => Vec3): Mesh {
  const verticesMm: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  for (let i = 0; i < u; i += 1) {
    for (let j = 0; j < v; j += 1) {
      verticesMm.push(at((2 * Math.PI * i) / u, (2 * Math.PI * j) / v));
      const [p, q] = [i * v + j, ((i + 1) % u) * v + j];
      const [r, s] = [((i + 1) % u) * v + ((j + 1) % v), i * v + ((j + 1) % v)];
      triangles.push([p, r, q], [p, s, r]);
    }
  }
  return { verticesMm, triangles };
}

/** A ring about x: its middle line `ring` from the axis, its tube `tube` thick in radius. */
export const torus = (ring: number, tube: number, u: number, v: number): Mesh =>
  closedGrid(u, v, (a, b) => {
    const out = ring + tube * Math.cos(b);
    return [tube * Math.sin(b), out * Math.sin(a), out * Math.cos(a)];
  });

/** A ball about the origin from rings about x. */
export function ball(radius: number, rings: number, around: number): Mesh {
  const verticesMm: Vec3[] = [[-radius, 0, 0]];
  const triangles: [number, number, number][] = [];
  for (let i = 1; i < rings; i += 1) {
    const polar = (Math.PI * i) / rings;
    for (let j = 0; j < around; j += 1) {
      const turn = (2 * Math.PI * j) / around;
      verticesMm.push([
        -radius * Math.cos(polar),
        radius * Math.sin(polar) * Math.cos(turn),
        radius * Math.sin(polar) * Math.sin(turn),
      ]);
    }
  }
  const last = verticesMm.push([radius, 0, 0]) - 1;
  const at = (i: number, j: number) => 1 + (i - 1) * around + (j % around);
  for (let j = 0; j < around; j += 1) {
    triangles.push([0, at(1, j + 1), at(1, j)], [last, at(rings - 1, j), at(rings - 1, j + 1)]);
    for (let i = 1; i < rings - 1; i += 1) {
      triangles.push([at(i, j), at(i, j + 1), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i + 1, j)]);
    }
  }
  return { verticesMm, triangles };
}

/** A drum about x. */
export function drum(length: number, radius: number, around: number): Mesh {
  const verticesMm: Vec3[] = [
    [-length / 2, 0, 0],
    [length / 2, 0, 0],
  ];
  const triangles: [number, number, number][] = [];
  for (let j = 0; j < around; j += 1) {
    const turn = (2 * Math.PI * j) / around;
    const [y, z] = [radius * Math.cos(turn), radius * Math.sin(turn)];
    verticesMm.push([-length / 2, y, z], [length / 2, y, z]);
    const [a, b] = [2 + 2 * j, 3 + 2 * j];
    const [c, d] = [2 + 2 * ((j + 1) % around), 3 + 2 * ((j + 1) % around)];
    triangles.push([0, c, a], [1, b, d], [a, c, d], [a, d, b]);
  }
  return { verticesMm, triangles };
}

/** The triangles one by one, nine figures each, as a file of loose triangles has them. */
export const loose = ({ verticesMm, triangles }: Mesh): number[] =>
  triangles.flatMap((triangle) => triangle.flatMap((i) => [...verticesMm[i]!]));

export const moved = (mesh: Mesh, by: Vec3): Mesh => ({
  ...mesh,
  verticesMm: mesh.verticesMm.map(([x, y, z]) => [x + by[0], y + by[1], z + by[2]]),
});
export const insideOut = (mesh: Mesh): Mesh => ({
  ...mesh,
  triangles: mesh.triangles.map(([a, b, c]) => [a, c, b]),
});
