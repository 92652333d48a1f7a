import * as fc from 'fast-check';
import { Matrix4, Quaternion, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { pointToAircraft } from '../../../src/engine/geometry/rotation';
import type { Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import { ROOT_ROTATION, toAircraft, toWorld, writePoseTurn } from '../../../src/scene/frame/frame';
import { unitShape } from '../../../src/scene/materials/unitShape';

const size = fc.double({ min: 1, max: 500, noNaN: true });
const shapes: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), lengthMm: size, widthMm: size, heightMm: size }),
  fc.record({ kind: fc.constant('ellipsoid' as const), lengthMm: size, widthMm: size, heightMm: size }),
  fc.record({ kind: fc.constant('cylinder' as const), lengthMm: size, diameterMm: size }),
  fc.record({ kind: fc.constant('sphere' as const), diameterMm: size }),
);

test('a stretched unit shape fills the same box as the shape itself', () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const unit = unitShape(shape);
      unit?.geometry.computeBoundingBox();
      const drawn = unit?.geometry.boundingBox?.max.clone().multiply(new Vector3(...unit.scale));
      const { verticesMm } = tessellate(shape, { segments: 48 });
      for (const axis of [0, 1, 2] as const) {
        const reach = Math.max(...verticesMm.map((vertex) => vertex[axis]));
        expect(Math.abs((drawn?.getComponent(axis) ?? Number.NaN) - reach)).toBeLessThan(1e-4 * reach);
      }
    }),
    { numRuns: 40 },
  );
});

describe('the scene stands in the frame of the aircraft', () => {
  const mm = fc.double({ min: -2000, max: 2000, noNaN: true });
  const deg = fc.double({ min: -180, max: 180, noNaN: true });

  test('the root turn of three.js takes a point where toWorld says, and toAircraft back', () => {
    fc.assert(
      fc.property(fc.tuple(mm, mm, mm), (point) => {
        const turned = new Vector3(...point).applyMatrix4(new Matrix4().makeRotationX(ROOT_ROTATION[0]));
        expect(turned.distanceTo(toWorld(point, new Vector3()))).toBeLessThan(1e-9 * 4000);
        for (const [axis, mm] of toAircraft(toWorld(point, new Vector3())).entries()) {
          expect(mm).toBeCloseTo(point[axis] ?? Number.NaN, 12);
        }
      }),
    );
  });

  test('a pose turns a group as it turns the engine’s points', () => {
    fc.assert(
      fc.property(fc.tuple(mm, mm, mm), deg, deg, deg, (point, yawDeg, pitchDeg, rollDeg) => {
        const turn = writePoseTurn({ yawDeg, pitchDeg, rollDeg }, new Quaternion());
        const drawn = new Vector3(...point).applyQuaternion(turn);
        const wanted = pointToAircraft({ positionMm: [0, 0, 0], yawDeg, pitchDeg, rollDeg }, point);
        expect(drawn.distanceTo(new Vector3(...wanted))).toBeLessThan(1e-6);
      }),
    );
  });
});
