import { describe, expect, test } from 'vitest';
import { poseRotation } from '../../../src/engine/geometry/rotation';
import type { Pose } from '../../../src/engine/geometry/types';
import {
  inertiaAbout,
  massAdd,
  massMirror,
  massMove,
  massPoint,
  massRemove,
  massScale,
  massSum,
  massTurn,
  noMass,
} from '../../../src/engine/mass/massProperties';
import { massFault } from '../../../src/engine/mass/principal';
import type { Shape } from '../../../src/engine/mass/shapes';
import type { MassProperties } from '../../../src/engine/mass/types';
import { solidMass, solidOfMass, volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectTensor } from './closeTo';
import { nameOf, sampleShapes } from './sampleShapes';

const askew: Pose = { positionMm: [4, 5, 6], yawDeg: 10, pitchDeg: 20, rollDeg: 30 };

describe('none, zero, negative, not a number', () => {
  const body = massPoint(5, [1, 2, 3]);

  test('nothing weighs nothing and has no CG', () => {
    expect(massSum([])).toBe(noMass);
    expect(massSum([noMass, noMass])).toBe(noMass);
    expect(massPoint(0, [1, 2, 3])).toBe(noMass);
    expect(massScale(body, 0)).toBe(noMass);
    expect(solidOfMass({ kind: 'sphere', diameterMm: 3 }, 0)).toBe(noMass);
    expect(noMass.cgMm).toBeNull();
  });

  test.each([...sampleShapes.map((shape) => [nameOf(shape), shape] as const)])(
    'a %s of no size has no volume, no middle and no inertia, and holds no mass',
    (_, shape) => {
      const none = JSON.parse(JSON.stringify(shape), (key, value) =>
        key.endsWith('Mm') && typeof value === 'number' ? 0 : value,
      ) as Shape;
      const shrunk = none.kind === 'prism' ? { ...none, lengthMm: 0 } : none;
      const { volumeMm3, centroidMm, inertiaAboutCentroidMm5 } = volumeProperties(shrunk);
      expect([volumeMm3, centroidMm]).toEqual([0, null]);
      expectTensor(inertiaAboutCentroidMm5, noMass.inertiaAboutCgGmm2, 0);
      expect(solidMass(shrunk, 1.2)).toBe(noMass);
      expect(solidOfMass(shrunk, 0)).toBe(noMass);
      expect(() => solidOfMass(shrunk, 5)).toThrow(`a ${shape.kind} of no volume cannot hold 5 g`);
    },
  );

  test('nothing added changes nothing', () => {
    expect(massAdd(body, noMass)).toBe(body);
    expect(massAdd(noMass, body)).toBe(body);
    expect(massRemove(body, noMass)).toBe(body);
    expect(massSum([noMass, body, noMass])).toEqual(body);
    for (const same of [
      massMove(noMass, [1, 1, 1]),
      massMirror(noMass),
      massTurn(noMass, poseRotation(askew)),
    ]) {
      expect(same).toBe(noMass);
    }
    expectTensor(inertiaAbout(noMass, [9, 9, 9]), noMass.inertiaAboutCgGmm2, 0);
  });

  test('a body taken out of itself leaves nothing, rounding and all', () => {
    expect(massRemove(body, body)).toBe(noMass);
    const tenths = massSum(Array.from({ length: 10 }, () => massPoint(0.1, [7, 0, 0])));
    expect(tenths.massG).not.toBe(1);
    expect(massRemove(tenths, massPoint(1, [7, 0, 0]))).toBe(noMass);
  });

  test('more cannot come out than is in', () => {
    expect(() => massRemove(body, massPoint(6, [0, 0, 0]))).toThrow('a part of 6 g cannot come out of 5 g');
    expect(() => massRemove(noMass, body)).toThrow('a part of 5 g cannot come out of 0 g');
  });

  test('a density cannot be multiplied by less than zero or by no number', () => {
    expect(() => massScale(body, -1)).toThrow('the factor must be zero or more, not -1');
    expect(() => massScale(body, Number.NaN)).toThrow('the factor must be zero or more, not NaN');
  });

  test.each<[string, MassProperties, string | null]>([
    ['sound', body, null],
    ['none', noMass, null],
    ['negative', massPoint(-2, [0, 0, 0]), 'must be zero or more, not -2 g'],
    ['not a number', massPoint(Number.NaN, [0, 0, 0]), 'must be a number of grams, not NaN'],
    ['mass without CG', { ...body, cgMm: null }, 'A body of 5 g must have a CG'],
    ['CG without mass', { ...body, massG: 0 }, 'no mass cannot have a CG'],
    ['CG not a number', { ...body, cgMm: [0, Number.NaN, 0] }, 'CG must be three numbers'],
    [
      'negative inertia',
      { ...body, inertiaAboutCgGmm2: { xx: 1, yy: 1, zz: -1, xy: 0, xz: 0, yz: 0 } },
      'principal moment of inertia is negative',
    ],
  ])('massFault: %s', (_, m, fault) => {
    if (fault === null) expect(massFault(m)).toBeNull();
    else expect(massFault(m)).toContain(fault);
  });
});
