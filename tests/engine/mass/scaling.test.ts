import { describe, expect, test } from 'vitest';
import type { LoftShape, Shape } from '../../../src/engine/mass/shapes';
import { surfaceProperties } from '../../../src/engine/mass/surfaceProperties';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectPoint, expectTensor } from './closeTo';
import { fuselage, nameOf, sampleShapes } from './sampleShapes';

/** Every length times k; angles, roundness and thickness ratios stay. */
function scaled(shape: Shape, k: number): Shape {
  const grow = (value: unknown, key = ''): unknown => {
    if (typeof value === 'number') return key.endsWith('Mm') ? value * k : value;
    if (Array.isArray(value)) return value.map((item) => grow(item, key));
    if (typeof value === 'object' && value !== null) {
      return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, grow(item, name)]));
    }
    return value;
  };
  return grow(shape) as Shape;
}

const meshed: Shape = { kind: 'mesh', ...tessellate(sampleShapes[4]!, { segments: 12 }) };
const times = (t: ReturnType<typeof volumeProperties>['inertiaAboutCentroidMm5'], k: number) => ({
  xx: t.xx * k,
  yy: t.yy * k,
  zz: t.zz * k,
  xy: t.xy * k,
  xz: t.xz * k,
  yz: t.yz * k,
});

test('the scaling of this file scales sections too', () => {
  const loft = scaled(fuselage, 2) as LoftShape;
  expect(loft.sections[1]).toMatchObject({ xMm: -120, widthMm: 120, roundness: 1 });
});

describe.each([...sampleShapes, meshed].map((shape) => [nameOf(shape), shape] as const))('%s', (_, shape) => {
  test.each([1e-3, 0.1, 7, 1e3])('× %d: volume k³, area k², inertia k⁵ and k⁴', (k) => {
    const [one, grown] = [volumeProperties(shape), volumeProperties(scaled(shape, k))];
    // A dozen roundings' room.
    expect(Math.abs(grown.volumeMm3 / one.volumeMm3 / k ** 3 - 1)).toBeLessThan(1e-13);
    expectPoint(
      grown.centroidMm,
      one.centroidMm!.map((c) => c * k) as unknown as [number, number, number],
      1e-10 * k,
    );
    expectTensor(grown.inertiaAboutCentroidMm5, times(one.inertiaAboutCentroidMm5, k ** 5), 1e-13);

    const [skin, grownSkin] = [surfaceProperties(shape), surfaceProperties(scaled(shape, k))];
    // Rounding may refine one more square at one size than at another; those agree to 1e-11.
    expect(Math.abs(grownSkin.areaMm2 / skin.areaMm2 / k ** 2 - 1)).toBeLessThan(1e-10);
    expectTensor(grownSkin.inertiaAboutCentroidMm4, times(skin.inertiaAboutCentroidMm4, k ** 4), 1e-10);
  });
});
