import RAPIER from '@dimforge/rapier3d-compat';
import fc from 'fast-check';
import createManifold, { type Manifold } from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { poseRotation, rotationProduct } from '../../src/engine/geometry/rotation';
import type { Mat3, Pose } from '../../src/engine/geometry/types';
import { massPlace, massSum } from '../../src/engine/mass/massProperties';
import { meshProperties } from '../../src/engine/mass/mesh';
import { principalMoments } from '../../src/engine/mass/principal';
import type { Shape } from '../../src/engine/mass/shapes';
import { surfaceProperties } from '../../src/engine/mass/surfaceProperties';
import { diagonalTensor, tensorRotate } from '../../src/engine/mass/tensor';
import { tessellate } from '../../src/engine/mass/tessellate';
import type { Mesh } from '../../src/engine/mass/types';
import { solidMass, volumeProperties } from '../../src/engine/mass/volumeProperties';
import { between } from '../between';
import { expectTensor, tensorKeys } from '../engine/mass/closeTo';
import { nameOf, sampleShapes } from '../engine/mass/sampleShapes';

/** Rapier stands its cylinders, capsules and cones on y, the cone's point at +y; ours lie along x, point aft. */
const yToX: Mat3 = [0, 1, 0, -1, 0, 0, 0, 0, 1];

/** Unit quaternion of a rotation (Shepperd, J. Guidance and Control 1(3), 1978): largest part first. */
function quaternion([xx, xy, xz, yx, yy, yz, zx, zy, zz]: Mat3) {
  const parts = [1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz];
  const largest = parts.indexOf(Math.max(...parts));
  const d = 2 * Math.sqrt(parts[largest]!);
  const [wx, wy, wz] = [(zy - yz) / d, (xz - zx) / d, (yx - xy) / d];
  const [sxy, sxz, syz] = [(xy + yx) / d, (xz + zx) / d, (yz + zy) / d];
  if (largest === 0) return { w: d / 4, x: wx, y: wy, z: wz };
  if (largest === 1) return { w: wx, x: d / 4, y: sxy, z: sxz };
  if (largest === 2) return { w: wy, x: sxy, y: d / 4, z: syz };
  return { w: wz, x: sxz, y: syz, z: d / 4 };
}

/** The rotation of a unit quaternion. */
function matrix({ w, x, y, z }: RAPIER.Rotation): Mat3 {
  return [
    1 - 2 * (y * y + z * z),
    2 * (x * y - w * z),
    2 * (x * z + w * y),
    2 * (x * y + w * z),
    1 - 2 * (x * x + z * z),
    2 * (y * z - w * x),
    2 * (x * z - w * y),
    2 * (y * z + w * x),
    1 - 2 * (x * x + y * y),
  ];
}

/** Big enough that every inertia is far above 1: their eigenvalue routine stops at a fixed 1e-7 or so. */
const size = between(4, 20);
const shapes: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), lengthMm: size, widthMm: size, heightMm: size }),
  fc.record({ kind: fc.constant('cylinder' as const), lengthMm: size, diameterMm: size }),
  fc.record({ kind: fc.constant('sphere' as const), diameterMm: size }),
  fc
    .record({ lengthMm: size, diameterMm: size })
    .map(
      ({ lengthMm, diameterMm }): Shape => ({ kind: 'capsule', lengthMm: lengthMm + diameterMm, diameterMm }),
    ),
  fc.record({
    kind: fc.constant('frustum' as const),
    lengthMm: size,
    frontDiameterMm: size,
    rearDiameterMm: fc.constant(0),
  }),
);
const reach = 30;
// In steps that float32 tells apart: next to a double root its eigenvectors know nothing of 1e-130 mm.
const place = fc.integer({ min: -1000 * reach, max: 1000 * reach }).map((step) => step / 1000);
const angle = fc.integer({ min: -1800, max: 1800 }).map((step) => step / 10);
const compounds = fc.array(
  fc.record({
    shape: shapes,
    density: between(0.3, 5),
    pose: fc.record<Pose>({
      positionMm: fc.tuple(place, place, place),
      yawDeg: angle,
      pitchDeg: angle,
      rollDeg: angle,
    }),
  }),
  { minLength: 1, maxLength: 12 },
);

