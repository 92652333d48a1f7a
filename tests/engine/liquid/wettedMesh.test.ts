import { expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { cross, dot, sub } from '../../../src/engine/geometry/vec3';
import { liquidInShape } from '../../../src/engine/liquid/liquidInShape';
import { vesselOf } from '../../../src/engine/liquid/vesselOf';
import { surfaceOutline, wettedMesh } from '../../../src/engine/liquid/wettedMesh';
import { meshProperties } from '../../../src/engine/mass/mesh';
import { meshFault } from '../../../src/engine/mass/meshFault';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { seed } from '../../seed';
import { randomDown, randomStream, TANK_NAMES, TANKS } from './tankShapes';

test.each(TANK_NAMES)(
  'the liquid drawn in a %s is a closed solid of the right size under a lid of the right area',
  (name) => {
    const random = randomStream(seed);
    const shape = TANKS[name]!;
    const full = volumeProperties(shape).volumeMm3;
    for (let k = 0; k < 6; k++) {
      const down = randomDown(random);
      const asked = full * (0.05 + 0.9 * random());
      const offset = liquidInShape(shape, asked, down).surfaceOffsetMm!;
      const mesh = wettedMesh(shape, down, offset, 64);
      expect(meshFault(mesh)).toBeNull();
      expect(Math.abs(meshProperties(mesh).volumeMm3 - asked)).toBeLessThan(1e-2 * full);
      const up: Vec3 = [-down[0], -down[1], -down[2]];
      const area = surfaceOutline(shape, down, offset, 64)
        .map((polygon) => dot(up, areaVector(polygon)))
        .reduce((sum, a) => sum + a, 0);
      const { surfaceAreaMm2 } = vesselOf(shape).tilt(down).cut(offset);
      expect(Math.abs(area / surfaceAreaMm2 - 1)).toBeLessThan(0.02);
    }
  },
);

test('a saddle tank nearly empty has two surfaces, nearly full one', () => {
  const full = volumeProperties(TANKS.saddle!).volumeMm3;
  const outlines = (share: number) => {
    const { surfaceOffsetMm } = liquidInShape(TANKS.saddle!, share * full, [0, 0, -1]);
    return surfaceOutline(TANKS.saddle!, [0, 0, -1], surfaceOffsetMm!);
  };
  expect(outlines(0.2)).toHaveLength(2);
  expect(outlines(0.9)).toHaveLength(1);
});

test('nothing is drawn of an empty tank, and no surface of a brim-full one', () => {
  const { bottomMm, topMm } = vesselOf(TANKS.capsule!).tilt([0, 0, -1]);
  expect(wettedMesh(TANKS.capsule!, [0, 0, -1], bottomMm + 1).triangles).toHaveLength(0);
  expect(surfaceOutline(TANKS.capsule!, [0, 0, -1], topMm - 1)).toHaveLength(0);
});

/** Area vector of a polygon: ½ Σ p × q over its edges. */
function areaVector(polygon: readonly Vec3[]): Vec3 {
  const first = polygon[0]!;
  let sum: Vec3 = [0, 0, 0];
  for (let k = 1; k < polygon.length - 1; k++) {
    const part = cross(sub(polygon[k]!, first), sub(polygon[k + 1]!, first));
    sum = [sum[0] + part[0] / 2, sum[1] + part[1] / 2, sum[2] + part[2] / 2];
  }
  return sum;
}
