import * as fc from 'fast-check';
import { Plane, Ray, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/engine/geometry/types';
import { dragNormal, followPointer, rayOnPlane } from '../../src/interaction/dragPlane';
import { between } from '../between';

const mm = between(-2000, 2000);
const point = fc.tuple(mm, mm, mm);
const part = between(-1, 1);
const direction = fc.tuple(part, part, part).filter((d) => Math.hypot(...d) > 0.1);

describe('where a ray meets the drag plane', () => {
  test('as three.js finds it, for any ray and plane', () => {
    fc.assert(
      fc.property(point, direction, point, direction, (originMm, d, throughMm, n) => {
        const ray = new Ray(new Vector3(...originMm), new Vector3(...d).normalize());
        const normal = new Vector3(...n).normalize();
        fc.pre(Math.abs(ray.direction.dot(normal)) > 1e-3);
        // A ray that starts on the plane may be told either way.
        fc.pre(Math.abs(new Vector3(...throughMm).sub(ray.origin).dot(normal)) > 1e-6);
        const plane = new Plane().setFromNormalAndCoplanarPoint(normal, new Vector3(...throughMm));
        const theirs = ray.intersectPlane(plane, new Vector3());
        const ours = rayOnPlane(
          { originMm, direction: ray.direction.toArray() as unknown as Vec3 },
          throughMm,
          normal.toArray() as unknown as Vec3,
        );
        if (theirs) {
          for (const [axis, mm] of theirs.toArray().entries()) expect(ours?.[axis]).toBeCloseTo(mm, 4);
        } else {
          expect(ours).toBeNull();
        }
      }),
    );
  });

  test('nowhere, for a ray along the plane or away from it', () => {
    expect(rayOnPlane({ originMm: [0, 0, 10], direction: [1, 0, 0] }, [0, 0, 0], [0, 0, 1])).toBeNull();
    expect(rayOnPlane({ originMm: [0, 0, 10], direction: [0, 0, 1] }, [0, 0, 0], [0, 0, 1])).toBeNull();
  });
});

test('an elevation drags in its own plane, the free view level or upright', () => {
  expect(dragNormal('side', false)).toEqual([0, 1, 0]);
  expect(dragNormal('top', true)).toEqual([0, 0, 1]);
  expect(dragNormal('front', false)).toEqual([1, 0, 0]);
  expect(dragNormal('free', false)).toEqual([0, 0, 1]);
  expect(dragNormal('free', true)).toEqual([0, 1, 0]);
});

test('the grabbed point stays under the pointer', () => {
  fc.assert(
    fc.property(point, point, point, (itemMm, grabbedMm, pointerMm) => {
      const moved = followPointer(itemMm, grabbedMm, pointerMm);
      for (const axis of [0, 1, 2] as const) {
        expect(moved[axis] + (grabbedMm[axis] - itemMm[axis])).toBeCloseTo(pointerMm[axis], 8);
      }
    }),
  );
});
