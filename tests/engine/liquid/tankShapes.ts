import fc from 'fast-check';
import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Shape, ShapeKind } from '../../../src/engine/mass/shapes';
import { between } from '../../between';

const section = (xMm: number, w: number, h: number, y: number, z: number, roundness: number) => ({
  xMm,
  widthMm: w,
  heightMm: h,
  centreYMm: y,
  centreZMm: z,
  roundness,
});

type TankKind = Exclude<ShapeKind, 'tube' | 'panel' | 'mesh'>;

/** Tanks of each kind, some of them awkward: the compiler asks for one of a new solid. */
const tanksOf: { readonly [K in TankKind]: Readonly<Record<string, Extract<Shape, { kind: K }>>> } = {
  box: { box: { kind: 'box', lengthMm: 120, widthMm: 70, heightMm: 45 } },
  taperedBox: {
    taperedBox: {
      kind: 'taperedBox',
      lengthMm: 110,
      frontWidthMm: 60,
      frontHeightMm: 30,
      rearWidthMm: 24,
      rearHeightMm: 56,
    },
  },
  cylinder: {
    cylinder: { kind: 'cylinder', lengthMm: 130, diameterMm: 62 },
    coin: { kind: 'cylinder', lengthMm: 14, diameterMm: 90 },
  },
  frustum: {
    frustum: { kind: 'frustum', lengthMm: 100, frontDiameterMm: 70, rearDiameterMm: 30 },
    cone: { kind: 'frustum', lengthMm: 100, frontDiameterMm: 0, rearDiameterMm: 64 },
  },
  sphere: { sphere: { kind: 'sphere', diameterMm: 80 } },
  ellipsoid: { ellipsoid: { kind: 'ellipsoid', lengthMm: 140, widthMm: 60, heightMm: 40 } },
  capsule: { capsule: { kind: 'capsule', lengthMm: 150, diameterMm: 60 } },
  prism: {
    saddle: {
      kind: 'prism',
      lengthMm: 80,
      outlineMm: [
        [-50, 30],
        [-50, -40],
        [-24, -40],
        [-24, 8],
        [24, 8],
        [24, -40],
        [50, -40],
        [50, 30],
      ],
    },
  },
  loft: {
    roundedBox: { kind: 'loft', sections: [section(-60, 60, 40, 0, 0, 0.3), section(60, 60, 40, 0, 0, 0.3)] },
    oval: {
      kind: 'loft',
      sections: [
        section(-70, 30, 24, 0, -6, 1),
        section(-10, 64, 50, 4, 2, 1),
        section(70, 26, 60, -3, 5, 1),
      ],
    },
    fuselage: {
      kind: 'loft',
      sections: [
        section(-70, 40, 30, 3, 0, 0.15),
        section(0, 70, 60, 0, 4, 0.7),
        section(60, 30, 44, -5, 9, 1),
      ],
    },
    crate: { kind: 'loft', sections: [section(-50, 40, 30, 3, 0, 0), section(60, 60, 44, -5, 9, 0)] },
  },
};

export const TANKS: Readonly<Record<string, Shape>> = Object.assign({}, ...Object.values(tanksOf));

export const TANK_NAMES = Object.keys(TANKS);

/** Those whose faces are all flat, so that their facets are the shape itself. */
export const FLAT_NAMES: readonly string[] = ['box', 'taperedBox', 'saddle', 'crate'];
export const CURVED_NAMES = TANK_NAMES.filter((name) => !FLAT_NAMES.includes(name));

/** Any direction, with those near an axis made common, for that is where tanks lie. */
export const anyDown: fc.Arbitrary<Vec3> = fc
  .tuple(
    between(-1, 1),
    between(0, 2 * Math.PI),
    fc.constantFrom(0, 0, 1, 2, 3),
    fc.integer({ min: 0, max: 9 }),
  )
  .map(([z, turn, axis, digits]): Vec3 => {
    const flat = Math.sqrt(1 - z * z);
    const lean = axis === 0 ? 1 : 10 ** -digits;
    const v = [lean * flat * Math.cos(turn), lean * flat * Math.sin(turn), lean * z];
    if (axis > 0) v[axis - 1] = v[axis - 1]! < 0 ? -1 : 1;
    const size = Math.hypot(v[0]!, v[1]!, v[2]!);
    return [v[0]! / size, v[1]! / size, v[2]! / size];
  });

/** A share of full, small shares and shares near one made common. */
export const anyFill: fc.Arbitrary<number> = fc.oneof(
  between(0.02, 0.98),
  between(-5, -1).map((power) => 10 ** power),
  between(-5, -1).map((power) => 1 - 10 ** power),
);

/** A repeatable stream of numbers 0…1 (Park and Miller, minimal standard generator, CACM 31(10), 1988). */
export function randomStream(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** A direction spread evenly over the sphere. */
export function randomDown(random: () => number): Vec3 {
  const z = 2 * random() - 1;
  const turn = 2 * Math.PI * random();
  const flat = Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), z];
}
