import createManifold from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { meshProperties, meshSurface } from '../../src/engine/mass/mesh';
import type { Mesh } from '../../src/engine/mass/types';
import { soundMesh } from '../../src/engine/mesh/soundMesh';
import { ball, brick, drum, loose, torus } from '../engine/mesh/solids';

let wasm: Awaited<ReturnType<typeof createManifold>>;
beforeAll(async () => {
  wasm = await createManifold();
  wasm.setup();
});

/** The same triangles as manifold-3d takes them. */
const manifoldOf = ({ verticesMm, triangles }: Mesh) =>
  new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(verticesMm.flat()),
      triVerts: Uint32Array.from(triangles.flat()),
    }),
  );

describe('volume and area against manifold-3d, which keeps corners in single precision', () => {
  test.each([
    ['brick', brick([3, -7, 2], [90, 40, 33])],
    ['drum', drum(90, 25, 40)],
    ['ball', ball(40, 16, 32)],
    ['ring', torus(60, 18, 32, 16)],
  ])('%s', (_name, mesh) => {
    const verdict = soundMesh(loose(mesh), 10_000);
    if (!verdict.ok) throw new Error(verdict.sentence);
    const theirs = manifoldOf(mesh);
    expect(theirs.status()).toBe('NoError');
    expect(meshProperties(verdict.mesh).volumeMm3 / theirs.volume()).toBeCloseTo(1, 4);
    expect(meshSurface(verdict.mesh).areaMm2 / theirs.surfaceArea()).toBeCloseTo(1, 4);
    theirs.delete();
  });

  test('what it refuses as no manifold is refused here too', () => {
    const mesh = torus(60, 18, 12, 8);
    const open = { ...mesh, triangles: mesh.triangles.slice(1) };
    // Its constructor throws where the triangles bound nothing.
    expect(() => manifoldOf(open)).toThrow();
    expect(soundMesh(loose(open), 10_000).ok).toBe(false);
  });
});
