import { describe, expect, test } from 'vitest';
import type { Heading } from '../../../src/engine/balance/bestLoad';
import { type BurnSearch, burnBoundMm, burnEnd, burnPeak } from '../../../src/engine/balance/burnPeak';
import { type Bounds, loadEnvelope } from '../../../src/engine/balance/loadStates';
import type { LiquidMoment, MassMoment } from '../../../src/engine/balance/travel';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { massPoint } from '../../../src/engine/mass/massProperties';
import { randomFrom } from '../../randomFrom';

describe('peaks inside a smooth piece of the burn', () => {
  /**
   * 1000 g at 0, and 1000 g of fuel. It is drawn evenly at 2 mm, but for 1/70 of it about a fraction between two points of
   * a grid of 64: half of that is drawn at 2 − 500 mm and half at 2 + 500 mm after it. So in the middle of it the moment
   * stands out by 1000·500/140, and nowhere else; elsewhere the CG is aftmost at full, 1 mm.
   */
  test('a spike that lies wholly between the points of a grid, which misses it by over 2 mm, is found', () => {
    const at = 10.5 / 64;
    const half = 1 / 140;
    const liquidAt = (fuelFraction: number): LiquidMoment => {
      const spike = 500 * Math.max(0, half - Math.abs(fuelFraction - at));
      return {
        fuelFraction,
        massG: 1000 * fuelFraction,
        momentGmm: [1000 * (2 * fuelFraction + spike), 0, 0],
      };
    };
    const { aftmost } = loadEnvelope({
      fixed: massPoint(1000, [0, 0, 0]),
      switches: [],
      liquidAt,
      breaks: [1, 0],
      tanksMm: [{ min: [-498, 0, 0], max: [502, 0, 0] }],
    })!;
    const peak = (2 * at + 500 * half) / (1 + at);
    const grid = Array.from({ length: 65 }, (_, i) => liquidAt(i / 64));
    expect(Math.max(...grid.map((l) => l.momentGmm[0] / (1000 + l.massG)))).toBeLessThan(peak - 2);
    expect(aftmost.cgMm[0]).toBeCloseTo(peak, 4);
    expect(aftmost.fuelFraction).toBeCloseTo(at, 6);
    expect(aftmost.withinMm).toBeLessThanOrEqual(0.01);
  });

  /**
   * The same without a spike, in a search told to be content with its two ends. What it has not seen could at worst be all
   * the fuel drawn from the one end of the reach down to half of it, and then from the other. The doubt is the excess moment
   * of that over the reported CG of 1 mm, (peak − 1)·(1000 + 1000·½), by the lightest mass, 1000 g.
   */
  test('the doubt that is left is that of the worst liquid', () => {
    const { aftmost } = loadEnvelope({
      fixed: massPoint(1000, [0, 0, 0]),
      switches: [],
      liquidAt: (f) => ({ fuelFraction: f, massG: 1000 * f, momentGmm: [1000 * 2 * f, 0, 0] }),
      breaks: [1, 0],
      tanksMm: [{ min: [-498, 0, 0], max: [502, 0, 0] }],
      toleranceMm: 1e6,
    })!;
    expect(aftmost.cgMm[0]).toBeCloseTo(1, 9);
    const at = 1 / 2;
    // The half of the fuel that is left lies at 502 mm, the after end of the reach.
    const peak = (502 * at) / (1 + at);
    expect(aftmost.withinMm).toBeCloseTo((peak - 1) * (1 + at), 9);
  });

  /**
   * A tank whose surface's centroid goes evenly aft as it empties. With L of its 1000 g left and M the rest at 0,
   * N = 300·L − b·L², and N/(M + L) is greatest where L = √(M² + 300·M/b) − M: in the middle of the burn, or so close
   * to full that no sixteenth of it shows.
   */
  test.each([
    [414, 0.3, 0.01],
    [980, 300 / 2920.4, 0.0005],
  ])('a smooth top at %d g is met to rounding, with and without the tank’s bounds', (leftG, b, missedMm) => {
    const massG = 1000;
    const stationAt = (left: number) => (300 * left - b * left * left) / (massG + left);
    const left = Math.sqrt(massG * massG + (300 * massG) / b) - massG;
    expect(left).toBeCloseTo(leftG, 0);
    const peak = stationAt(left);
    const grid = Array.from({ length: 65 }, (_, i) => stationAt((1000 * i) / 64));
    expect(Math.max(...grid)).toBeLessThan(peak - missedMm);
    const states = {
      fixed: massPoint(massG, [0, 0, 0]),
      switches: [],
      liquidAt: (fuelFraction: number): LiquidMoment => {
        const held = 1000 * fuelFraction;
        return { fuelFraction, massG: held, momentGmm: [300 * held - b * held * held, 0, 0] };
      },
      breaks: [0, 1],
    };
    const bounds = [{ min: [-300, 0, 0], max: [300, 0, 0] }] as const;
    for (const more of [{}, { tanksMm: bounds }]) {
      const { aftmost, foremost } = loadEnvelope({ ...states, ...more })!;
      expect(aftmost.cgMm[0]).toBeCloseTo(peak, 9);
      expect(aftmost.fuelFraction).toBeCloseTo(left / 1000, 6);
      expect(foremost.cgMm[0]).toBeCloseTo(0, 9);
      expect(aftmost.withinMm === null).toBe(!('tanksMm' in more));
    }
  });

  test('liquid that jumps, against the rules, ends the search with an honest doubt', () => {
    const envelope = loadEnvelope({
      fixed: massPoint(1000, [0, 0, 0]),
      switches: [],
      liquidAt: (f) => ({ fuelFraction: f, massG: f > 0.4 ? 500 : 0, momentGmm: [0, 0, 0] }),
      breaks: [0, 1],
      tanksMm: [{ min: [-100, 0, 0], max: [100, 0, 0] }],
    })!;
    expect(envelope.aftmost.withinMm).toBeGreaterThan(1);
  });

  /**
   * A hundred small spikes, one from each hundredth to the next, so that no stretch is ever settled: with 500 samples allowed
   * the search stops there, and says how much it may have missed.
   */
  test('a search that may try only so many amounts of liquid keeps to that, and tells its doubt', () => {
    let asked = 0;
    const envelope = loadEnvelope({
      fixed: massPoint(1000, [0, 0, 0]),
      switches: [],
      liquidAt: (f) => {
        asked += 1;
        const spike = Math.abs(((100 * f) % 1) - 0.5);
        return { fuelFraction: f, massG: 1000 * f, momentGmm: [1000 * spike, 0, 0] };
      },
      breaks: [0, 1],
      tanksMm: [{ min: [-500, 0, 0], max: [500, 0, 0] }],
      toleranceMm: 1e-6,
      mostSamples: 500,
    })!;
    // Closing in on a top may be under way when the allowance ends: some forty samples for each end sought.
    expect(asked).toBeLessThan(500 + 4 * 60);
    expect(envelope.aftmost.withinMm).toBeGreaterThan(1e-6);
  });

  /** The liquid of two tanks of 500 g, at −400…−300 and 300…400 mm, that give one after the other. */
  test('boxes tank by tank certify with fewer samples than one box round both', () => {
    const tank = (fraction: number, from: number) => {
      const massG = 500 * Math.min(1, Math.max(0, fraction));
      return { massG, momentGmm: [massG * (from + (50 * massG) / 500), 0, 0] as const };
    };
    const boxes = [
      { min: [300, 0, 0], max: [400, 0, 0] },
      { min: [-400, 0, 0], max: [-300, 0, 0] },
    ] as const;
    const countWith = (tanksMm: readonly Bounds[]) => {
      let asked = 0;
      const { foremost, aftmost } = loadEnvelope({
        fixed: massPoint(1000, [0, 0, 0]),
        switches: [],
        liquidAt: (f) => {
          asked += 1;
          const byTank = [tank(2 * f - 1, 300), tank(2 * f, -400)];
          const momentGmm = [byTank[0]!.momentGmm[0] + byTank[1]!.momentGmm[0], 0, 0] as const;
          return { fuelFraction: f, massG: byTank[0]!.massG + byTank[1]!.massG, momentGmm, byTank };
        },
        breaks: [0, 0.5, 1],
        tanksMm,
      })!;
      // Only the forward tank full: 500·(−350)/1500 by hand; and with both, or none, on the datum.
      expect(foremost.cgMm[0]).toBeCloseTo((500 * -350) / 1500, 9);
      expect(aftmost.cgMm[0]).toBeCloseTo(0, 9);
      expect(Math.max(foremost.withinMm!, aftmost.withinMm!)).toBeLessThanOrEqual(0.01);
      return asked;
    };
    const whole = { min: [-400, 0, 0], max: [400, 0, 0] } as const;
    expect(countWith(boxes)).toBeLessThan(countWith([whole]));
  });
});

