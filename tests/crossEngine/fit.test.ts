import RAPIER from '@dimforge/rapier3d-compat';
import fc from 'fast-check';
import createManifold from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { pocketIn } from '../../src/engine/fit/pocket';
import { shapeDistance, shapeOverlap } from '../../src/engine/fit/shapeDistance';
import { type PosedShape, solidOf } from '../../src/engine/fit/solid';
import { pointToAircraft, poseRotation, rotationProduct } from '../../src/engine/geometry/rotation';
import type { Mat3, Pose } from '../../src/engine/geometry/types';
import type { Shape } from '../../src/engine/mass/shapes';
import { tessellate } from '../../src/engine/mass/tessellate';
import { between } from '../between';
import { boxShape, poses, saddle } from '../engine/fit/randomSolids';

/** Rapier stands its cylinders, capsules and cones on y, the cone's point at +y; ours lie along x, point aft. */
const yToX: Mat3 = [0, 1, 0, -1, 0, 0, 0, 0, 1];

/** Unit quaternion of a rotation by its half angle and axis, from the trace (Shepperd 1978, largest part first). */
function quaternion([xx, xy, xz, yx, yy, yz, zx, zy, zz]: Mat3) {
  const squares = [1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz];
  const most = squares.indexOf(Math.max(...squares));
  const d = 2 * Math.sqrt(squares[most]!);
  const rows = [
    [d / 4, (zy - yz) / d, (xz - zx) / d, (yx - xy) / d],
    [(zy - yz) / d, d / 4, (xy + yx) / d, (xz + zx) / d],
    [(xz - zx) / d, (xy + yx) / d, d / 4, (yz + zy) / d],
    [(yx - xy) / d, (xz + zx) / d, (yz + zy) / d, d / 4],
  ];
  const [w, x, y, z] = rows[most]!;
  return { w: w!, x: x!, y: y!, z: z! };
}

function rapierShape(shape: Shape): RAPIER.Shape {
  switch (shape.kind) {
    case 'box':
      return new RAPIER.Cuboid(shape.widthMm / 2, shape.lengthMm / 2, shape.heightMm / 2);
    case 'cylinder':
      return new RAPIER.Cylinder(shape.lengthMm / 2, shape.diameterMm / 2);
    case 'sphere':
      return new RAPIER.Ball(shape.diameterMm / 2);
    case 'capsule':
      return new RAPIER.Capsule((shape.lengthMm - shape.diameterMm) / 2, shape.diameterMm / 2);
    case 'frustum':
      return new RAPIER.Cone(shape.lengthMm / 2, shape.frontDiameterMm / 2);
    default:
      throw new Error(`Rapier has no ${shape.kind}.`);
  }
}

const size = between(5, 80);
const shapes: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), lengthMm: size, widthMm: size, heightMm: size }),
  fc.record({ kind: fc.constant('cylinder' as const), lengthMm: size, diameterMm: size }),
  fc.record({ kind: fc.constant('sphere' as const), diameterMm: size }),
  fc
    .record({ lengthMm: size, diameterMm: size })
    .map((c): Shape => ({ kind: 'capsule', lengthMm: c.lengthMm + c.diameterMm, diameterMm: c.diameterMm })),
  fc.record({
    kind: fc.constant('frustum' as const),
    lengthMm: size,
    frontDiameterMm: size,
    rearDiameterMm: fc.constant(0),
  }),
);

const stand = ({ positionMm: [x, y, z] }: Pose) => ({ x, y, z });
const turned = (pose: Pose) => quaternion(rotationProduct(poseRotation(pose), yToX));

function rapierContact(a: PosedShape, b: PosedShape): number | undefined {
  return rapierShape(a.shape).contactShape(
    stand(a.pose),
    turned(a.pose),
    rapierShape(b.shape),
    stand(b.pose),
    turned(b.pose),
    1000,
  )?.distance;
}

