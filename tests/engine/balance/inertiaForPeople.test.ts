import fc from 'fast-check';
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { equivalentBox, inertiaForPeople, tiltDeg } from '../../../src/engine/balance/inertiaForPeople';
import { poseRotation } from '../../../src/engine/geometry/rotation';
import { dot } from '../../../src/engine/geometry/vec3';
import { massPlace, massPoint, massSum, noMass } from '../../../src/engine/mass/massProperties';
import type { MassProperties } from '../../../src/engine/mass/types';
import { solidOfMass } from '../../../src/engine/mass/volumeProperties';
import { between } from '../../between';

/** Kilograms and metres to a body, its product of inertia given as +∫xz dm. */
const published = (kg: number, xx: number, yy: number, zz: number, product = 0): MassProperties => ({
  massG: kg * 1000,
  cgMm: [0, 0, 0],
  inertiaAboutCgGmm2: { xx: xx * 1e9, yy: yy * 1e9, zz: zz * 1e9, xy: 0, xz: -product * 1e9, yz: 0 },
});
const side = between(20, 1500);
const angle = between(-80, 80);

describe('the equivalent box', () => {
  test('a box anywhere at any angle gives itself back', () => {
    fc.assert(
      fc.property(
        side,
        side,
        side,
        angle,
        angle,
        angle,
        (lengthMm, widthMm, heightMm, yawDeg, pitchDeg, rollDeg) => {
          const pose = { positionMm: [430, -20, 60] as const, yawDeg, pitchDeg, rollDeg };
          const box = equivalentBox(
            massPlace(solidOfMass({ kind: 'box', lengthMm, widthMm, heightMm }, 3400), pose),
          )!;
          const sides = [lengthMm, widthMm, heightMm];
          const longest = Math.max(...sides);
          sides.sort((a, b) => b - a);
          // A side is the root of a difference of squares, so a thin one keeps fewer digits.
          box.sidesMm.forEach((found, k) => {
            expect(Math.abs(found ** 2 - sides[k]! ** 2)).toBeLessThan(1e-9 * longest ** 2);
          });
          const r = poseRotation(pose);
          if (lengthMm > 1.01 * Math.max(widthMm, heightMm)) {
            expect(Math.abs(dot(box.axes[0], [r[0], r[3], r[6]]))).toBeCloseTo(1, 6);
          }
          box.centreMm.forEach((x, axis) => {
            expect(x).toBeCloseTo(pose.positionMm[axis]!, 9);
          });
        },
      ),
    );
  });

  /**
   * University of Minnesota UAV lab, two small model aeroplanes; TU Braunschweig, a flying wing: mass and moments as
   * restated in open configuration files. The box must have the published moments, m(b² + c²)/12 about each axis.
   */
  test.each([
    ['trainer, level axes', published(1.959, 0.07151, 0.08636, 0.15364)],
    ['another of the type', published(1.793, 0.0438, 0.0838, 0.119)],
    ['flying wing', published(1.1, 0.0179, 0.0113, 0.0287)],
  ])('%s: a box with the published inertia, and no warning', (_, body) => {
    const found = inertiaForPeople(body)!;
    expect(found.warning).toBeNull();
    const [a, b, c] = found.box!.sidesMm;
    const moments = [b * b + c * c, a * a + c * c, a * a + b * b].map((sum) => (body.massG * sum) / 12);
    const { xx, yy, zz } = body.inertiaAboutCgGmm2;
    const rising = [xx, yy, zz].sort((p, q) => p - q);
    moments.forEach((moment, k) => {
      expect(moment / rising[k]!).toBeCloseTo(1, 9);
    });
    expect(found.radiiMm![2]).toBeCloseTo(1000 * Math.sqrt(zz / 1e9 / (body.massG / 1000)), 6);
  });

  /** A quadrotor's frame by trifilar pendulum, a published measured set: 0.0176 + 0.0176 < 0.0362. */
  test('a measured set that no body can have is warned of and has no box', () => {
    const found = inertiaForPeople(published(1.48, 0.0176, 0.0176, 0.0362))!;
    expect(found.warning).toContain('more than the sum of the other two');
    expect(found.box).toBeNull();
    expect(found.radiiMm![2]).toBeCloseTo(1000 * Math.sqrt(0.0362 / 1.48), 6);
  });

  /**
   * The trainer with its published product of 0.014. Its moments about x, y, z obey, but turned to the principal axes,
   * (xx + zz)/2 ± √(((zz − xx)/2)² + 0.014²), they do not: 0.06919 + 0.08636 < 0.15596, by 0.3 %.
   */
  test('a published set that only its principal moments give away', () => {
    const body = published(1.959, 0.07151, 0.08636, 0.15364, 0.014);
    const found = inertiaForPeople(body)!;
    const half = Math.hypot((0.15364 - 0.07151) / 2, 0.014);
    const mean = (0.15364 + 0.07151) / 2;
    [mean - half, 0.08636, mean + half].forEach((moment, k) => {
      expect(found.principal.momentsGmm2[k]! / 1e9).toBeCloseTo(moment, 10);
    });
    expect(found.warning).toContain('more than the sum of the other two');
    expect(found.box).toBeNull();
  });

  test('no mass, a point, a negative moment', () => {
    expect(inertiaForPeople(noMass)).toBeNull();
    expect(equivalentBox(massPoint(50, [1, 2, 3]))).toMatchObject({
      centreMm: [1, 2, 3],
      sidesMm: [0, 0, 0],
    });
    const negative = inertiaForPeople(published(1, -0.01, 0.02, 0.02))!;
    expect(negative.radiiMm).toBeNull();
    expect(negative.warning).toContain('negative');
  });
});