describe('what the two ends of a burn say', () => {
  /** Tanks that are drawn layer by layer, each layer anywhere within the tank's reach; cut evenly into eighths of the burn. */
  function burn(random: () => number, heading: Heading): BurnSearch {
    const tanks = Array.from({ length: 1 + Math.floor(3 * random()) }, () => {
      const [least, wide] = [400 * random(), 300 * random()];
      const layers = Array.from({ length: 8 }, () => ({
        massG: 60 * random(),
        atMm: least + wide * random(),
      }));
      return { reach: [least, least + wide] as const, layers };
    });
    const liquidAt = (fuelFraction: number): LiquidMoment => {
      const byTank = tanks.map(({ layers }): MassMoment => {
        const left = layers.map(({ massG, atMm }, k) => {
          // The last layer is drawn first.
          const grams = massG * Math.min(1, Math.max(0, 8 * fuelFraction - k));
          return { grams, moment: grams * atMm };
        });
        const massG = left.reduce((sum, { grams }) => sum + grams, 0);
        const moment = left.reduce((sum, each) => sum + each.moment, 0);
        return { massG, momentGmm: heading.axis === 0 ? [moment, 0, 0] : [0, moment, 0] };
      });
      return {
        fuelFraction,
        massG: byTank.reduce((sum, { massG }) => sum + massG, 0),
        momentGmm: [0, 1, 2].map((axis) =>
          byTank.reduce((sum, { momentGmm }) => sum + momentGmm[axis]!, 0),
        ) as unknown as Vec3,
        byTank,
      };
    };
    const fixedG = 300 + 900 * random();
    const options = Array.from({ length: 2 }, () => [
      { massG: 0, momentGmm: 0 },
      { massG: 80 * random(), momentGmm: 80 * 500 * (random() - 0.3) },
    ]);
    return {
      heading,
      fixed: { massG: fixedG, momentGmm: heading.sign * fixedG * 500 * random() },
      options,
      liquidAt,
      breaks: Array.from({ length: 9 }, (_, k) => k / 8),
      lightestG: fixedG,
      reaches: tanks.map(({ reach: [least, most] }) =>
        heading.sign === 1 ? [least, most] : [-most, -least],
      ),
      toleranceMm: 0.01,
      floorMm: Number.NEGATIVE_INFINITY,
      maySample: () => true,
    };
  }

  /** The farthest CG at one amount of liquid, every combination of the two switches tried. */
  const farthestAt = ({ heading, fixed, options, liquidAt }: BurnSearch, fuelFraction: number) => {
    const { massG, momentGmm } = liquidAt(fuelFraction);
    const liquid = heading.sign * momentGmm[heading.axis];
    return Math.max(
      ...options[0]!.flatMap((a) =>
        options[1]!.map(
          (b) =>
            (fixed.momentGmm + liquid + a.momentGmm + b.momentGmm) /
            (fixed.massG + massG + a.massG + b.massG),
        ),
      ),
    );
  };

  const headings: readonly Heading[] = [
    { axis: 0, sign: 1 },
    { axis: 0, sign: -1 },
    { axis: 1, sign: 1 },
  ];

  test('the farther of them is that of full and dry, whatever lies between', () => {
    const random = randomFrom(21);
    for (let trial = 0; trial < 60; trial += 1) {
      const search = burn(random, headings[trial % 3]!);
      const [dry, full] = [farthestAt(search, 0), farthestAt(search, 1)];
      const end = burnEnd(search);
      expect(end.cgMm).toBeCloseTo(Math.max(dry, full), 9);
      expect(end.fuelFraction).toBe(dry > full ? 0 : 1);
    }
  });

  test('no amount of liquid lies farther beyond a station than they say it can, and at times one lies nearly so far', () => {
    const random = randomFrom(22);
    let tightest = Number.POSITIVE_INFINITY;
    for (let trial = 0; trial < 120; trial += 1) {
      const search = burn(random, headings[trial % 3]!);
      const lambdaMm = burnEnd(search).cgMm - 5 + 20 * random();
      const most = Math.max(...Array.from({ length: 401 }, (_, k) => farthestAt(search, k / 400)));
      const bound = burnBoundMm(search, lambdaMm);
      expect(bound).toBeGreaterThanOrEqual(most - lambdaMm - 1e-9);
      if (most > lambdaMm) tightest = Math.min(tightest, bound / (most - lambdaMm));
      const { best, withinMm } = burnPeak(search);
      expect(best.cgMm).toBeGreaterThan(most - search.toleranceMm - 1e-9);
      expect(withinMm).toBeLessThanOrEqual(search.toleranceMm + 1e-9);
    }
    // A bound that is far above everything would prune nothing.
    expect(tightest).toBeLessThan(2);
  });

  test('without a reach nothing is known, and nothing is bounded', () => {
    const search = { ...burn(randomFrom(23), headings[0]!), reaches: null };
    expect(burnBoundMm(search, 400)).toBe(Number.POSITIVE_INFINITY);
    expect(burnPeak(search).withinMm).toBeNull();
  });
});
