import { describe, expect, test } from 'vitest';
import { inertiaAbout, massMove, massScale, massSum } from '../../src/engine/mass/massProperties';
import { principalMoments, triangleInequalityFault } from '../../src/engine/mass/principal';
import type { LoftSection, Shape } from '../../src/engine/mass/shapes';
import { shellOfMass } from '../../src/engine/mass/surfaceProperties';
import { diagonalTensor } from '../../src/engine/mass/tensor';
import type { MassProperties, Tensor } from '../../src/engine/mass/types';
import { solidMass, solidOfMass, volumeProperties } from '../../src/engine/mass/volumeProperties';

/**
 * Moments of inertia about the centroid for mass m, from the usual tables: list of moments of inertia
 * and inertia tensors (as republished in encyclopaedias); the same in Beer & Johnston, Meriam & Kraige
 * (app. D) and CRC, from memory. Our axis of revolution is x. Rows marked "derived" follow from the
 * rows before them by the parallel-axis rule or a limit.
 */
const m = 3.7;
const [a, b, c, h] = [30, 22, 14, 90];
const [r, r1] = [18, 11];

const solid = (shape: Shape): Tensor => solidOfMass(shape, m).inertiaAboutCgGmm2;
const shell = (shape: Shape): Tensor => shellOfMass(shape, m).inertiaAboutCgGmm2;

/** Half a dozen roundings. */
function expectDiagonal(t: Tensor, xx: number, yy: number, zz: number, digits = 13): void {
  expect(t.xx / xx).toBeCloseTo(1, digits);
  expect(t.yy / yy).toBeCloseTo(1, digits);
  expect(t.zz / zz).toBeCloseTo(1, digits);
  for (const product of [t.xy, t.xz, t.yz]) expect(Math.abs(product)).toBeLessThan(1e-12 * xx);
}

