import { describe, expect, test } from 'vitest';
import { massMirror } from '../../../src/engine/mass/massProperties';
import { mirroredShape } from '../../../src/engine/mass/mirroredShape';
import { shapeFault } from '../../../src/engine/mass/shapeFault';
import type { PrismShape, Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { solidMass } from '../../../src/engine/mass/volumeProperties';
import { expectMass } from './closeTo';
import { fuselage, nameOf, saddle, sampleShapes, wing } from './sampleShapes';

/** Not the same left and right, unlike the saddle about its middle. */
const bracket: PrismShape = { ...saddle, outlineMm: saddle.outlineMm.map(([y, z]) => [y + 0.4 * z, z]) };
const meshed: Shape = { kind: 'mesh', ...tessellate(fuselage, { segments: 12 }) };

describe.each(
  [...sampleShapes, bracket, meshed]
    .filter(({ kind }) => kind !== 'panel')
    .map((shape) => [nameOf(shape), shape] as const),
)('%s', (_, shape) => {
  test('its mirror image is a sound solid, weighs the same, and has CG and tensor mirrored', () => {
    const mirrored = mirroredShape(shape);
    expect(shapeFault(mirrored)).toBeNull();
    expectMass(solidMass(mirrored, 1.3), massMirror(solidMass(shape, 1.3)), 1e-12, 500);
    expect(mirroredShape(mirrored)).toEqual(shape);
  });
});

test('a panel’s span runs to the right: it has no mirror image of its own kind', () => {
  expect(() => mirroredShape(wing)).toThrow(/no mirror image/);
});
