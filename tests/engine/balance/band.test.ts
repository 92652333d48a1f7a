import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ballastRange, ballastToLimit, tipMassForLateral } from '../../../src/engine/balance/ballast';
import { allowedStations, bandFit, bestStation } from '../../../src/engine/balance/band';
import type { TravelPoint } from '../../../src/engine/balance/travel';
import { between } from '../../between';

const at = (fuelFraction: number, massG: number, x: number): TravelPoint => ({
  fuelFraction,
  massG,
  cgMm: [x, 0, 0],
});

/** A burn: mass falls, the CG goes wherever it goes. */
const burns = fc
  .array(
    fc.record({
      x: between(300, 700),
      drop: between(0, 40),
    }),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((steps) => {
    let massG = 6000;
    return steps.map(({ x, drop }, i) => {
      massG -= drop;
      return at(1 - i / Math.max(steps.length - 1, 1), massG, x);
    });
  });

/** The travel after a movable thing of constant mass goes from one station to another: the shift rule w/W = ΔCG/d. */
const shifted = (travel: readonly TravelPoint[], massG: number, byMm: number) =>
  travel.map((p) => at(p.fuelFraction, p.massG, p.cgMm[0] + (massG * byMm) / p.massG));

describe('the band', () => {
  const band = { forwardMm: 480, aftMm: 520 };

  test('says where the travel is and by how much', () => {
    const inside = bandFit([at(1, 100, 490), at(0, 90, 515)], band);
    expect(inside).toMatchObject({ where: 'inside', forwardMarginMm: 10, aftMarginMm: 5, outside: [] });
    const tail = bandFit([at(1, 100, 500), at(0.5, 95, 510), at(0, 90, 530)], band);
    expect(tail).toMatchObject({ where: 'tail-heavy', aftMarginMm: -10 });
    // It leaves half way between 510 and 530, which lie at half fuel and dry.
    expect(tail?.outside).toEqual([{ from: 0.25, to: 0, side: 'tail-heavy' }]);
    expect(bandFit([at(1, 100, 470), at(0, 90, 530)], band)?.where).toBe('both');
    expect(bandFit([], band)).toBeNull();
  });

  test('no travel, or one limit that is no number, is no fit at all', () => {
    const travel = [at(1, 6000, 500)];
    expect(bandFit([], { forwardMm: 400, aftMm: 600 })).toBeNull();
    expect(bandFit(travel, { forwardMm: Number.NaN, aftMm: 600 })).toBeNull();
    expect(bandFit(travel, { forwardMm: 400, aftMm: Number.NaN })).toBeNull();
    expect(bandFit(travel, { forwardMm: 400, aftMm: Number.POSITIVE_INFINITY })).toBeNull();
  });

  test('the limits themselves are inside', () => {
    expect(bandFit([at(1, 100, 480), at(0, 90, 520)], band)?.where).toBe('inside');
  });

  test('an allowed station keeps the whole travel in, and a step beyond either end does not', () => {
    fc.assert(
      fc.property(burns, between(20, 900), (travel, massG) => {
        const movable = { stationMm: 400, massesG: travel.map(() => massG) };
        const room = allowedStations(travel, movable, { forwardMm: 450, aftMm: 560 });
        const inside = (stationMm: number, slackMm: number) =>
          shifted(travel, massG, stationMm - 400).every(
            (p) => p.cgMm[0] >= 450 - slackMm && p.cgMm[0] <= 560 + slackMm,
          );
        if (!room) {
          for (let x = -40_000; x <= 40_000; x += 500) expect(inside(x, -1e-6)).toBe(false);
          return;
        }
        expect(inside(room.fromMm, 1e-6)).toBe(true);
        expect(inside(room.toMm, 1e-6)).toBe(true);
        expect(inside(room.fromMm - 1, 0)).toBe(false);
        expect(inside(room.toMm + 1, 0)).toBe(false);
      }),
    );
  });

  test('where it weighs nothing, as an empty tank may, no place of it mends what is out then', () => {
    const band = { forwardMm: 400, aftMm: 600 };
    const emptied = { stationMm: 500, massesG: [100, 0] };
    const full = at(1, 6000, 500);
    const alone = allowedStations([full], emptied, band);
    expect(alone).not.toBeNull();
    expect(allowedStations([full, at(0, 5900, 600)], emptied, band)).toEqual(alone);
    expect(allowedStations([full, at(0, 5900, 601)], emptied, band)).toBeNull();
    expect(allowedStations([full, at(0, 5900, 399)], emptied, band)).toBeNull();
  });

  test('no station has a greater least margin than the best one', () => {
    fc.assert(
      fc.property(burns, between(20, 900), between(-50, 50), (travel, massG, off) => {
        const limits = { forwardMm: 450, aftMm: 560 };
        const best = bestStation(
          travel,
          { stationMm: 400, massesG: travel.map(() => massG) },
          limits,
        ) as number;
        const least = (stationMm: number) =>
          Math.min(
            ...shifted(travel, massG, stationMm - 400).flatMap((p) => [p.cgMm[0] - 450, 560 - p.cgMm[0]]),
          );
        expect(least(best)).toBeGreaterThanOrEqual(least(best + off) - 1e-6);
      }),
    );
  });

  test('one state, one mass: the best place puts the CG in the middle of the band', () => {
    const best = bestStation([at(0, 1000, 530)], { stationMm: 300, massesG: [100] }, band);
    // Shift rule: 100/1000 = 30/d, so 300 mm forward.
    expect(best).toBeCloseTo(0, 6);
  });
});

describe('ballast', () => {
  /** FAA AMT Handbook – General, p. 4-23; that the result lies exactly on the limit is plain algebra. */
  test('the handbook formula puts the CG on the limit', () => {
    fc.assert(
      fc.property(between(500, 20_000), between(0.1, 80), between(50, 900), (massG, out, arm) => {
        const limit = 600;
        const grams = ballastToLimit(massG, limit + out, limit, limit - arm) as number;
        const cg = (massG * (limit + out) + grams * (limit - arm)) / (massG + grams);
        expect(cg).toBeCloseTo(limit, 6);
      }),
    );
    expect(ballastToLimit(1000, 620, 600, 700)).toBeNull();
    expect(ballastToLimit(1000, 620, 600, 600)).toBeNull();
  });

  test('for one state the range begins where the handbook formula says', () => {
    const range = ballastRange([at(0, 5000, 612)], { forwardMm: 560, aftMm: 600 }, 40);
    expect(range?.leastG).toBeCloseTo(ballastToLimit(5000, 612, 600, 40) as number, 9);
    expect(range?.mostG).toBeCloseTo(ballastToLimit(5000, 612, 560, 40) as number, 9);
  });

  test('ballast between the limits, or too much travel, is no help', () => {
    expect(ballastRange([at(1, 100, 470), at(0, 100, 530)], { forwardMm: 480, aftMm: 520 }, 0)).toBeNull();
    expect(ballastRange([at(0, 100, 530)], { forwardMm: 480, aftMm: 520 }, 520)).toBeNull();
  });

  test('the tip mass levels the wings', () => {
    const grams = tipMassForLateral(7000, -1.1, 1200);
    expect((7000 * -1.1 + grams * 1200) / (7000 + grams)).toBeCloseTo(0, 9);
  });
});
