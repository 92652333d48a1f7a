import manifoldModule from 'manifold-3d';
import { meshProperties, meshSurface } from '../../src/engine/mass/mesh';
import { soundMesh } from '../../src/engine/mesh/soundMesh';
import { loose, torus } from '../engine/mesh/solids';
import { type BenchRow, compare } from './measure';

/** A ring of 100 000 triangles. */
const mesh = torus(60, 18, 500, 100);

/** Volume and area of the same triangles; and a mesh made of loose ones, checked. */
export default async function bench(): Promise<BenchRow[]> {
  const wasm = await manifoldModule();
  wasm.setup();
  const theirMesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(mesh.verticesMm.flat()),
    triVerts: Uint32Array.from(mesh.triangles.flat()),
  });
  const theirs = new wasm.Manifold(theirMesh);
  const figures = loose(mesh);
  const rows = [
    compare({
      name: `volume and area of ${mesh.triangles.length} triangles (ours with centroid and inertia)`,
      against: 'manifold-3d, mesh to volume and area',
      ours: () => meshProperties(mesh).volumeMm3 + meshSurface(mesh).areaMm2,
      // It keeps what it has worked out, so each turn begins with the triangles, as ours does.
      theirs: () => {
        const fresh = new wasm.Manifold(theirMesh);
        const sum = fresh.volume() + fresh.surfaceArea();
        fresh.delete();
        return sum;
      },
      batches: 9,
    }),
    compare({
      name: 'the same 100 000 triangles, loose: joined, checked, self-cuts found',
      against: 'manifold-3d, merged and checked (tells no self-cuts)',
      ours: () => soundMesh(figures, 100_000).ok,
      theirs: () => {
        const vertProperties = Float32Array.from(figures);
        const triVerts = Uint32Array.from({ length: figures.length / 3 }, (_, i) => i);
        const joined = new wasm.Mesh({ numProp: 3, vertProperties, triVerts });
        joined.merge();
        const made = new wasm.Manifold(joined);
        const sum = made.volume();
        made.delete();
        return sum;
      },
      batches: 3,
    }),
  ];
  theirs.delete();
  return rows;
}
