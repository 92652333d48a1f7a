import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { massMove, massRemove, massSum } from '../../../src/engine/mass/massProperties';
import type { LoftSection, PanelShape, Shape } from '../../../src/engine/mass/shapes';
import { sectionBetween } from '../../../src/engine/mass/solids/loft';
import { shellMass } from '../../../src/engine/mass/surfaceProperties';
import type { MassProperties } from '../../../src/engine/mass/types';
import { solidMass } from '../../../src/engine/mass/volumeProperties';
import { expectMass } from './closeTo';
import { fuselage, saddle, wing } from './sampleShapes';

const solid = (shape: Shape): MassProperties => solidMass(shape, 1.3);
const at = (x: number, shape: Shape): MassProperties => massMove(solid(shape), [x, 0, 0]);

describe('a body cut in pieces is the whole', () => {
  test('cylinder, lengthwise', () => {
    const slice = (lengthMm: number): Shape => ({ kind: 'cylinder', lengthMm, diameterMm: 30 });
    expectMass(massSum([at(-35, slice(30)), at(15, slice(70))]), solid(slice(100)), 1e-14);
  });

  test('cylinder, tube in tube', () => {
    const core: Shape = { kind: 'cylinder', lengthMm: 80, diameterMm: 12 };
    const sleeve: Shape = { kind: 'tube', lengthMm: 80, outerDiameterMm: 30, innerDiameterMm: 12 };
    expectMass(massSum([solid(core), solid(sleeve)]), solid({ ...core, diameterMm: 30 }), 1e-14);
  });

  test('cone into a tip and a frustum', () => {
    const whole: Shape = { kind: 'frustum', lengthMm: 90, frontDiameterMm: 0, rearDiameterMm: 60 };
    const tip: Shape = { kind: 'frustum', lengthMm: 30, frontDiameterMm: 0, rearDiameterMm: 20 };
    const rest: Shape = { kind: 'frustum', lengthMm: 60, frontDiameterMm: 20, rearDiameterMm: 60 };
    expectMass(massSum([at(-30, tip), at(15, rest)]), solid(whole), 1e-14);
  });

  test('tapered box', () => {
    const part = (lengthMm: number, front: number, rear: number): Shape => ({
      kind: 'taperedBox',
      lengthMm,
      frontWidthMm: 20 + front,
      frontHeightMm: 50 - front,
      rearWidthMm: 20 + rear,
      rearHeightMm: 50 - rear,
    });
    expectMass(massSum([at(-20, part(20, 0, 10)), at(10, part(40, 10, 30))]), solid(part(60, 0, 30)), 1e-14);
  });

  test('capsule is a cylinder and a sphere sawn in half', () => {
    // Two half spheres: the capsule less its cylinder is a sphere whose halves stand 70 mm apart.
    const capsule = solid({ kind: 'capsule', lengthMm: 120, diameterMm: 50 });
    const cylinder = solid({ kind: 'cylinder', lengthMm: 70, diameterMm: 50 });
    const ends = massRemove(capsule, cylinder);
    const sphere = solid({ kind: 'sphere', diameterMm: 50 });
    expect(ends.massG).toBeCloseTo(sphere.massG, 8);
    // Half-sphere centroid 3r/8 from its flat: Δ∫x² = m(35² + 2 · 35 · 3r/8).
    const grown = sphere.massG * (35 * 35 + 2 * 35 * ((3 * 25) / 8));
    expect(ends.inertiaAboutCgGmm2.yy / (sphere.inertiaAboutCgGmm2.yy + grown)).toBeCloseTo(1, 12);
    expect(ends.inertiaAboutCgGmm2.xx / sphere.inertiaAboutCgGmm2.xx).toBeCloseTo(1, 12);
  });

  test('a channel is a box less a slot', () => {
    const box = solid({ kind: 'box', lengthMm: 40, widthMm: 30, heightMm: 20 });
    const slot = solid({ kind: 'box', lengthMm: 40, widthMm: 9, heightMm: 12 });
    const channel = massRemove(massMove(box, [0, 0, 4]), massMove(slot, [0, 0.5, 8]));
    expectMass(channel, solid(saddle), 1e-13);
  });

  test('loft, cut between two sections', () => {
    const [a, b, c, d] = fuselage.sections as [LoftSection, LoftSection, LoftSection, LoftSection];
    const cut = sectionBetween(b, c, 0.3);
    const front: Shape = { kind: 'loft', sections: [a, b, cut] };
    const rear: Shape = { kind: 'loft', sections: [cut, c, d] };
    expectMass(massSum([solid(front), solid(rear)]), solid(fuselage), 1e-14, 100);
  });

  test('loft skin, less the two faces of the cut', () => {
    const [a, b, c, d] = fuselage.sections as [LoftSection, LoftSection, LoftSection, LoftSection];
    const cut = sectionBetween(b, c, 0.3);
    const skin = (sections: LoftSection[]) => shellMass({ kind: 'loft', sections }, 1e6);
    const area = cut.widthMm * cut.heightMm * (1 - (1 - Math.PI / 4) * cut.roundness ** 2);
    const halves = massSum([skin([a, b, cut]), skin([cut, c, d])]);
    const whole = shellMass(fuselage, 1e6);
    expect((halves.massG - 2 * area) / whole.massG).toBeCloseTo(1, 9);
  });

  test('panel without twist or thinning, cut across the span', () => {
    const plain: PanelShape = { ...wing, rootTwistDeg: 0, tipTwistDeg: 0, tipThickness: wing.rootThickness };
    const inner: PanelShape = { ...plain, spanMm: 240, tipChordMm: 210, sweepMm: 24, riseMm: 16 };
    const outer: PanelShape = { ...plain, spanMm: 360, rootChordMm: 210, sweepMm: 36, riseMm: 24 };
    const joint: Vec3 = [24, 240, 16];
    expectMass(massSum([solid(inner), massMove(solid(outer), joint)]), solid(plain), 1e-13, 600);
  });
});