function colliderOf(shape: Shape): RAPIER.ColliderDesc {
  switch (shape.kind) {
    case 'box':
      // Lying on yToX like the rest: their y is our x, their x our −y.
      return RAPIER.ColliderDesc.cuboid(shape.widthMm / 2, shape.lengthMm / 2, shape.heightMm / 2);
    case 'cylinder':
      return RAPIER.ColliderDesc.cylinder(shape.lengthMm / 2, shape.diameterMm / 2);
    case 'sphere':
      return RAPIER.ColliderDesc.ball(shape.diameterMm / 2);
    case 'capsule':
      return RAPIER.ColliderDesc.capsule((shape.lengthMm - shape.diameterMm) / 2, shape.diameterMm / 2);
    case 'frustum':
      return RAPIER.ColliderDesc.cone(shape.lengthMm / 2, shape.frontDiameterMm / 2);
    default:
      throw new Error(`No collider for a ${shape.kind}.`);
  }
}

describe('rapier: random compounds of boxes, cylinders, balls, capsules and cones', () => {
  beforeAll(() => RAPIER.init());

  test('mass, CG, principal moments and all six entries about the CG', () => {
    fc.assert(
      fc.property(compounds, (bodies) => {
        const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
        const body = world.createRigidBody(RAPIER.RigidBodyDesc.dynamic());
        for (const { shape, density, pose } of bodies) {
          const [x, y, z] = pose.positionMm;
          const lying = quaternion(rotationProduct(poseRotation(pose), yToX));
          world.createCollider(
            colliderOf(shape).setDensity(density).setTranslation(x, y, z).setRotation(lying),
            body,
          );
        }
        body.recomputeMassPropertiesFromColliders();

        const ours = massSum(
          bodies.map(({ shape, density, pose }) => massPlace(solidMass(shape, density * 1000), pose)),
        );
        // They work in float32: 6e-8 a rounding, a few dozen of them in a sum of 12 bodies, and what is
        // about the CG is left over from terms of order mass × reach². Hence 1e-5 of those.
        const share = 1e-5;
        expect(Math.abs(body.mass() / ours.massG - 1)).toBeLessThan(share);
        const centre = body.localCom();
        [centre.x, centre.y, centre.z].forEach((value, axis) => {
          expect(Math.abs(value - ours.cgMm![axis]!)).toBeLessThan(share * reach);
        });

        // Two moments nearly alike are a double root, found to √6e-8 = 2.4e-4 only; their sum and
        // their squares' sum do not feel it.
        const theirs = body.principalInertia();
        const rounding = share * ours.massG * reach ** 2;
        const mine = principalMoments(ours.inertiaAboutCgGmm2).momentsGmm2;
        const [sum, size] = [mine[0] + mine[1] + mine[2], Math.hypot(...mine)];
        expect(Math.abs(theirs.x + theirs.y + theirs.z - sum)).toBeLessThan(rounding);
        expect(Math.abs(Math.hypot(theirs.x, theirs.y, theirs.z) - size)).toBeLessThan(rounding);
        const doubleRoot = rounding + 2.4e-4 * size;
        const rising = [theirs.x, theirs.y, theirs.z].sort((a, b) => a - b);
        mine.forEach((moment, i) => {
          expect(Math.abs(moment - rising[i]!)).toBeLessThan(doubleRoot);
        });
        const turned = tensorRotate(
          diagonalTensor(theirs.x, theirs.y, theirs.z),
          matrix(body.principalInertiaLocalFrame()),
        );
        for (const key of tensorKeys) {
          expect(Math.abs(turned[key] - ours.inertiaAboutCgGmm2[key])).toBeLessThan(doubleRoot);
        }
        world.free();
      }),
      { numRuns: 200 },
    );
  });
});

