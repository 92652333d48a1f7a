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

  test('without a plate a ring on three threads swings with T = 2π√(h/g) (I = m·r², from memory)', () => {
    const swing: Swing = {
      kind: 'trifilar',
      massG: exact(900),
      radiusMm: exact(300),
      lengthMm: exact(1200),
      periodS: exact(2 * Math.PI * Math.sqrt(1200 / 9806.65)),
    };
    expect(inertia(swing).value / (900 * 300 ** 2)).toBeCloseTo(1, 12);
  });

  test('the air is taken off, with its own error', () => {
    const swing: Swing = {
      kind: 'bifilar',
      massG: exact(1500),
      spacingMm: exact(600),
      lengthMm: exact(900),
      periodS: exact(2 * Math.PI * Math.sqrt(900 / 3 / 9806.65)),
    };
    const rod = (1500 * 600 ** 2) / 12;
    const answer = inertiaFromSwing(swing, { airGmm2: { value: 0.1 * rod, sigma: 0.025 * rod } });
    expect(answer.ok && answer.airGmm2).toBe(0.1 * rod);
    expect(answer.ok && answer.inertiaGmm2.value / rod).toBeCloseTo(0.9, 12);
    expect(answer.ok && answer.inertiaGmm2.sigma / rod).toBeCloseTo(0.025, 9);
    expect(inertiaFromSwing(swing)).toMatchObject({ airGmm2: 0 });
    // More air than was swung: nothing is left.
    expect(inertiaFromSwing(swing, { airGmm2: exact(rod) })).toMatchObject({ ok: false });
  });

  test('what gives no inertia says why', () => {
    const refused = (swing: Swing, amplitudeDeg?: number) => {
      const answer = inertiaFromSwing(swing, amplitudeDeg === undefined ? {} : { amplitudeDeg });
      return answer.ok ? '' : answer.sentence;
    };
    const [massG, periodS, lengthMm] = [exact(1000), exact(1.8), exact(900)];
    const compound: Swing = { kind: 'compound', massG, armMm: exact(300), periodS };
    expect(refused({ ...compound, armMm: exact(1000), periodS: exact(1) })).toMatch(/leave no inertia/);
    expect([refused(compound, 0), refused(compound, 45)]).toEqual(['', '']);
    expect(refused(compound, 45.1)).toMatch(/0° to 45° to each side, not 45.1°/);
    expect(refused(compound, -1)).toMatch(/not -1°/);
    expect(refused(compound, Number.NaN)).toMatch(/0° to 45°/);
    expect(refused({ ...compound, armMm: exact(0) })).toBe('Axis to CG: expected more than 0, got 0.');
    expect(refused({ ...compound, periodS: exact(Number.POSITIVE_INFINITY) })).toMatch(
      /^Period: .* Infinity/,
    );
    expect(refused({ ...compound, massG: exact(-2) })).toMatch(/^Mass: expected more than 0, got -2/);
    const bifilar: Swing = { kind: 'bifilar', massG, spacingMm: exact(600), lengthMm, periodS };
    expect(refused({ ...bifilar, spacingMm: exact(0) })).toMatch(/^Spacing of the threads:/);
    expect(refused({ ...bifilar, lengthMm: exact(0) })).toMatch(/^Length of the threads:/);
    const plate = { massG: exact(500), periodS: exact(1.2) };
    const trifilar: Swing = { kind: 'trifilar', massG, radiusMm: exact(300), lengthMm, periodS, plate };
    expect(refused(trifilar)).toBe('');
    expect(refused({ ...trifilar, radiusMm: exact(0) })).toMatch(/^Radius of the threads:/);
    expect(refused({ ...trifilar, lengthMm: exact(0) })).toMatch(/^Length of the threads:/);
    expect(refused({ ...trifilar, plate: { ...plate, massG: exact(0) } })).toMatch(/^Mass of the plate:/);
    expect(refused({ ...trifilar, plate: { ...plate, periodS: exact(0) } })).toMatch(
      /^Period of the plate alone:/,
    );
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

  test('the ± of a few runs: the thumb’s over the swings, over √n, and √(π/2) more for a median of three or more', () => {
    // The scatter of a median is √(π/2) of the mean's (normal errors, from memory); of two runs it is the mean.
    const runs = (count: number) => Array.from({ length: count }, () => ({ swings: 10, timeS: 20 }));
    const sigmaOf = (count: number, thumbS?: number) => {
      const answer = periodOfRuns(runs(count), thumbS);
      return answer.ok ? answer.sigma : Number.NaN;
    };
    expect(sigmaOf(1, 0.2)).toBeCloseTo(0.02, 12);
    expect(sigmaOf(2, 0.2)).toBeCloseTo(0.02 / Math.SQRT2, 12);
    expect(sigmaOf(3, 0.2)).toBeCloseTo(0.02 * Math.sqrt(Math.PI / 2 / 3), 12);
    expect(sigmaOf(1)).toBeCloseTo(0.01, 12);
  });

  test('runs that scatter by more than a thumb: the median deviation is 0.6745 of a normal sigma', () => {
    const runs = [-0.4, -0.2, 0, 0.2, 0.4].map((off) => ({ swings: 10, timeS: 20 + 10 * off }));
    const answer = periodOfRuns(runs, 0.01);
    expect(answer.ok && answer.value).toBeCloseTo(2, 12);
    expect(answer.ok && answer.sigma).toBeCloseTo((0.2 / 0.6745) * Math.sqrt(Math.PI / 2 / 5), 4);
  });

  test('an even number of runs: midway between the two in the middle', () => {
    const answer = periodOfRuns([8, 2, 3, 4].map((timeS) => ({ swings: 1, timeS })));
    expect(answer.ok && answer.value).toBe(3.5);
  });

  test('no run, and one without swings or time, are refused', () => {
    const refused = (...runs: Parameters<typeof periodOfRuns>[0]) => {
      const answer = periodOfRuns(runs);
      return answer.ok ? '' : answer.sentence;
    };
    const good = { swings: 1, timeS: 2 };
    expect(refused()).toMatch(/one run at least/);
    expect(refused(good)).toBe('');
    expect(refused({ swings: 0, timeS: 3 }, good)).toMatch(/Run 1: expected one swing or more/);
    expect(refused(good, { swings: 4, timeS: 0 })).toMatch(/Run 2/);
    expect(refused(good, { swings: 4, timeS: Number.POSITIVE_INFINITY })).toMatch(/Run 2/);
  });

  test('taps: three at least, each after the other', () => {
    const refused = (...taps: number[]) => {
      const run = runOfTaps(taps);
      return run.ok ? '' : run.sentence;
    };
    expect(refused(0, 2)).toMatch(/two full swings at least: 2 taps so far/);
    expect(refused(0, 2, 4)).toBe('');
    expect(refused(0, 2, 2)).toMatch(/follow one another/);
    // Two taps of one swing, as by a nervous thumb, still are two.
    expect(runOfTaps([0, 2, 4, 4.1, 6])).toMatchObject({ ok: true, swings: 4 });
  });
});

