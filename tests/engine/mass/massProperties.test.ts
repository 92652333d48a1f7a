import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mirrorPose, pointToAircraft, poseRotation } from '../../../src/engine/geometry/rotation';
import type { Pose, Vec3 } from '../../../src/engine/geometry/types';
import {
  inertiaAbout,
  massAdd,
  massMirror,
  massMove,
  massPlace,
  massRemove,
  massSum,
  massTurn,
  noMass,
} from '../../../src/engine/mass/massProperties';
import type { BoxShape } from '../../../src/engine/mass/shapes';
import { tensorScale } from '../../../src/engine/mass/tensor';
import type { MassProperties } from '../../../src/engine/mass/types';
import { solidMass, solidOfMass } from '../../../src/engine/mass/volumeProperties';
import { between } from '../../between';
import { expectMass, expectTensor } from './closeTo';
import { bruteForce, type PointMass } from './pointMasses';

const size = between(1, 200);
const coordinate = between(-1500, 1500);
const angle = between(-180, 180);

interface Placed {
  readonly shape: BoxShape;
  readonly massG: number;
  readonly pose: Pose;
}

const placedBoxes = fc.record<Placed>({
  shape: fc.record<BoxShape>({
    kind: fc.constant('box'),
    lengthMm: size,
    widthMm: size,
    heightMm: size,
  }),
  massG: between(0.1, 900),
  pose: fc.record({
    positionMm: fc.tuple(coordinate, coordinate, coordinate),
    yawDeg: angle,
    pitchDeg: angle,
    rollDeg: angle,
  }),
});
const assemblies = fc.array(placedBoxes, { minLength: 1, maxLength: 40 });

const placed = ({ shape, massG, pose }: Placed): MassProperties => massPlace(solidOfMass(shape, massG), pose);

/**
 * Eight equal points at ±side/√12 have a box's mass, CG and inertia exactly (two-point
 * Gauss–Legendre on each axis; a² / 12 is the second moment of a line of length a).
 */
function asPoints({ shape, massG, pose }: Placed): PointMass[] {
  const signs = [-1, 1];
  return signs.flatMap((x) =>
    signs.flatMap((y) =>
      signs.map((z): PointMass => {
        const corner: Vec3 = [x * shape.lengthMm, y * shape.widthMm, z * shape.heightMm];
        const inside = corner.map((side) => side / Math.sqrt(12)) as unknown as Vec3;
        return { massG: massG / 8, atMm: pointToAircraft(pose, inside) };
      }),
    ),
  );
}

// 1e-12 of the mass and trace, and of a 1500 mm reach: float64 with a few dozen roundings.
const tight = 1e-12;
const reach = 1500;

describe('assemblies against point masses added up from the definitions', () => {
  test('massSum', () => {
    fc.assert(
      fc.property(assemblies, (bodies) => {
        expectMass(massSum(bodies.map(placed)), bruteForce(bodies.flatMap(asPoints)), tight, reach);
      }),
    );
  });

  test('massAdd one by one', () => {
    fc.assert(
      fc.property(assemblies, (bodies) => {
        const sum = bodies.map(placed).reduce(massAdd, noMass);
        expectMass(sum, bruteForce(bodies.flatMap(asPoints)), tight, reach);
      }),
    );
  });

  test('inertia about another point', () => {
    fc.assert(
      fc.property(assemblies, coordinate, coordinate, coordinate, (bodies, x, y, z) => {
        const about = inertiaAbout(massSum(bodies.map(placed)), [x, y, z]);
        // With its mirror image through P the heap has its CG at P and twice its inertia about P.
        const points = bodies.flatMap(asPoints);
        const mirrored = points.map(
          ({ massG, atMm }): PointMass => ({
            massG,
            atMm: [2 * x - atMm[0], 2 * y - atMm[1], 2 * z - atMm[2]],
          }),
        );
        const both = bruteForce([...points, ...mirrored]).inertiaAboutCgGmm2;
        expectTensor(about, tensorScale(both, 0.5), tight);
      }),
    );
  });
});

