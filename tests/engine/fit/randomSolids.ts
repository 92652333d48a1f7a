import fc from 'fast-check';
import { solidOf } from '../../../src/engine/fit/solid';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import { length, normalise } from '../../../src/engine/geometry/vec3';
import type { PrismShape, Shape, ShapeKind } from '../../../src/engine/mass/shapes';
import { between } from '../../between';

export const placed = (shape: Shape, positionMm: Vec3, yawDeg = 0, pitchDeg = 0, rollDeg = 0) =>
  solidOf({ shape, pose: { positionMm, yawDeg, pitchDeg, rollDeg } });

export const boxShape = (lengthMm: number, widthMm: number, heightMm: number): Shape => ({
  kind: 'box',
  lengthMm,
  widthMm,
  heightMm,
});

/** A half ring around the x axis, open below: bore 60, 80 mm over all. */
export const saddle: PrismShape = {
  kind: 'prism',
  lengthMm: 60,
  outlineMm: [
    [-40, -20],
    [-30, -20],
    [-30, 10],
    [-20, 22],
    [20, 22],
    [30, 10],
    [30, -20],
    [40, -20],
    [40, 35],
    [-40, 35],
  ],
};

const size = between(2, 80);
export const angle = between(-180, 180);

type ConvexKind = Exclude<ShapeKind, 'tube' | 'loft' | 'panel' | 'mesh'>;

/** Convex solids that hold their own origin, with sizes from 2 to 80 mm: the compiler asks for those of a new kind. */
const convexOf: { readonly [K in ConvexKind]: fc.Arbitrary<Extract<Shape, { kind: K }>> } = {
  box: fc.record({ kind: fc.constant('box' as const), lengthMm: size, widthMm: size, heightMm: size }),
  taperedBox: fc.record({
    kind: fc.constant('taperedBox' as const),
    lengthMm: size,
    frontWidthMm: size,
    frontHeightMm: size,
    rearWidthMm: size,
    rearHeightMm: size,
  }),
  cylinder: fc.record({ kind: fc.constant('cylinder' as const), lengthMm: size, diameterMm: size }),
  frustum: fc.record({
    kind: fc.constant('frustum' as const),
    lengthMm: size,
    frontDiameterMm: size,
    rearDiameterMm: size,
  }),
  sphere: fc.record({ kind: fc.constant('sphere' as const), diameterMm: size }),
  ellipsoid: fc.record({
    kind: fc.constant('ellipsoid' as const),
    lengthMm: size,
    widthMm: size,
    heightMm: size,
  }),
  capsule: fc.record({ lengthMm: size, diameterMm: size }).map((c) => ({
    kind: 'capsule' as const,
    lengthMm: c.lengthMm + c.diameterMm,
    diameterMm: c.diameterMm,
  })),
  prism: fc.record({ size, lengthMm: size, corners: fc.integer({ min: 3, max: 8 }) }).map((p) => ({
    kind: 'prism' as const,
    lengthMm: p.lengthMm,
    outlineMm: Array.from({ length: p.corners }, (_, i) => {
      const a = (2 * Math.PI * i) / p.corners;
      return [(p.size * Math.cos(a)) / 2, (p.size * Math.sin(a)) / 2] as const;
    }),
  })),
};

export const convexShapes: fc.Arbitrary<Shape> = fc.oneof(...Object.values<fc.Arbitrary<Shape>>(convexOf));

/** Any solid at all, the saddle and a short hull among them. */
export const anyShapes: fc.Arbitrary<Shape> = fc.oneof(
  { weight: 6, arbitrary: convexShapes },
  { weight: 1, arbitrary: fc.constant<Shape>(saddle) },
  {
    weight: 1,
    arbitrary: fc.record({ width: size, height: size, roundness: between(0, 1) }).map(
      ({ width, height, roundness }): Shape => ({
        kind: 'loft',
        sections: [
          { xMm: -20, widthMm: width, heightMm: height, centreYMm: 0, centreZMm: 0, roundness: 1 },
          { xMm: 0, widthMm: height, heightMm: width, centreYMm: 3, centreZMm: 1, roundness },
          { xMm: 25, widthMm: 4, heightMm: 6, centreYMm: 0, centreZMm: -2, roundness: 0.2 },
        ],
      }),
    ),
  },
);

const place = between(-60, 60);
export const points = fc.tuple(place, place, place);
export const directions = points.map((v): Vec3 => (length(v) > 1e-3 && normalise(v)) || [1, 0, 0]);

export const poses = fc.record<Pose>({ positionMm: points, yawDeg: angle, pitchDeg: angle, rollDeg: angle });
