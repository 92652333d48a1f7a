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

  test('no grams laid on: the support itself, whatever the whole weighs', () => {
    const supportMm = { value: 742, sigma: 1 };
    const added = { massG: exact(0), atMm: exact(40) };
    expect(balancePoint({ supportMm, added })).toEqual({ ok: true, cgMm: supportMm, fromSupportMm: 0 });
    const weighed = balancePoint({ supportMm, added, massG: exact(6800) });
    expect(weighed.ok && weighed.cgMm.value).toBe(742);
    expect(weighed.ok && weighed.cgMm.sigma).toBeCloseTo(1, 6);
  });

  test('what gives no answer says why', () => {
    const refused = (found: Parameters<typeof balancePoint>[0]) => {
      const answer = balancePoint(found);
      return answer.ok ? '' : answer.sentence;
    };
    const added = { massG: exact(5), atMm: exact(0) };
    expect(refused({ supportMm: exact(1), added })).toMatch(/mass of the whole aircraft is needed/);
    expect(refused({ supportMm: exact(1), added, massG: exact(0) })).toMatch(/mass of the whole aircraft/);
    expect(refused({ supportMm: exact(1), added, massG: exact(0.1) })).toBe('');
    expect(refused({ supportMm: exact(Number.NaN) })).toMatch(/where it stood/);
    expect(refused({ supportMm: exact(1), added: { ...added, massG: exact(-3) }, massG: exact(9) })).toMatch(
      /0 g or more, not -3 g/,
    );
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

  test('lines that cross nowhere in particular are refused', () => {
    const refused = (...lines: readonly CgLine[]) => {
      const answer = crossingOfLines(lines);
      return answer.ok ? '' : answer.sentence;
    };
    // The sine of the angle between them: 0.05 is the least that is trusted.
    const apart = (sine: number) => refused(through(0, 0, 0.3), through(9, 9, 0.3 + Math.asin(sine)));
    expect(apart(0.0499)).toMatch(/parallel/);
    expect(apart(0.0501)).toBe('');
    // A line hung the other way round is the same line.
    expect(refused(through(0, 0, 0.3), through(9, 9, 0.3 + Math.PI))).toMatch(/parallel/);
    // Of three, two that cross are enough.
    expect(refused(through(0, 0, 0.3), through(9, 9, 0.3), through(5, 0, 1.2))).toBe('');
    expect(refused(through(0, 0, 0.3))).toMatch(/two lines or more, not 1/);
    const point: CgLine = { throughMm: [4, 5], andMm: [4, 5], sigmaMm: 1 };
    expect(refused(through(0, 0, 0.3), point)).toMatch(/Line 2: expected two points apart/);
    expect(refused(point, through(0, 0, 0.3))).toMatch(/Line 1: expected two points apart/);
  });
});