describe('tilt of the principal axis', () => {
  /** Two masses in the plane of symmetry, the line between them at 20° over the x axis, high at the tail. */
  test('is positive when the long axis rises towards the tail', () => {
    const tilt = (20 * Math.PI) / 180;
    const end = [300 * Math.cos(tilt), 0, 300 * Math.sin(tilt)] as const;
    const rod = massSum([massPoint(100, end), massPoint(100, [-end[0], 0, -end[2]])]);
    expect(tiltDeg(rod.inertiaAboutCgGmm2)).toBeCloseTo(20, 9);
    const nose = massPlace(rod, { positionMm: [0, 0, 0], yawDeg: 0, pitchDeg: 25, rollDeg: 0 });
    // Pitched nose up by 25° the tail comes down by as much.
    expect(tiltDeg(nose.inertiaAboutCgGmm2)).toBeCloseTo(-5, 9);
  });

  /** SFTE Flight Test Engineering Reference Handbook, 7.4.6, with the Minnesota trainer's figures. */
  test('the handbook’s formula, and the axis that an outside library finds', () => {
    const body = published(1.959, 0.07151, 0.08636, 0.15364, 0.014);
    const tilt = (Math.atan((2 * 0.014) / (0.15364 - 0.07151)) * 90) / Math.PI;
    expect(tiltDeg(body.inertiaAboutCgGmm2)).toBeCloseTo(tilt, 9);
    const { xx, zz, xz } = body.inertiaAboutCgGmm2;
    const eigen = new EigenvalueDecomposition(
      new Matrix([
        [xx, xz],
        [xz, zz],
      ]),
    );
    const least = eigen.realEigenvalues.indexOf(Math.min(...eigen.realEigenvalues));
    const [x, z] = eigen.eigenvectorMatrix.getColumn(least) as [number, number];
    expect(tiltDeg(body.inertiaAboutCgGmm2)).toBeCloseTo((Math.atan(z / x) * 180) / Math.PI, 6);
  });

  test('level axes: 0, or a quarter turn when the long axis stands upright', () => {
    expect(tiltDeg({ xx: 1, yy: 2, zz: 3, xy: 0, xz: 0, yz: 0 })).toBe(0);
    expect(tiltDeg({ xx: 3, yy: 2, zz: 1, xy: 0, xz: 0, yz: 0 })).toBe(90);
    expect(tiltDeg({ xx: 3, yy: 2, zz: 3, xy: 0, xz: 0, yz: 0 })).toBe(0);
  });
});