describe('moments of inertia by the tables', () => {
  test('box: m(b² + c²)/12', () => {
    const t = solid({ kind: 'box', lengthMm: a, widthMm: b, heightMm: c });
    expectDiagonal(t, (m * (b * b + c * c)) / 12, (m * (a * a + c * c)) / 12, (m * (a * a + b * b)) / 12);
  });

  test('cylinder: mr²/2, m(3r² + h²)/12', () => {
    const across = (m * (3 * r * r + h * h)) / 12;
    expectDiagonal(
      solid({ kind: 'cylinder', lengthMm: h, diameterMm: 2 * r }),
      (m * r * r) / 2,
      across,
      across,
    );
  });

  test('thick tube: m(r₁² + r₂²)/2, m(3(r₁² + r₂²) + h²)/12', () => {
    const squares = r * r + r1 * r1;
    const across = (m * (3 * squares + h * h)) / 12;
    const t = solid({ kind: 'tube', lengthMm: h, outerDiameterMm: 2 * r, innerDiameterMm: 2 * r1 });
    expectDiagonal(t, (m * squares) / 2, across, across);
  });

  test('thin tube (derived): mr², m(6r² + h²)/12', () => {
    // Wall 1e-8 of the radius, which is how far the tube is from having none.
    const t = solid({
      kind: 'tube',
      lengthMm: h,
      outerDiameterMm: 2 * r,
      innerDiameterMm: 2 * r * (1 - 1e-8),
    });
    const across = (m * (6 * r * r + h * h)) / 12;
    expectDiagonal(t, m * r * r, across, across, 7);
  });

  test('sphere 2mr²/5, thin spherical shell 2mr²/3', () => {
    const ball: Shape = { kind: 'sphere', diameterMm: 2 * r };
    expectDiagonal(solid(ball), 0.4 * m * r * r, 0.4 * m * r * r, 0.4 * m * r * r);
    const hollow = (2 / 3) * m * r * r;
    expectDiagonal(shell(ball), hollow, hollow, hollow);
  });

  test('ellipsoid: m(b² + c²)/5', () => {
    const t = solid({ kind: 'ellipsoid', lengthMm: 2 * a, widthMm: 2 * b, heightMm: 2 * c });
    expectDiagonal(t, (m * (b * b + c * c)) / 5, (m * (a * a + c * c)) / 5, (m * (a * a + b * b)) / 5);
  });

  test('cone: about the apex 3mr²/10 and m(3h²/5 + 3r²/20); centroid h/4 from the base', () => {
    const cone = solidOfMass({ kind: 'frustum', lengthMm: h, frontDiameterMm: 0, rearDiameterMm: 2 * r }, m);
    expect(cone.cgMm![0]).toBeCloseTo(h / 2 - h / 4, 12);
    const across = m * (0.6 * h * h + 0.15 * r * r);
    expectDiagonal(inertiaAbout(cone, [-h / 2, 0, 0]), 0.3 * m * r * r, across, across);
    // Derived: about the centroid m(3r²/20 + 3h²/80).
    const own = m * (0.15 * r * r + (3 * h * h) / 80);
    expectDiagonal(cone.inertiaAboutCgGmm2, 0.3 * m * r * r, own, own);
  });

  test('slender rod: ml²/12 about the middle, ml²/3 about the end', () => {
    const rod = solidOfMass({ kind: 'cylinder', lengthMm: h, diameterMm: 1e-5 }, m);
    expect(rod.inertiaAboutCgGmm2.yy / ((m * h * h) / 12)).toBeCloseTo(1, 12);
    expect(inertiaAbout(rod, [h / 2, 0, 0]).zz / ((m * h * h) / 3)).toBeCloseTo(1, 12);
  });

  test('frustum (from memory): volume, centroid, axial, and transverse about the small end', () => {
    const whole = solidOfMass(
      { kind: 'frustum', lengthMm: h, frontDiameterMm: 2 * r1, rearDiameterMm: 2 * r },
      m,
    );
    const s = r1 * r1 + r1 * r + r * r;
    const fromFront = (h * (r1 * r1 + 2 * r1 * r + 3 * r * r)) / (4 * s);
    expect(whole.cgMm![0]).toBeCloseTo(fromFront - h / 2, 12);
    const axial = (3 * m * (r1 ** 5 - r ** 5)) / (10 * (r1 ** 3 - r ** 3));
    const across = axial / 2 + (m * h * h * (r1 * r1 + 3 * r1 * r + 6 * r * r)) / (10 * s);
    expectDiagonal(inertiaAbout(whole, [-h / 2, 0, 0]), axial, across, across);
    const volume = volumeProperties({
      kind: 'frustum',
      lengthMm: h,
      frontDiameterMm: 2 * r1,
      rearDiameterMm: 2 * r,
    }).volumeMm3;
    expect(volume / ((Math.PI * h * s) / 3)).toBeCloseTo(1, 14);
  });

  test('I1, capsule r 0.5, cylinder length 1.2: derived by numeric integration', () => {
    const shape: Shape = { kind: 'capsule', lengthMm: 2.2, diameterMm: 1 };
    const unit = solidOfMass(shape, 1).inertiaAboutCgGmm2;
    // Half a unit in the last printed digit.
    expect(volumeProperties(shape).volumeMm3).toBeCloseTo(1.4660766, 7);
    expect(unit.xx).toBeCloseTo(0.11607143, 8);
    expect(unit.yy).toBeCloseTo(0.36196429, 8);
    expect(unit.zz).toBeCloseTo(0.36196429, 8);
  });

  test('I2, elliptic cylinder a 0.6 (y), b 0.4 (z), h 1: derived by numeric integration', () => {
    const end = (xMm: number): LoftSection => ({
      xMm,
      widthMm: 1.2,
      heightMm: 0.8,
      centreYMm: 0,
      centreZMm: 0,
      roundness: 1,
    });
    const t = solidOfMass({ kind: 'loft', sections: [end(-0.5), end(0.5)] }, 1).inertiaAboutCgGmm2;
    expect(t.xx).toBeCloseTo(0.13, 8);
    expect(t.yy).toBeCloseTo(0.12333333, 8);
    expect(t.zz).toBeCloseTo(0.17333333, 8);
  });
});

