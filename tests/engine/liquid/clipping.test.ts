import { describe, expect, test } from 'vitest';
import { distance } from '../../../src/engine/geometry/vec3';
import { liquidInShape } from '../../../src/engine/liquid/liquidInShape';
import type { MeshShape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { seed } from '../../seed';
import { CURVED_NAMES, FLAT_NAMES, randomDown, randomStream, TANK_NAMES, TANKS } from './tankShapes';

const ENTRIES = ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const;

/** How far the same share of the facetted shape differs: centroid, mm, and inertia, by V · (100 mm)². */
function apart(name: string, segments: number, share: number, down: readonly [number, number, number]) {
  const shape = TANKS[name]!;
  const mesh: MeshShape = { kind: 'mesh', ...tessellate(shape, { segments }) };
  const trueFull = volumeProperties(shape).volumeMm3;
  const meshFull = volumeProperties(mesh).volumeMm3;
  const a = liquidInShape(shape, share * trueFull, down).volumeProperties;
  const b = liquidInShape(mesh, share * meshFull, down).volumeProperties;
  const inertia = ENTRIES.map((e) => Math.abs(a.inertiaAboutCentroidMm5[e] - b.inertiaAboutCentroidMm5[e]));
  return {
    centroid: distance(a.centroidMm!, b.centroidMm!),
    inertia: Math.max(...inertia) / (trueFull * 1e4),
  };
}

describe.each(CURVED_NAMES)('%s', (name) => {
  test('facets miss the closed form by an error that falls as 1/n²', () => {
    const random = randomStream(seed + TANK_NAMES.indexOf(name));
    // Summed over attitudes, for at a single one the errors may happen to cancel.
    const sum = { coarse: { centroid: 0, inertia: 0 }, fine: { centroid: 0, inertia: 0 } };
    for (let k = 0; k < 6; k++) {
      const down = randomDown(random);
      const share = 0.05 + 0.9 * random();
      for (const [key, segments] of [
        ['coarse', 32],
        ['fine', 128],
      ] as const) {
        const { centroid, inertia } = apart(name, segments, share, down);
        sum[key].centroid += centroid;
        sum[key].inertia += inertia;
      }
    }
    for (const what of ['centroid', 'inertia'] as const) {
      const ratio = sum.coarse[what] / sum.fine[what];
      expect(ratio, what).toBeGreaterThan(12);
      expect(ratio, what).toBeLessThan(21);
    }
    expect(sum.fine.centroid / 6).toBeLessThan(0.03);
  });
});

test.each(FLAT_NAMES)('a %s is its facets', (name) => {
  const random = randomStream(seed + 99);
  for (let k = 0; k < 20; k++) {
    const { centroid, inertia } = apart(name, 4, 0.02 + 0.96 * random(), randomDown(random));
    expect(centroid).toBeLessThan(1e-9);
    expect(inertia).toBeLessThan(1e-11);
  }
});