describe('manifold', () => {
  let kernel: Awaited<ReturnType<typeof createManifold>>;
  beforeAll(async () => {
    kernel = await createManifold();
    kernel.setup();
  });

  /** Their mesh of ours, coordinates as float32. */
  function toManifold({ verticesMm, triangles }: Mesh): Manifold {
    const mesh = new kernel.Mesh({
      numProp: 3,
      vertProperties: new Float32Array(verticesMm.flat()),
      triVerts: new Uint32Array(triangles.flat()),
    });
    return new kernel.Manifold(mesh);
  }

  function fromManifold(solid: Manifold): Mesh {
    const { vertProperties, triVerts, numProp } = solid.getMesh();
    const at = (list: ArrayLike<number>, i: number, stride: number) =>
      [list[i * stride]!, list[i * stride + 1]!, list[i * stride + 2]!] as const;
    return {
      verticesMm: Array.from({ length: vertProperties.length / numProp }, (_, i) =>
        at(vertProperties, i, numProp),
      ),
      triangles: Array.from({ length: triVerts.length / 3 }, (_, i) => at(triVerts, i, 3)),
    };
  }

  test.each(sampleShapes.map((shape) => [nameOf(shape), shape] as const))(
    '%s: takes our mesh for a solid and finds the same volume and area',
    (_, shape) => {
      const segments = 160;
      const solid = toManifold(tessellate(shape, { segments }));
      expect(solid.status()).toBe('NoError');
      expect(solid.isEmpty()).toBe(false);
      // An inscribed n-gon falls short by (2π/n)²/6, two ways round on an ellipsoid or a capsule.
      const short = 2 * ((2 * Math.PI) / segments) ** 2;
      expect(Math.abs(solid.volume() / volumeProperties(shape).volumeMm3 - 1)).toBeLessThan(short);
      expect(Math.abs(solid.surfaceArea() / surfaceProperties(shape).areaMm2 - 1)).toBeLessThan(short);
      // The same facets: float32 coordinates, 6e-8 each.
      const ours = meshProperties(tessellate(shape, { segments }));
      expect(Math.abs(solid.volume() / ours.volumeMm3 - 1)).toBeLessThan(1e-6);
      solid.delete();
    },
  );

  test('a box sawn askew: the two pieces, integrated here, make the box', () => {
    const shape: Shape = { kind: 'box', lengthMm: 140, widthMm: 45, heightMm: 30 };
    const whole = toManifold(tessellate(shape));
    const [front, rear] = whole.splitByPlane([0.6, 0.48, 0.64], 11) as [Manifold, Manifold];
    const pieces = [front, rear].map((piece) => {
      const own = meshProperties(fromManifold(piece));
      expect(own.volumeMm3 / piece.volume()).toBeCloseTo(1, 6);
      return { massG: own.volumeMm3, cgMm: own.centroidMm, inertiaAboutCgGmm2: own.inertiaAboutCentroidMm5 };
    });
    const sum = massSum(pieces);
    const closedForm = volumeProperties(shape);
    expect(sum.massG / closedForm.volumeMm3).toBeCloseTo(1, 6);
    for (const axis of [0, 1, 2] as const) expect(Math.abs(sum.cgMm![axis])).toBeLessThan(1e-4);
    expectTensor(sum.inertiaAboutCgGmm2, closedForm.inertiaAboutCentroidMm5, 1e-6);
  });

  test('their cylinder cut along its axis: half the volume, centroid 4r/3π from the cut', () => {
    const segments = 720;
    const half = kernel.Manifold.cylinder(60, 20, 20, segments, true).trimByPlane([0, 1, 0], 0);
    const { volumeMm3, centroidMm } = meshProperties(fromManifold(half));
    const short = ((2 * Math.PI) / segments) ** 2;
    expect(Math.abs(volumeMm3 / ((Math.PI * 400 * 60) / 2) - 1)).toBeLessThan(short);
    expect(Math.abs(centroidMm![1] / (80 / (3 * Math.PI)) - 1)).toBeLessThan(short);
    expect(Math.abs(centroidMm![0])).toBeLessThan(1e-4);
    expect(Math.abs(centroidMm![2])).toBeLessThan(1e-4);
  });
});