test('I4, steel forging: Beer & Johnston, Vector Mechanics: Statics, Sample Problem 9.12', () => {
  // 490 lb/ft³, g = 32.2 ft/s². Size and weight seen quoted; positions and answers from memory.
  // Worked in inches: a density in slug/in³ gives slug·in², and 1 slug·in² = 1/144 lb·ft·s².
  const slugPerIn3 = 490 / 32.2 / 1728;
  const inSlugs = (shape: Shape): MassProperties => massScale(solidMass(shape, 1000), slugPerIn3);
  const cylinder = inSlugs({ kind: 'cylinder', lengthMm: 3, diameterMm: 2 });
  const forging = massSum([
    inSlugs({ kind: 'box', lengthMm: 2, widthMm: 6, heightMm: 2 }),
    massMove(cylinder, [2.5, 2, 0]),
    massMove(cylinder, [2.5, -2, 0]),
  ]);
  const { xx, yy, zz } = inertiaAbout(forging, [0, 0, 0]);
  // The book rounds its masses to 0.211 and 0.0829: 0.3 %.
  for (const [ours, printed] of [
    [xx, 10.06e-3],
    [yy, 9.32e-3],
    [zz, 17.84e-3],
  ] as const) {
    expect(Math.abs(ours / 144 / printed - 1)).toBeLessThan(0.003);
  }
});

test('I6, three equal masses: tensor as printed on a course sheet; its eigenvalues 11 ± 4 and 20', () => {
  for (const xy of [4, -4]) {
    const { momentsGmm2 } = principalMoments({ xx: 11, yy: 11, zz: 20, xy, xz: 0, yz: 0 });
    [7, 15, 20].forEach((value, i) => {
      expect(momentsGmm2[i]).toBeCloseTo(value, 13);
    });
  }
});

test('tan 2ε = 2 Ixz / (Iz − Ix), Ixz = +∫xz dm: SFTE Reference Handbook 2013, 7.4.6', () => {
  const [ix, iz, ixz] = [0.07151, 0.15364, 0.014];
  const tilt = 0.5 * Math.atan2(2 * ixz, iz - ix);
  // The stored product is minus the handbook's. The axis of least inertia leans by ε from x.
  const { axes } = principalMoments({ xx: ix, yy: 0.08636, zz: iz, xy: 0, xz: -ixz, yz: 0 });
  expect(axes[0][0]).toBeCloseTo(Math.cos(tilt), 12);
  expect(axes[0][2]).toBeCloseTo(Math.sin(tilt), 12);
});

describe('measured aircraft, kg·m²: can a body have this tensor?', () => {
  // University of Minnesota UAV laboratory, 25-size trainer; Ixz = +∫xz dm = 0.014 as published.
  const trainer: Tensor = { xx: 0.07151, yy: 0.08636, zz: 0.15364, xy: 0, xz: -0.014, yz: 0 };

  test.each<[string, Tensor]>([
    ['D2, the trainer’s three moments', { ...trainer, xz: 0 }],
    // Another airframe of the type.
    ['D3', diagonalTensor(0.0438, 0.0838, 0.119)],
    // TU Braunschweig, flying wing.
    ['D4', diagonalTensor(0.0179, 0.0113, 0.0287)],
  ])('%s can', (_, tensor) => {
    expect(triangleInequalityFault(tensor)).toBeNull();
  });

  test('D2 with its product cannot: about its principal axes the set is 0.3 % out', () => {
    // Derived by hand: (Ix + Iz)/2 ± √(((Iz − Ix)/2)² + Ixz²) = 0.155961 and 0.069189; the largest
    // exceeds 0.069189 + 0.08636 = 0.155549. The three moments alone do not show it.
    const [mean, half] = [(0.07151 + 0.15364) / 2, (0.15364 - 0.07151) / 2];
    const [small, , large] = principalMoments(trainer).momentsGmm2;
    expect(large).toBeCloseTo(mean + Math.hypot(half, 0.014), 14);
    expect(small).toBeCloseTo(mean - Math.hypot(half, 0.014), 14);
    expect(triangleInequalityFault(trainer)).toContain('more than the sum of the other two');
  });

  test('D5, a quadrotor frame swung on a trifilar pendulum, cannot: it is 3 % out', () => {
    expect(triangleInequalityFault(diagonalTensor(0.0176, 0.0176, 0.0362))).toBe(
      'The largest principal moment, 0.0362, is more than the sum of the other two, 0.0176 and 0.0176.',
    );
  });
});
