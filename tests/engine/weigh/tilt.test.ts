import { describe, expect, test } from 'vitest';
import { heightFromTilt, recommendedTilt, type TiltSetup } from '../../../src/engine';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const exact = (value: number) => ({ value, sigma: 0 });
const rad = Math.PI / 180;

/** Net of the scale under the other axle, by plain statics in the earth's frame. */
function reading(
  w: number,
  cg: [number, number],
  pivot: [number, number],
  other: [number, number],
  deg: number,
) {
  const aft = ([x, z]: [number, number]) => x * Math.cos(deg * rad) + z * Math.sin(deg * rad);
  return (w * (aft(cg) - aft(pivot))) / (aft(other) - aft(pivot));
}

function height(setup: TiltSetup) {
  const answer = heightFromTilt(setup);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer;
}

describe('height of the CG', () => {
  test('W 50, CG 0.25 ahead of the mains, wheelbase 0.90, 0.12 above: nose loads at 0°, 10°, 20° (derived from SFTE 7.3)', () => {
    const nose = [13.888889, 12.713376, 11.462421];
    const answer = height({
      massG: exact(50),
      pivotMm: [exact(0), exact(0)],
      otherMm: [exact(-900), exact(0)],
      readings: [0, 10, 20].map((deg, at) => ({ pitchDeg: exact(deg), readingG: exact(nose[at]!) })),
    });
    expect(answer.stationMm.value).toBeCloseTo(-250, 4);
    expect(answer.waterlineMm.value).toBeCloseTo(120, 3);
    for (const left of answer.leftG) expect(left).toBeCloseTo(0, 5);
  });

  test('the identity F0 − F = (V + B·G/C)·W/(C·cot θ + G) with axles at two heights (SFTE handbook 2013, 7.3)', () => {
    const [w, b, c, v, g] = [8000, 210, 760, 95, 40];
    const deg = 14;
    const level = (w * b) / c;
    const tilted = level - ((v + (b * g) / c) * w) / (c / Math.tan(deg * rad) + g);
    const answer = height({
      massG: exact(w),
      pivotMm: [exact(0), exact(0)],
      otherMm: [exact(-c), exact(-g)],
      readings: [
        { pitchDeg: exact(0), readingG: exact(level) },
        { pitchDeg: exact(deg), readingG: exact(tilted) },
      ],
    });
    expect(answer.waterlineMm.value).toBeCloseTo(v, 8);
    expect(answer.stationMm.value).toBeCloseTo(-b, 8);
  });

  test('the raised-axle construction of the VW body-builder guideline 3.5 gives the same height', () => {
    // Front axle raised by a; z above the axle line. Weights on the rear axle, level and raised.
    const [w, l, z, ahead, deg] = [2500, 3000, 650, 1200, 12];
    const cg: [number, number] = [-ahead, z];
    const a = l * Math.sin(deg * rad);
    const front = (at: number) => reading(w, cg, [0, 0], [-l, 0], at);
    const rear1 = front(0);
    const [xh1, rs2] = [(rear1 * l) / w, Math.sqrt(l * l - a * a)];
    const xh2 = (front(deg) * rs2) / w;
    const u = (a * xh2) / rs2;
    const y = xh1 - Math.sqrt(u * u + xh2 * xh2);
    const published = y * Math.tan(Math.acos(a / l));
    const answer = height({
      massG: exact(w),
      pivotMm: [exact(0), exact(0)],
      otherMm: [exact(-l), exact(0)],
      readings: [0, deg].map((at) => ({ pitchDeg: exact(at), readingG: exact(front(at)) })),
    });
    expect(answer.waterlineMm.value).toBeCloseTo(published, 7);
  });

  test('fuel that runs aft as it tilts is taken off where it lies', () => {
    const dry: [number, number] = [700, 35];
    const liquids = [0, 8, 16].map((deg) => ({
      deg,
      massG: 600,
      at: [640 + 2 * deg, -20 + 0.3 * deg] as [number, number],
    }));
    const readings = liquids.map(({ deg, massG, at }) => ({
      pitchDeg: exact(deg),
      readingG: exact(
        reading(5000, dry, [842, -240], [146, -245], deg) + reading(massG, at, [842, -240], [146, -245], deg),
      ),
      liquid: { massG, cgMm: [at[0], 0, at[1]] as const },
    }));
    const answer = height({
      massG: exact(5600),
      pivotMm: [exact(842), exact(-240)],
      otherMm: [exact(146), exact(-245)],
      readings,
    });
    expect(answer.stationMm.value).toBeCloseTo(700, 8);
    expect(answer.waterlineMm.value).toBeCloseTo(35, 8);
  });

  test('the stated ± covers the truth in about 95 of 100, with four angles', () => {
    const random = randomFrom(21);
    let inside = 0;
    const trials = 3000;
    for (let trial = 0; trial < trials; trial += 1) {
      const answer = height({
        massG: { value: 6800 + 4 * gaussian(random), sigma: 4 },
        pivotMm: [
          { value: 842 + gaussian(random), sigma: 1 },
          { value: -240 + gaussian(random), sigma: 1 },
        ],
        otherMm: [
          { value: 146 + gaussian(random), sigma: 1 },
          { value: -245 + gaussian(random), sigma: 1 },
        ],
        readings: [0, 6, 12, 18].map((deg) => ({
          pitchDeg: { value: deg + 0.15 * gaussian(random), sigma: 0.15 },
          readingG: {
            value: reading(6800, [742, 20], [842, -240], [146, -245], deg) + 2 * gaussian(random),
            sigma: 2,
          },
        })),
      });
      if (Math.abs(answer.waterlineMm.value - 20) <= 1.96 * answer.waterlineMm.sigma) inside += 1;
    }
    expect(inside / trials).toBeGreaterThan(0.935);
    expect(inside / trials).toBeLessThan(0.965);
  });

  test('one gram says what L/(W·tan θ) says', () => {
    const answer = height({
      massG: exact(5000),
      pivotMm: [exact(0), exact(0)],
      otherMm: [exact(-700), exact(0)],
      readings: [0, 10].map((deg) => ({ pitchDeg: exact(deg), readingG: exact(1000 - 10 * deg) })),
    });
    expect(answer.mmPerG).toBeCloseTo(700 / (5000 * Math.tan(10 * rad)), 10);
  });

  test('what a reading is off the line by: one of three that reads 3 g more leaves +2 g there and −1 g at its neighbours', () => {
    const answer = height({
      massG: exact(5000),
      pivotMm: [exact(0), exact(0)],
      otherMm: [exact(-700), exact(0)],
      readings: [-10, 0, 10].map((deg) => ({
        pitchDeg: exact(deg),
        readingG: exact(1000 - 40 * Math.tan(deg * rad) + (deg === 0 ? 3 : 0)),
      })),
    });
    expect(answer.leftG).toEqual([expect.closeTo(-1, 9), expect.closeTo(2, 9), expect.closeTo(-1, 9)]);
  });

  test('readings that give no height say why', () => {
    const level = { pitchDeg: exact(0), readingG: exact(1000) };
    const tilted = { pitchDeg: exact(10), readingG: exact(900) };
    const setup: TiltSetup = {
      massG: exact(5000),
      pivotMm: [exact(0), exact(0)],
      otherMm: [exact(-700), exact(0)],
      readings: [level, tilted],
    };
    const refused = (change: Partial<TiltSetup>) => {
      const answer = heightFromTilt({ ...setup, ...change });
      return answer.ok ? '' : answer.sentence;
    };
    const second = (change: Partial<TiltSetup['readings'][number]>) =>
      refused({ readings: [level, { ...tilted, ...change }] });
    expect(refused({})).toBe('');
    expect(refused({ readings: [level] })).toMatch(/Two angles or more are needed, not 1/);
    expect(refused({ massG: exact(0) })).toMatch(/more than 0 g, not 0 g/);
    expect(refused({ massG: exact(Number.NaN) })).toMatch(/more than 0 g/);
    expect(refused({ otherMm: [exact(0.9), exact(0)] })).toMatch(/at one station/);
    expect(refused({ otherMm: [exact(1), exact(0)] })).toBe('');
    expect(refused({ otherMm: [exact(-1), exact(0)] })).toBe('');
    // The tangents 0.03 apart at least.
    const degOf = (tangent: number) => exact(Math.atan(tangent) / rad);
    expect(second({ pitchDeg: degOf(0.0299) })).toMatch(/too close together: tilt it farther/);
    expect(second({ pitchDeg: degOf(0.0301) })).toBe('');
    expect(second({ pitchDeg: degOf(-0.0301) })).toBe('');
    expect(second({ pitchDeg: exact(61) })).toBe('Reading 2: a pitch must be within ±60°, not 61°.');
    expect(second({ pitchDeg: exact(-61) })).toMatch(/not -61°/);
    expect(second({ pitchDeg: exact(60) })).toBe('');
    expect(second({ readingG: exact(-0.26) })).toBe(
      'Reading 2: the scale must read 0 g or more, not -0.3 g.',
    );
    expect(second({ readingG: exact(0) })).toBe('');
    expect(second({ readingG: exact(5000) })).toBe('');
    expect(second({ readingG: exact(5000.04) })).toMatch(/5000 g on one scale is more than the whole/);
    const liquid = (massG: number) => second({ liquid: { massG, cgMm: [0, 0, 0] } });
    expect(liquid(4999)).toBe('');
    expect(liquid(5000)).toMatch(/5000 g of liquid is not less than the whole/);
  });
});