describe('laws of the algebra', () => {
  test('order does not matter', () => {
    fc.assert(
      fc.property(assemblies, (bodies) => {
        const list = bodies.map(placed);
        const forwards = massSum(list);
        expectMass(massSum(list.toReversed()), forwards, tight, reach);
        const half = Math.floor(list.length / 2);
        expectMass(massAdd(massSum(list.slice(half)), massSum(list.slice(0, half))), forwards, tight, reach);
      }),
    );
  });

  test('taking a body out undoes putting it in', () => {
    fc.assert(
      fc.property(placedBoxes, placedBoxes, (a, b) => {
        const [base, part] = [placed(a), placed(b)];
        const back = massRemove(massAdd(base, part), part);
        // What is lost is of the sum's size, not of what is left.
        const lost = (base.massG + part.massG) / base.massG;
        expect(back.massG).toBeCloseTo(base.massG, 9);
        for (const axis of [0, 1, 2] as const) {
          expect(Math.abs(back.cgMm![axis] - base.cgMm![axis])).toBeLessThan(1e-12 * reach * lost * 4);
        }
        const size = massAdd(base, part).inertiaAboutCgGmm2;
        const room = 1e-12 * lost * (size.xx + size.yy + size.zz);
        expect(Math.abs(back.inertiaAboutCgGmm2.xx - base.inertiaAboutCgGmm2.xx)).toBeLessThan(room);
        expect(Math.abs(back.inertiaAboutCgGmm2.yz - base.inertiaAboutCgGmm2.yz)).toBeLessThan(room);
        expect(Math.abs(back.inertiaAboutCgGmm2.xz - base.inertiaAboutCgGmm2.xz)).toBeLessThan(room);
      }),
    );
  });

  test('turning an assembly turns every body in it', () => {
    fc.assert(
      fc.property(assemblies, placedBoxes, (bodies, { pose }) => {
        const list = bodies.map(placed);
        const r = poseRotation(pose);
        expectMass(massTurn(massSum(list), r), massSum(list.map((m) => massTurn(m, r))), tight, reach);
      }),
    );
  });

  test('mirror: CG y and exactly the products xy and yz change sign', () => {
    fc.assert(
      fc.property(placedBoxes, (body) => {
        const m = placed(body);
        const [x, y, z] = m.cgMm!;
        const { xx, yy, zz, xy, xz, yz } = m.inertiaAboutCgGmm2;
        expect(massMirror(m)).toEqual({
          massG: m.massG,
          cgMm: [x, -y, z],
          inertiaAboutCgGmm2: { xx, yy, zz, xy: -xy, xz, yz: -yz },
        });
      }),
    );
  });

  test('a left part from a right one: mirror the body and its pose', () => {
    fc.assert(
      fc.property(placedBoxes, placedBoxes, (inner, { pose }) => {
        const body = placed(inner);
        const left = massPlace(massMirror(body), mirrorPose(pose));
        expectMass(left, massMirror(massPlace(body, pose)), tight, 2 * reach);
      }),
    );
  });

  test('a far-away datum costs no digits of the inertia', () => {
    // 1e9 mm off, a raw ∫x² dm would lose all 16 digits.
    const box: BoxShape = { kind: 'box', lengthMm: 1, widthMm: 2, heightMm: 4 };
    const far = (x: number) => massMove(solidMass(box, 1000), [1e9 + x, -1e9, 1e9]);
    const near = (x: number) => massMove(solidMass(box, 1000), [x, 0, 0]);
    const expected = massSum([near(-4), near(4)]).inertiaAboutCgGmm2;
    expectTensor(massSum([far(-4), far(4)]).inertiaAboutCgGmm2, expected, 1e-15);
    expectTensor(massAdd(far(-4), far(4)).inertiaAboutCgGmm2, expected, 1e-15);
    const left = massRemove(massAdd(far(-4), far(4)), far(4));
    expectTensor(left.inertiaAboutCgGmm2, near(0).inertiaAboutCgGmm2, 1e-14);
  });
});

describe('three cubes are one box', () => {
  // Catches the wrong sign of the parallel-axis term, which single shapes cannot show.
  const cube = solidMass({ kind: 'box', lengthMm: 10, widthMm: 10, heightMm: 10 }, 1.4);
  test.each<[string, Vec3, BoxShape]>([
    ['along x', [10, 0, 0], { kind: 'box', lengthMm: 30, widthMm: 10, heightMm: 10 }],
    ['along y', [0, 10, 0], { kind: 'box', lengthMm: 10, widthMm: 30, heightMm: 10 }],
    ['along z', [0, 0, 10], { kind: 'box', lengthMm: 10, widthMm: 10, heightMm: 30 }],
  ])('%s', (_, [x, y, z], box) => {
    const cubes = massSum([massMove(cube, [-x, -y, -z]), cube, massMove(cube, [x, y, z])]);
    expectMass(cubes, solidMass(box, 1.4), 1e-15, 30);
  });

  test('and askew, with products', () => {
    const pose: Pose = { positionMm: [300, -80, 45], yawDeg: 31, pitchDeg: -17, rollDeg: 76 };
    const row = [-10, 0, 10].map((x) => massMove(cube, [x, 0, 0]));
    const askew = massPlace(solidMass({ kind: 'box', lengthMm: 30, widthMm: 10, heightMm: 10 }, 1.4), pose);
    const bit = Math.abs(askew.inertiaAboutCgGmm2.xy) / askew.inertiaAboutCgGmm2.xx;
    expect(bit).toBeGreaterThan(0.1);
    expectMass(massSum(row.map((m) => massPlace(m, pose))), askew, 1e-14, 300);
  });
});
