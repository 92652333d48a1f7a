import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { blankAircraft } from '../../src/model/document/blank';
import { type Block, stackBlocks, stackTop } from '../../src/panels/beam/stackBlocks';
import { areaPerGram, tiltDeg, weightSizePx, weightsAlong } from '../../src/panels/beam/weights';
import { between } from '../between';
import { randomFrom } from '../randomFrom';
import { part, waterTank } from './builders';

const balanced = (aircraft: ReturnType<typeof blankAircraft>) =>
  balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });

describe('what stands on the beam', () => {
  test('a part stands at its station with its mass', () => {
    const aircraft = { ...blankAircraft(), parts: [part('pack', 200, [300, 40, 0])] };
    expect(weightsAlong(balanced(aircraft), 0)).toMatchObject([{ key: 'pack', massG: 200, atMm: 300 }]);
    expect(weightsAlong(balanced(aircraft), 1)).toMatchObject([{ key: 'pack', massG: 200, atMm: 40 }]);
  });

  test('a tank weighs what it and its water weigh: 100 × 50 × 40 mm hold 200 ml, so 200 g', () => {
    const [tank] = weightsAlong(balanced(waterTank(30)), 0);
    expect(tank?.massG).toBeCloseTo(230, 6);
    expect(tank?.atMm).toBeCloseTo(500, 6);
  });

  test('what has no finite station is not drawn', () => {
    const heavy = {
      ...blankAircraft(),
      parts: [part('star', 1e308, [300, 0, 0]), part('pack', 200, [300, 0, 0])],
    };
    expect(weightsAlong(balanced(heavy), 0).map(({ key }) => key)).toEqual(['pack']);
  });

  test('moments of all weights about the CG cancel, as they must about any balance point', () => {
    const masses = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: -500, max: 2500 })),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(masses, (list) => {
        const parts = list.map(([massG, x], i) => part(`p-${i}`, massG, [x, 0, 0]));
        const balance = balanced({ ...blankAircraft(), parts });
        const sum = weightsAlong(balance, 0).reduce(
          (moment, { massG, atMm }) => moment + massG * (atMm - (balance.cgMm?.[0] ?? Number.NaN)),
          0,
        );
        expect(Math.abs(sum)).toBeLessThan(1e-6 * balance.massG * 3000);
      }),
    );
  });
});

describe('stacking', () => {
  const blocks = fc.array(
    fc.record({
      xPx: between(0, 300),
      sizePx: between(7, 44),
    }),
    { maxLength: 14 },
  );

  test('with room enough no weight overlaps another, and each is there', () => {
    fc.assert(
      fc.property(blocks, (list) => {
        const keyed = list.map((block, i) => ({ ...block, key: String(i) }));
        const placed = stackBlocks(keyed, Number.POSITIVE_INFINITY);
        expect(placed.map(({ key }) => key).sort()).toEqual(keyed.map(({ key }) => key).sort());
        for (const a of placed) {
          for (const b of placed) {
            if (a.key >= b.key) continue;
            const beside = Math.abs(a.xPx - b.xPx) >= (a.sizePx + b.sizePx) / 2;
            const above = a.offPx >= b.offPx + b.sizePx - 1e-9 || b.offPx >= a.offPx + a.sizePx - 1e-9;
            expect(beside || above).toBe(true);
          }
        }
      }),
    );
  });

  test('each stands where going by all the others puts it, and few of them are looked at', () => {
    const random = randomFrom(20261127);
    let looked = 0;
    const list: Block[] = Array.from({ length: 2000 }, (_, i) => {
      const [at, sizePx] = [1200 * random(), 7 + 8 * random()];
      return {
        key: String(i),
        sizePx,
        get xPx() {
          looked += 1;
          return at;
        },
      };
    });
    stackBlocks(list, 1e9);
    // The mean weight has some 40 beside it; going by all pairs asks two million times.
    expect(looked).toBeLessThan(200_000);
    const few = list.slice(0, 300).map(({ key, xPx, sizePx }) => ({ key, xPx, sizePx }));
    const placed = stackBlocks(few, 1e9);
    placed.forEach(({ xPx, sizePx, offPx }, i) => {
      const beside = placed.slice(0, i).filter((b) => Math.abs(b.xPx - xPx) < (b.sizePx + sizePx) / 2 + 1.5);
      const isFree = (at: number) =>
        beside.every((b) => at >= b.offPx + b.sizePx + 1.5 - 1e-9 || at + sizePx + 1.5 <= b.offPx + 1e-9);
      const feet = [0, ...beside.map((b) => b.offPx + b.sizePx + 1.5)];
      expect(offPx).toBeCloseTo(Math.min(...feet.filter(isFree)), 9);
    });
  });

  test('the heaviest stands on the beam itself', () => {
    const placed = stackBlocks(
      [
        { key: 'light', xPx: 10, sizePx: 8 },
        { key: 'heavy', xPx: 12, sizePx: 30 },
      ],
      100,
    );
    expect(placed.find(({ key }) => key === 'heavy')?.offPx).toBe(0);
    expect(placed.find(({ key }) => key === 'light')?.offPx).toBeGreaterThanOrEqual(30);
  });

  test('a stack too high is pressed together and none falls below the beam', () => {
    const tall = Array.from({ length: 9 }, (_, i) => ({ key: String(i), xPx: 50, sizePx: 20 }));
    const placed = stackBlocks(tall, 80);
    expect(stackTop(stackBlocks(tall, Number.POSITIVE_INFINITY))).toBeGreaterThan(180);
    expect(stackTop(placed)).toBeLessThan(101);
    expect(Math.min(...placed.map(({ offPx }) => offPx))).toBe(0);
  });
});

describe('drawing to scale', () => {
  test('four times the mass is twice the width, and a half-filled outline is drawn larger', () => {
    expect(weightSizePx(400, 1, 1)).toBeCloseTo(2 * weightSizePx(100, 1, 1), 12);
    expect(weightSizePx(400, 1, 0.5) ** 2 * 0.5).toBeCloseTo(400, 9);
  });

  test('the heaviest part is just as wide as allowed', () => {
    const aircraft = { ...blankAircraft(), parts: [part('a', 640, [0, 0, 0]), part('b', 20, [90, 0, 0])] };
    const scale = areaPerGram(weightsAlong(balanced(aircraft), 0), 40, 44);
    expect(weightSizePx(640, scale, 1)).toBeCloseTo(40, 9);
  });

  test('the beam is level in the band, and tips to the side that is heavy, never far', () => {
    const band = { forwardMm: 584, aftMm: 616 };
    for (const inside of [584, 600, 616]) expect(tiltDeg(inside, band)).toBe(0);
    expect(tiltDeg(580, band)).toBeLessThan(0);
    expect(tiltDeg(620, band)).toBeGreaterThan(0);
    expect(tiltDeg(630, band)).toBeGreaterThan(tiltDeg(620, band));
    expect(tiltDeg(9000, band)).toBeLessThan(2);
  });
});
