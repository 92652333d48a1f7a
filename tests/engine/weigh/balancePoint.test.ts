import { describe, expect, test } from 'vitest';
import { balancePoint, type CgLine, crossingOfLines } from '../../../src/engine';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const exact = (value: number) => ({ value, sigma: 0 });

describe('balance stand', () => {
  test('found by hand it is the support itself', () => {
    expect(balancePoint({ supportMm: { value: 742, sigma: 1 } })).toEqual({
      ok: true,
      cgMm: { value: 742, sigma: 1 },
      fromSupportMm: 0,
    });
  });

  test('grams at the nose that bring it level: the seesaw of TM 55-1500-342-23, 200 lb × 50 in = 100 lb × 100 in', () => {
    const answer = balancePoint({
      supportMm: exact(0),
      added: { massG: exact(100), atMm: exact(-100) },
      massG: exact(200),
    });
    expect(answer).toMatchObject({ ok: true, cgMm: { value: 50 }, fromSupportMm: 50 });
  });

  test('what was added takes its part in the balance: W·x + m·a = (W + m)·s', () => {
    const random = randomFrom(3);
    for (let trial = 0; trial < 100; trial += 1) {
      const [x, a, w, m] = [700 + 50 * random(), 1200 * random(), 6000 + 900 * random(), 100 * random()];
      const s = (w * x + m * a) / (w + m);
      const answer = balancePoint({
        supportMm: exact(s),
        added: { massG: exact(m), atMm: exact(a) },
        massG: exact(w),
      });
      expect(answer.ok && answer.cgMm.value).toBeCloseTo(x, 9);
    }
  });

  test('the stated ± covers the truth in about 95 of 100', () => {
    const random = randomFrom(4);
    let inside = 0;
    for (let trial = 0; trial < 4000; trial += 1) {
      const [x, a, w, m] = [742, 40, 6800, 80];
      const s = (w * x + m * a) / (w + m);
      const answer = balancePoint({
        supportMm: { value: s + 0.8 * gaussian(random), sigma: 0.8 },
        added: {
          massG: { value: m + 4 * gaussian(random), sigma: 4 },
          atMm: { value: a + 3 * gaussian(random), sigma: 3 },
        },
        massG: { value: w + 20 * gaussian(random), sigma: 20 },
      });
      if (answer.ok && Math.abs(answer.cgMm.value - x) <= 1.96 * answer.cgMm.sigma) inside += 1;
    }
    expect(inside / 4000).toBeGreaterThan(0.938);
    expect(inside / 4000).toBeLessThan(0.962);
  });

  test('grams without the mass of the whole are refused', () => {
    const answer = balancePoint({ supportMm: exact(1), added: { massG: exact(5), atMm: exact(0) } });
    expect(answer.ok ? '' : answer.sentence).toMatch(/mass of the whole aircraft is needed/);
  });
});

describe('hanging and askew supports', () => {
  const through = (x: number, z: number, angle: number, sigmaMm = 0): CgLine => ({
    throughMm: [x - 300 * Math.cos(angle), z - 300 * Math.sin(angle)],
    andMm: [x + 200 * Math.cos(angle), z + 200 * Math.sin(angle)],
    sigmaMm,
  });

  test('two plumb lines cross at the CG', () => {
    const answer = crossingOfLines([through(742, 20, 0.3), through(742, 20, 2.2)]);
    expect(answer.ok && answer.crossingMm[0].value).toBeCloseTo(742, 9);
    expect(answer.ok && answer.crossingMm[1].value).toBeCloseTo(20, 9);
  });

  test('three lines that miss each other, and by how much the worst does', () => {
    // The lines x = 0, z = 0 and x + z = 3: least squares by hand gives (3/4, 3/4), misses 0.75, 0.75 and 1.5/√2.
    const answer = crossingOfLines([
      { throughMm: [0, -1], andMm: [0, 5], sigmaMm: 1 },
      { throughMm: [-1, 0], andMm: [5, 0], sigmaMm: 1 },
      { throughMm: [3, 0], andMm: [0, 3], sigmaMm: 1 },
    ]);
    expect(answer.ok && answer.crossingMm.map(({ value }) => value)).toEqual([
      expect.closeTo(0.75, 12),
      expect.closeTo(0.75, 12),
    ]);
    expect(answer.ok && answer.worstMissMm).toBeCloseTo(1.5 / Math.SQRT2, 12);
  });

  test('the stated ± covers the truth', () => {
    const random = randomFrom(5);
    let inside = 0;
    const shaken = (line: CgLine): CgLine => ({
      ...line,
      throughMm: [line.throughMm[0] + 2 * gaussian(random), line.throughMm[1] + 2 * gaussian(random)],
      andMm: [line.andMm[0] + 2 * gaussian(random), line.andMm[1] + 2 * gaussian(random)],
    });
    for (let trial = 0; trial < 3000; trial += 1) {
      const answer = crossingOfLines([shaken(through(742, 20, 0.3, 2)), shaken(through(742, 20, 1.9, 2))]);
      if (answer.ok && Math.abs(answer.crossingMm[0].value - 742) <= 1.96 * answer.crossingMm[0].sigma)
        inside += 1;
    }
    expect(inside / 3000).toBeGreaterThan(0.935);
    expect(inside / 3000).toBeLessThan(0.965);
  });

  test('parallel lines are refused', () => {
    const answer = crossingOfLines([through(0, 0, 0.3), through(9, 9, 0.31)]);
    expect(answer.ok ? '' : answer.sentence).toMatch(/parallel/);
  });
});
