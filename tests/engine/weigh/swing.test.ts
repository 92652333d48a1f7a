import { describe, expect, test } from 'vitest';
import { airSwungAlong, inertiaFromSwing, periodOfRuns, runOfTaps, type Swing } from '../../../src/engine';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const exact = (value: number) => ({ value, sigma: 0 });

function inertia(swing: Swing, options = {}) {
  const answer = inertiaFromSwing(swing, options);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer.inertiaGmm2;
}

describe('inertia from a swing', () => {
  test('small fixed-wing aircraft, 0.980 kg, half spacing 0.175 m, threads 1.55 m, 9 periods in 16.5 s: 0.0161 kg·m² (bartslinger.com, measuring the moment of inertia of a UAV)', () => {
    const answer = inertia(
      {
        kind: 'bifilar',
        massG: exact(980),
        spacingMm: exact(350),
        lengthMm: exact(1550),
        periodS: exact(16.5 / 9),
      },
      { gravityMmS2: 9810 },
    );
    // The print is cut off, not rounded.
    expect(Math.floor(answer.value * 1e-9 * 1e4) / 1e4).toBe(0.0161);
  });

  test('a rod on two end threads swings with T = 2π√(l/3g) whatever its length (Irodov, Problems in General Physics, 4.45)', () => {
    for (const rod of [200, 650, 1500]) {
      const answer = inertia(
        {
          kind: 'bifilar',
          massG: exact(1500),
          spacingMm: exact(rod),
          lengthMm: exact(900),
          periodS: exact(2 * Math.PI * Math.sqrt(900 / 3 / 9810)),
        },
        { gravityMmS2: 9810 },
      );
      expect(answer.value / ((1500 * rod ** 2) / 12)).toBeCloseTo(1, 12);
    }
  });

  test('compound: a rod swung from its end, T = 2π√(2L/3g) (standard result), gives mL²/12', () => {
    const [m, long] = [800, 1200];
    const answer = inertia({
      kind: 'compound',
      massG: exact(m),
      armMm: exact(long / 2),
      periodS: exact(2 * Math.PI * Math.sqrt((2 * long) / (3 * 9806.65))),
    });
    expect(answer.value / ((m * long ** 2) / 12)).toBeCloseTo(1, 10);
  });

  test('trifilar: the plate swung alone is taken off', () => {
    const [r, h, g] = [250, 1400, 9806.65];
    const period = (m: number, i: number) => 2 * Math.PI * Math.sqrt((i * h) / (m * g * r * r));
    const [plateG, plateI, m, i] = [600, (600 * 300 ** 2) / 2, 2100, 8e7];
    const answer = inertia({
      kind: 'trifilar',
      massG: exact(m),
      radiusMm: exact(r),
      lengthMm: exact(h),
      periodS: exact(period(plateG + m, plateI + i)),
      plate: { massG: exact(plateG), periodS: exact(period(plateG, plateI)) },
    });
    expect(answer.value / i).toBeCloseTo(1, 12);
  });

  test('a wide swing is brought to a small one: the pendulum’s exact period, by its elliptic integral', () => {
    const amplitude = 20;
    const k = Math.sin((amplitude * Math.PI) / 360);
    // Arithmetic-geometric mean: K(k) = π/(2·agm(1, √(1 − k²))).
    let [a, b] = [1, Math.sqrt(1 - k * k)];
    for (let pass = 0; pass < 8; pass += 1) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    const [m, arm, i] = [3000, 400, 2e8];
    const small = 2 * Math.PI * Math.sqrt((i + m * arm ** 2) / (m * 9806.65 * arm));
    const swing = {
      kind: 'compound',
      massG: exact(m),
      armMm: exact(arm),
      periodS: exact(small / a),
    } as const;
    expect(inertia(swing, { amplitudeDeg: amplitude }).value / i).toBeCloseTo(1, 3);
    expect(Math.abs(inertia(swing).value / i - 1)).toBeGreaterThan(0.03);
  });

  test('the stated ± covers the truth', () => {
    const random = randomFrom(31);
    const [m, d, h, i] = [2100, 620, 1600, 1.1e8];
    const period = 4 * Math.PI * Math.sqrt((i * h) / (m * 9806.65 * d * d));
    let inside = 0;
    for (let trial = 0; trial < 3000; trial += 1) {
      const answer = inertia({
        kind: 'bifilar',
        massG: { value: m + 3 * gaussian(random), sigma: 3 },
        spacingMm: { value: d + 2 * gaussian(random), sigma: 2 },
        lengthMm: { value: h + 4 * gaussian(random), sigma: 4 },
        periodS: { value: period * (1 + 0.01 * gaussian(random)), sigma: 0.01 * period },
      });
      if (Math.abs(answer.value - i) <= 1.96 * answer.sigma) inside += 1;
    }
    expect(inside / 3000).toBeGreaterThan(0.935);
    expect(inside / 3000).toBeLessThan(0.965);
  });

  test('figures that leave no inertia are refused', () => {
    const answer = inertiaFromSwing({
      kind: 'compound',
      massG: exact(1000),
      armMm: exact(1000),
      periodS: exact(1),
    });
    expect(answer.ok ? '' : answer.sentence).toMatch(/leave no inertia/);
  });
});

describe('period', () => {
  test('one run miscounted by a swing does no harm', () => {
    const answer = periodOfRuns([
      { swings: 20, timeS: 40.1 },
      { swings: 20, timeS: 39.9 },
      { swings: 20, timeS: 42 },
      { swings: 20, timeS: 40 },
      { swings: 20, timeS: 40.05 },
    ]);
    expect(answer.ok && answer.value).toBeCloseTo(2.0025, 6);
  });

  test('a tap left out counts as two swings, a late one does no harm', () => {
    const taps = [0, 2, 4, 8, 10, 12.4, 14, 16];
    const run = runOfTaps(taps);
    expect(run).toMatchObject({ ok: true, swings: 8 });
    expect(run.ok && run.timeS / run.swings).toBeCloseTo(2, 6);
  });

  test('the stated ± of the median covers the truth, or says rather too much', () => {
    const random = randomFrom(32);
    let inside = 0;
    for (let trial = 0; trial < 3000; trial += 1) {
      const runs = Array.from({ length: 7 }, () => ({ swings: 10, timeS: 20 + 0.1 * gaussian(random) }));
      const answer = periodOfRuns(runs);
      if (answer.ok && Math.abs(answer.value - 2) <= 1.96 * answer.sigma) inside += 1;
    }
    expect(inside / 3000).toBeGreaterThan(0.945);
  });

  test('no run, and a run of no swings, are refused', () => {
    expect(periodOfRuns([])).toMatchObject({ ok: false });
    expect(periodOfRuns([{ swings: 0, timeS: 3 }])).toMatchObject({
      ok: false,
      sentence: expect.stringMatching(/Run 1/),
    });
  });
});

test('the air of a flat wing in roll: ρ·π·c²·b³/48, by hand', () => {
  const [c, b] = [250, 2000];
  const strips = Array.from({ length: 400 }, (_, at) => ({
    centreMm: [0, -b / 2 + (b / 400) * (at + 0.5), 0] as const,
    along: [0, 1, 0] as const,
    normal: [0, 0, 1] as const,
    spanMm: b / 400,
    chordMm: c,
  }));
  const byHand = (1.225e-6 * Math.PI * c ** 2 * b ** 3) / 48;
  expect(airSwungAlong(strips, [1, 0, 0], [0, 0, 0]).value / byHand).toBeCloseTo(1, 4);
});
