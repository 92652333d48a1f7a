import { describe, expect, test } from 'vitest';
import { anglesOf, poseRotation, rotationProduct } from '../../../src/engine/geometry/rotation';
import type { Mat3 } from '../../../src/engine/geometry/types';
import { placeOptions } from '../../../src/model/place/placeOptions';
import { turned, turnsOf } from '../../../src/model/place/turns';
import { randomFrom } from '../../randomFrom';
import { seed } from '../../seed';
import { boxPart } from '../aircraft';
import { gridCase } from './gridCases';

const transposed = (m: Mat3): Mat3 => [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];
const whole = (m: Mat3) => m.map((value) => Math.round(value) + 0).join(' ');
const isWhole = (m: Mat3) => m.every((value) => Math.abs(value - Math.round(value)) < 1e-7);

/** The rotations of a cube: every order of the axes with every choice of signs whose determinant is 1. */
function cubeRotations(): Set<string> {
  const found = new Set<string>();
  for (const [a, b, c] of [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
  ] as const) {
    for (let signs = 0; signs < 8; signs++) {
      const m = Array.from({ length: 9 }, () => 0);
      [a, b, c].forEach((column, row) => {
        m[row * 3 + column] = (signs >> row) & 1 ? -1 : 1;
      });
      const [p, q, r, s, t, u, v, w, x] = m as unknown as Mat3;
      const determinant = p * (t * x - u * w) - q * (s * x - u * v) + r * (s * w - t * v);
      if (determinant === 1) found.add(whole(m as unknown as Mat3));
    }
  }
  return found;
}

describe('how a part may be turned', () => {
  const random = randomFrom(seed);
  const angle = () => Math.round((random() - 0.5) * 3600) / 10;
  const stands = [
    { yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
    { yawDeg: 30, pitchDeg: 90, rollDeg: -20 },
    { yawDeg: 0, pitchDeg: -90, rollDeg: 90 },
    ...Array.from({ length: 5 }, () => ({ yawDeg: angle(), pitchDeg: angle() / 2, rollDeg: angle() })),
  ];

  test.each(stands)('any side down is each of the 24 rotations of a cube once, from %o', (pose) => {
    const part = { ...boxPart('pack', 100, [0, 0, 0]), ...pose, mayTurn: 'any' } as const;
    const back = transposed(poseRotation({ positionMm: [0, 0, 0], ...pose }));
    const made = turnsOf(part).map(({ angles }) => {
      const by = rotationProduct(poseRotation(turned(part, angles)), back);
      expect(isWhole(by)).toBe(true);
      return whole(by);
    });
    expect(made).toHaveLength(24);
    expect(new Set(made)).toEqual(cubeRotations());
  });

  test('flat keeps what is up up, and a part that says nothing is not turned', () => {
    const part = boxPart('pack', 100, [0, 0, 0]);
    expect(turnsOf(part)).toHaveLength(1);
    const flat = turnsOf({ ...part, mayTurn: 'flat' }).map(({ angles }) =>
      poseRotation(turned(part, angles)),
    );
    expect(flat).toHaveLength(4);
    for (const m of flat) expect([m[2], m[5], m[8]]).toEqual([0, 0, 1].map((v) => expect.closeTo(v, 9)));
  });

  test('angles come back from the rotation that they make', () => {
    for (const pose of stands) {
      const r = poseRotation({ positionMm: [0, 0, 0], ...pose });
      const again = poseRotation({ positionMm: [0, 0, 0], ...anglesOf(r) });
      again.forEach((value, i) => {
        expect(value).toBeCloseTo(r[i]!, 6);
      });
    }
  });
});

describe('a part stood on end in a tube', () => {
  test('whose top would touch the ceiling goes all along the tube about its middle', () => {
    // From low it stands at −15 mm and is 47 mm high: 32 mm, where the inner face is and 0.3 mm of air should be.
    const { aircraft } = gridCase(314);
    const [part] = aircraft.parts;
    const onEnd = placeOptions(aircraft, part!, { by: 'rail', stations: 'hull' }).filter(
      ({ sizeMm }) => sizeMm[2] > 46,
    );
    expect(onEnd.length).toBeGreaterThan(0);
    for (const { region } of onEnd) {
      expect(region.minMm).toEqual([
        expect.closeTo(0.3, 6),
        expect.closeTo(-31.7, 6),
        expect.closeTo(-23.5, 6),
      ]);
      expect(region.maxMm).toEqual([
        expect.closeTo(399.7, 6),
        expect.closeTo(31.7, 6),
        expect.closeTo(23.5, 6),
      ]);
    }
  });
});