describe('the air that swings along', () => {
  const strip = {
    centreMm: [600, 80, -30] as const,
    along: [0, 1, 0] as const,
    normal: [0, 0, 1] as const,
    spanMm: 900,
    chordMm: 200,
  };
  const density = 1.225e-6;

  test('a flat plate turning about its own span: ρ·π·c⁴/128 for each mm; its arm adds ρ·π·c²/4·x²', () => {
    const own = ((density * Math.PI * 200 ** 4) / 128) * 900;
    expect(airSwungAlong([strip], [0, 1, 0], [600, 7, -30]).value / own).toBeCloseTo(1, 12);
    const moved = ((density * Math.PI * 200 ** 2) / 4) * 900 * 450 ** 2;
    // The height of the axis says nothing: the plate moves edgeways then.
    expect(airSwungAlong([strip], [0, 1, 0], [150, 7, 500]).value / (own + moved)).toBeCloseTo(1, 12);
  });

  test('edgeways it moves none, and the estimate is unsure by half of it at two sigmas', () => {
    expect(airSwungAlong([strip], [0, 0, 1], [0, 0, 0])).toEqual({ value: 0, sigma: 0 });
    const { value, sigma } = airSwungAlong([strip, strip], [1, 0, 0], [0, 0, 0]);
    expect(value / airSwungAlong([strip], [1, 0, 0], [0, 0, 0]).value).toBeCloseTo(2, 12);
    expect((2 * sigma) / value).toBeCloseTo(0.5, 12);
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
