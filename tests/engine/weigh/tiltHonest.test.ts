import { describe, expect, test } from 'vitest';
import { heightFromTilt } from '../../../src/engine';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const exact = (value: number) => ({ value, sigma: 0 });
const tan = (deg: number) => Math.tan((deg * Math.PI) / 180);

const [massG, wheelbase, aft, above, otherUp] = [5000, 700, 84, 150, 20];

/** The reading by plain moments about the pivot axle, each lever taken level. */
const grams = (deg: number) => (massG * (aft + above * tan(deg))) / (wheelbase + otherUp * tan(deg));

const setup = (
  readings: readonly { readonly deg: number; readonly g: number; readonly sigmaDeg: number }[],
) => ({
  massG: exact(massG),
  pivotMm: [exact(0), exact(0)] as const,
  otherMm: [exact(wheelbase), exact(otherUp)] as const,
  readings: readings.map(({ deg, g, sigmaDeg }) => ({
    pitchDeg: { value: deg, sigma: sigmaDeg },
    readingG: { value: g, sigma: 0.5 },
  })),
});

describe('a poor inclinometer', () => {
  // Either it is told that the angles are too close (all but always), or the ± holds the truth as often as two sigmas should (95 %).
  test.each([
    [2, 0.1],
    [2, 0.5],
    [3, 1],
    [4, 1],
    [9, 1],
    [12, 1],
  ])('level and %d°, each off by a sigma of %f°: an honest ± or none', (deg, sigmaDeg) => {
    const random = randomFrom(deg * 31 + sigmaDeg * 10);
    let [answered, covered] = [0, 0];
    for (let trial = 0; trial < 3000; trial += 1) {
      const answer = heightFromTilt(
        setup(
          [0, deg].map((at) => ({
            deg: at + sigmaDeg * gaussian(random),
            g: grams(at) + 0.5 * gaussian(random),
            sigmaDeg,
          })),
        ),
      );
      if (!answer.ok) continue;
      answered += 1;
      if (Math.abs(answer.waterlineMm.value - above) <= 2 * answer.waterlineMm.sigma) covered += 1;
    }
    if (answered > 0.1 * 3000) expect(covered / answered).toBeGreaterThan(0.93);
  });

  test('is told why', () => {
    const answer = heightFromTilt(setup([0, 3].map((deg) => ({ deg, g: grams(deg), sigmaDeg: 1 }))));
    expect(answer).toEqual({
      ok: false,
      sentence:
        'The angles are too close together for angles that may be off by ±2°: tilt it farther for one of them, or read it better.',
    });
  });
});

test('what a gram more at the steepest tilt makes of the height is what it does, with a level reading or without', () => {
  for (const angles of [
    [0, 12],
    [-12, 12],
    [6, 12],
    [-5, 0, 5, 12],
  ]) {
    const readings = angles.map((deg) => ({ deg, g: grams(deg), sigmaDeg: 0.1 }));
    const answer = heightFromTilt(setup(readings));
    const more = heightFromTilt(setup(readings.with(-1, { deg: 12, g: grams(12) + 1, sigmaDeg: 0.1 })));
    if (!answer.ok || !more.ok) throw new Error('no height');
    const moved = Math.abs(more.waterlineMm.value - answer.waterlineMm.value);
    // The steepest may be either of two that are as steep, one up and one down.
    expect(answer.mmPerG / moved).toBeCloseTo(1, 1);
  }
});
