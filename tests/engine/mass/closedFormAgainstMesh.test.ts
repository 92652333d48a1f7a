import { describe, expect, test } from 'vitest';
import { pointToAircraft } from '../../../src/engine/geometry/rotation';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import { massPlace } from '../../../src/engine/mass/massProperties';
import { meshProperties, meshSurface } from '../../../src/engine/mass/mesh';
import type { Shape } from '../../../src/engine/mass/shapes';
import { shellMass } from '../../../src/engine/mass/surfaceProperties';
import { tessellate } from '../../../src/engine/mass/tessellate';
import type { MassProperties, Mesh } from '../../../src/engine/mass/types';
import { solidMass, volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectMass, tensorKeys } from './closeTo';
import { nameOf, samplePoses, sampleShapes } from './sampleShapes';

const posed = ({ verticesMm, triangles }: Mesh, pose: Pose): Mesh => ({
  verticesMm: verticesMm.map((vertex) => pointToAircraft(pose, vertex)),
  triangles,
});

function solidOf(mesh: Mesh): MassProperties {
  const { volumeMm3, centroidMm, inertiaAboutCentroidMm5 } = meshProperties(mesh);
  return { massG: volumeMm3, cgMm: centroidMm, inertiaAboutCgGmm2: inertiaAboutCentroidMm5 };
}

function skinOf(mesh: Mesh): MassProperties {
  const { areaMm2, centroidMm, inertiaAboutCentroidMm4 } = meshSurface(mesh);
  return { massG: areaMm2, cgMm: centroidMm, inertiaAboutCgGmm2: inertiaAboutCentroidMm4 };
}

/** a + (a − b)·share, entry by entry. */
function beyond(a: MassProperties, b: MassProperties, share: number): MassProperties {
  const go = (x: number, y: number) => x + (x - y) * share;
  const tensor = Object.fromEntries(
    tensorKeys.map((key) => [key, go(a.inertiaAboutCgGmm2[key], b.inertiaAboutCgGmm2[key])]),
  );
  return {
    massG: go(a.massG, b.massG),
    cgMm: [0, 1, 2].map((axis) => go(a.cgMm![axis]!, b.cgMm![axis]!)) as unknown as Vec3,
    inertiaAboutCgGmm2: tensor as unknown as MassProperties['inertiaAboutCgGmm2'],
  };
}

/**
 * Facets miss a curved shape by a series in 1/n², so three meshes extrapolate to the shape itself
 * (Richardson 1911; the Romberg table). What is left at n = 32, 64, 128 is of order 1/n⁶.
 */
function extrapolated(of: (mesh: Mesh) => MassProperties, shape: Shape, pose: Pose): MassProperties {
  const [coarse, middle, fine] = [32, 64, 128].map((segments) =>
    of(posed(tessellate(shape, { segments }), pose)),
  ) as [MassProperties, MassProperties, MassProperties];
  return beyond(beyond(fine, middle, 1 / 3), beyond(middle, coarse, 1 / 3), 1 / 15);
}

/** The density that makes a gram of a cubic millimetre, g/ml. */
const gramPerMm3 = 1000;
/** The areal density that makes a gram of a square millimetre, g/m². */
const gramPerMm2 = 1e6;

describe.each(sampleShapes.map((shape) => [nameOf(shape), shape] as const))('%s', (_, shape) => {
  test.each(samplePoses.map((pose) => [pose.positionMm.join(' '), pose] as const))(
    'solid at %s',
    (_, pose) => {
      const closedForm = massPlace(solidMass(shape, gramPerMm3), pose);
      // CGs are compared to 2e-7 of a 200 mm body; all six tensor entries to 2e-7 of the trace.
      expectMass(closedForm, extrapolated(solidOf, shape, pose), 2e-7, 200);
    },
  );

  test.each(samplePoses.map((pose) => [pose.positionMm.join(' '), pose] as const))(
    'skin at %s',
    (_, pose) => {
      const closedForm = massPlace(shellMass(shape, gramPerMm2), pose);
      expectMass(closedForm, extrapolated(skinOf, shape, pose), 1e-5, 200);
    },
  );

  test('facets miss by a share that falls as 1/n², or not at all', () => {
    const { volumeMm3 } = volumeProperties(shape);
    const miss = (segments: number) =>
      Math.abs(meshProperties(tessellate(shape, { segments })).volumeMm3 / volumeMm3 - 1);
    if (miss(32) < 1e-12) return expect(miss(64)).toBeLessThan(1e-12);
    expect(miss(32) / miss(64)).toBeGreaterThan(3.9);
    expect(miss(32) / miss(64)).toBeLessThan(4.1);
  });
});
