import createManifold, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, expect, test } from 'vitest';
import { liquidInShape } from '../../src/engine/liquid/liquidInShape';
import { wettedMesh } from '../../src/engine/liquid/wettedMesh';
import { meshProperties } from '../../src/engine/mass/mesh';
import type { MeshShape, Shape } from '../../src/engine/mass/shapes';
import { tessellate } from '../../src/engine/mass/tessellate';
import type { Mesh } from '../../src/engine/mass/types';
import { volumeProperties } from '../../src/engine/mass/volumeProperties';
import { CURVED_NAMES, randomDown, randomStream, TANK_NAMES, TANKS } from '../engine/liquid/tankShapes';
import { seed } from '../seed';

/** manifold-3d takes and gives 32-bit floats: seven digits, of which the sums over many facets cost one. */
const SINGLE = 2e-6;
const CUTS = 6;

let toplevel: ManifoldToplevel;
beforeAll(async () => {
  toplevel = await createManifold();
  toplevel.setup();
});

/** The part of a mesh with down · p ≥ offset, cut by manifold-3d. */
function trimmed(mesh: Mesh, down: readonly number[], offset: number) {
  const solid = new toplevel.Manifold(
    new toplevel.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.verticesMm.flat()),
      triVerts: Uint32Array.from(mesh.triangles.flat()),
    }),
  );
  const cut = solid.trimByPlane([down[0]!, down[1]!, down[2]!], offset);
  const { vertProperties, triVerts, numProp } = cut.getMesh();
  const verticesMm = Array.from({ length: vertProperties.length / numProp }, (_, i) => {
    const at = i * numProp;
    return [vertProperties[at]!, vertProperties[at + 1]!, vertProperties[at + 2]!] as const;
  });
  const triangles = Array.from(
    { length: triVerts.length / 3 },
    (_, i) => [triVerts[3 * i]!, triVerts[3 * i + 1]!, triVerts[3 * i + 2]!] as const,
  );
  const volumeMm3 = cut.volume();
  cut.delete();
  solid.delete();
  return { volumeMm3, mesh: { verticesMm, triangles } };
}

test.each(TANK_NAMES)(
  'a %s in facets, filled at random attitudes, matches the same solid trimmed',
  (name) => {
    const random = randomStream(seed + TANK_NAMES.indexOf(name));
    const shape: MeshShape = { kind: 'mesh', ...tessellate(TANKS[name]!, { segments: 48 }) };
    const full = volumeProperties(shape).volumeMm3;
    for (let k = 0; k < CUTS; k++) {
      const down = randomDown(random);
      const asked = (0.02 + 0.96 * random()) * full;
      const { volumeProperties: ours, surfaceOffsetMm } = liquidInShape(shape, asked, down);
      const theirs = trimmed(shape, down, surfaceOffsetMm!);
      expect(Math.abs(theirs.volumeMm3 - asked)).toBeLessThan(SINGLE * full);
      const cut = meshProperties(theirs.mesh);
      ours.centroidMm!.forEach((v, i) => {
        expect(Math.abs(v - cut.centroidMm![i]!)).toBeLessThan(1e-3);
      });
      const drawn = meshProperties(wettedMesh(shape, down, surfaceOffsetMm!));
      expect(Math.abs(drawn.volumeMm3 / asked - 1)).toBeLessThan(1e-9);
    }
  },
);

test.each(CURVED_NAMES)('the facets of a %s close in on the true one as they are made finer', (name) => {
  const random = randomStream(seed + 1000 + CURVED_NAMES.indexOf(name));
  const shape: Shape = TANKS[name]!;
  const full = volumeProperties(shape).volumeMm3;
  const fine = tessellate(shape, { segments: 144 });
  const coarse = tessellate(shape, { segments: 36 });
  const errors = [0, 0];
  for (let k = 0; k < 4; k++) {
    const down = randomDown(random);
    const asked = (0.1 + 0.8 * random()) * full;
    const { surfaceOffsetMm } = liquidInShape(shape, asked, down);
    [coarse, fine].forEach((mesh, i) => {
      errors[i]! += Math.abs(trimmed(mesh, down, surfaceOffsetMm!).volumeMm3 / asked - 1) / 4;
    });
  }
  expect(errors[0]!).toBeLessThan(0.05);
  expect(errors[1]!).toBeLessThan(errors[0]! / 8 + SINGLE);
});