describe('rapier: random pairs', () => {
  beforeAll(() => RAPIER.init());

  /**
   * Single precision at places up to 100 mm; and their search stops once its bounds agree to √(10 ε), 1.1e-3 of
   * the distance with single precision's ε of 1.2e-7.
   */
  const within = 0.05;
  const share = 1.5e-3;

  test('distances of pairs that are apart', () => {
    let apart = 0;
    fc.assert(
      fc.property(shapes, shapes, poses, poses, (s, t, p, q) => {
        const [a, b] = [
          { shape: s, pose: p },
          { shape: t, pose: q },
        ];
        const { distanceMm } = shapeDistance(solidOf(a), solidOf(b));
        const theirs = rapierContact(a, b);
        // Two capsules they do by a formula that loses digits when the two are nearly parallel in single precision.
        if (s.kind === 'capsule' && t.kind === 'capsule') return;
        if (distanceMm < 0.1 || theirs === undefined) return;
        apart += 1;
        expect(Math.abs(theirs - distanceMm)).toBeLessThan(within + share * distanceMm);
      }),
      { numRuns: 500 },
    );
    expect(apart).toBeGreaterThan(80);
  });

  test('both agree on who clashes, but for touches', () => {
    let clashes = 0;
    fc.assert(
      fc.property(shapes, shapes, poses, poses, (s, t, p, q) => {
        const [a, b] = [
          { shape: s, pose: p },
          {
            shape: t,
            pose: { ...q, positionMm: p.positionMm.map((x, i) => x + q.positionMm[i]! / 3) } as never,
          },
        ];
        const depth = shapeOverlap(solidOf(a), solidOf(b))?.depthMm ?? 0;
        const theirs = rapierShape(s).intersectsShape(
          stand(a.pose),
          turned(a.pose),
          rapierShape(t),
          stand(b.pose),
          turned(b.pose),
        );
        if (depth > within) expect(theirs).toBe(true);
        if (depth === 0 && shapeDistance(solidOf(a), solidOf(b)).distanceMm > within)
          expect(theirs).toBe(false);
        clashes += depth > within ? 1 : 0;
      }),
      { numRuns: 500 },
    );
    expect(clashes).toBeGreaterThan(20);
  });
});

describe('manifold: cut-outs', () => {
  let wasm: Awaited<ReturnType<typeof createManifold>>;
  beforeAll(async () => {
    wasm = await createManifold();
    wasm.setup();
  });

  const solid = ({ shape, pose }: PosedShape) => {
    const { verticesMm, triangles } = tessellate(shape, { segments: 96 });
    return new wasm.Manifold(
      new wasm.Mesh({
        numProp: 3,
        vertProperties: new Float32Array(verticesMm.flatMap((v) => [...pointToAircraft(pose, v)])),
        triVerts: new Uint32Array(triangles.flat()),
      }),
    );
  };
  const things: fc.Arbitrary<Shape> = fc.oneof(
    shapes,
    fc.constant<Shape>(saddle),
    fc.constant<Shape>({ kind: 'ellipsoid', lengthMm: 70, widthMm: 40, heightMm: 30 }),
  );
  const blocks = fc.constantFrom<Shape>(boxShape(120, 80, 60), saddle, {
    kind: 'taperedBox',
    lengthMm: 90,
    frontWidthMm: 40,
    frontHeightMm: 30,
    rearWidthMm: 90,
    rearHeightMm: 70,
  });

  test('the volume of the overlap is that of their Boolean', () => {
    let cuts = 0;
    fc.assert(
      fc.property(blocks, things, poses, poses, (s, t, p, q) => {
        const block = { shape: s, pose: p };
        const thing = {
          shape: t,
          pose: { ...q, positionMm: p.positionMm.map((x, i) => x + q.positionMm[i]! / 2) } as never,
        };
        const ours = pocketIn(block, thing)?.volumeMm3 ?? 0;
        const theirs = solid(block).intersect(solid(thing)).volume();
        cuts += ours > 0 ? 1 : 0;
        // Their corners are in single precision: 1e-5 mm over some 10 000 mm² of surface.
        expect(Math.abs(ours - theirs)).toBeLessThan(0.5 + 1e-4 * theirs);
      }),
      { numRuns: 30 },
    );
    expect(cuts).toBeGreaterThan(5);
  });
});