test('the recommended tilt keeps weight on the scale and betters the flatter ones', () => {
  const geometry = {
    massG: { value: 6800, sigma: 2 },
    pivotMm: [exact(842), exact(-240)] as const,
    otherMm: [exact(146), exact(-245)] as const,
  };
  const errors = { readingSigmaG: 2, pitchSigmaDeg: 0.2 };
  const best = recommendedTilt(geometry, [742, 0, 20], errors);
  if (!best) throw new Error('none');
  const left = reading(6800, [742, 20], [842, -240], [146, -245], best.pitchDeg);
  expect(left).toBeGreaterThan(0.03 * 6800);
  const flatter = recommendedTilt(geometry, [742, 0, 20], { ...errors, mostDeg: 6 });
  expect(best.sigmaMm).toBeLessThan(flatter!.sigmaMm);
  // A CG hard by the mains lifts the nose wheel off at once.
  expect(recommendedTilt(geometry, [835, 0, 200], errors)).toBeNull();
});

test('the recommended tilt is the flattest within a tenth of the least error, of all that keep 3 % on either axle', () => {
  const [pivot, other]: [number, number][] = [
    [842, -240],
    [146, -245],
  ];
  const geometry = {
    massG: { value: 6800, sigma: 2 },
    pivotMm: [exact(842), exact(-240)] as const,
    otherMm: [exact(146), exact(-245)] as const,
  };
  const cases = [
    { cg: [742, 20], noseUp: true },
    { cg: [742, 20], noseUp: false },
    { cg: [800, -150], noseUp: true },
    // Nose down the scale under the nose soon carries all of it.
    { cg: [260, 60], noseUp: false },
    { cg: [500, -240], noseUp: true, mostDeg: 12 },
  ] satisfies { cg: [number, number]; noseUp: boolean; mostDeg?: number }[];
  for (const { cg, noseUp, mostDeg = 25 } of cases) {
    const at = (deg: number) => ({
      pitchDeg: { value: deg, sigma: 0.2 },
      readingG: { value: reading(6800, cg, pivot!, other!, deg), sigma: 2 },
    });
    const all: { deg: number; sigmaMm: number }[] = [];
    for (let deg = 5; deg <= mostDeg; deg += 1) {
      const tilted = at(noseUp ? deg : -deg);
      const share = tilted.readingG.value / 6800;
      if (share < 0.03 || share > 0.97) break;
      const { waterlineMm } = height({ ...geometry, readings: [at(0), tilted] });
      all.push({ deg: tilted.pitchDeg.value, sigmaMm: waterlineMm.sigma });
    }
    const least = Math.min(...all.map(({ sigmaMm }) => sigmaMm));
    const flattest = all.find(({ sigmaMm }) => sigmaMm <= 1.1 * least);
    const errors = { readingSigmaG: 2, pitchSigmaDeg: 0.2, noseUp, mostDeg };
    const best = recommendedTilt(geometry, [cg[0], 0, cg[1]], errors);
    expect(best?.pitchDeg).toBe(flattest?.deg);
    if (best) expect(best.sigmaMm / flattest!.sigmaMm).toBeCloseTo(1, 6);
  }
});

test('no tilt is recommended that the angles are too unsure for', () => {
  const geometry = {
    massG: { value: 6800, sigma: 2 },
    pivotMm: [exact(842), exact(-240)] as const,
    otherMm: [exact(146), exact(-245)] as const,
  };
  // Angles that may be off by a sigma of a degree must lie six of them apart: 6·tan 1° is the tangent of 5.98°.
  const best = (mostDeg: number) =>
    recommendedTilt(geometry, [742, 0, 20], { readingSigmaG: 2, pitchSigmaDeg: 1, mostDeg });
  expect(best(5)).toBeNull();
  expect(best(6)?.pitchDeg).toBe(6);
});
