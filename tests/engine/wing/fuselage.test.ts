import { describe, expect, test } from 'vitest';
import { FREE_FLOW, fuselageMomentMm3PerRad } from '../../../src/engine/wing/fuselage';

/** Spheroid of length 2a, width 2b, nose at `noseMm`. */
function spheroid(a: number, b: number, noseMm: number, pieces = 400) {
  return Array.from({ length: pieces + 1 }, (_, k) => {
    const s = -Math.cos((Math.PI * k) / pieces);
    return { stationMm: noseMm + a * (1 + s), widthMm: 2 * b * Math.sqrt(Math.max(0, 1 - s * s)) };
  });
}

describe('fuselage moment', () => {
  test('spheroid in free flow: 2·Volume per unit q and alpha, nose up (Munk, NACA Report 184)', () => {
    const volume = (4 / 3) * Math.PI * 600 * 50 * 50;
    expect(fuselageMomentMm3PerRad(spheroid(600, 50, 0)) / (2 * volume)).toBeCloseTo(1, 4);
  });

  test('the same whichever point it is taken about: −∫2·S′·(x − x_ref) dx of a closed body', () => {
    const body = spheroid(600, 50, -100);
    for (const reference of [0, 700]) {
      let moment = 0;
      for (let k = 1; k < body.length; k++) {
        const [front, rear] = [body[k - 1], body[k]];
        if (front === undefined || rear === undefined) continue;
        const growth = (Math.PI / 4) * (rear.widthMm ** 2 - front.widthMm ** 2);
        moment -= 2 * growth * ((front.stationMm + rear.stationMm) / 2 - reference);
      }
      expect(fuselageMomentMm3PerRad(body) / moment).toBeCloseTo(1, 4);
    }
  });

  test('cone frustum: exact for straight sides', () => {
    // ∫w² dx = L(w1² + w1·w2 + w2²)/3
    const sides = [
      { stationMm: 100, widthMm: 60 },
      { stationMm: 400, widthMm: 90 },
    ];
    const exact = ((Math.PI / 2) * 300 * (3600 + 5400 + 8100)) / 3;
    expect(fuselageMomentMm3PerRad(sides)).toBeCloseTo(exact, 6);
    expect(fuselageMomentMm3PerRad([...sides].map((s) => ({ ...s, heightMm: 5 })))).toBeCloseTo(exact, 6);
  });

  test('a flow that changes along the body weighs each stretch', () => {
    const tube = [
      { stationMm: 0, widthMm: 100 },
      { stationMm: 1000, widthMm: 100 },
    ];
    const flow = [
      { fromMm: 0, toMm: 300, fromFactor: 1, toFactor: 1 },
      { fromMm: 500, toMm: 1000, fromFactor: 0, toFactor: 0.6 },
    ];
    const perMm = (Math.PI / 2) * 100 * 100;
    expect(fuselageMomentMm3PerRad(tube, flow)).toBeCloseTo(perMm * (300 + 500 * 0.3), 4);
    expect(fuselageMomentMm3PerRad(tube, FREE_FLOW)).toBeCloseTo(perMm * 1000, 4);
  });

  test('nothing for nothing; stations out of order and negative widths are refused', () => {
    expect(fuselageMomentMm3PerRad([])).toBe(0);
    const at = (stationMm: number, widthMm: number) => ({ stationMm, widthMm });
    expect(() => fuselageMomentMm3PerRad([at(10, 5), at(0, 5)])).toThrow(/station 2.*aft of 10/);
    expect(() => fuselageMomentMm3PerRad([at(0, -5)])).toThrow(/station 1.*negative/);
  });
});
