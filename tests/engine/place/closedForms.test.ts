import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allowedZone, type ZoneInput, zoneMargin } from '../../../src/engine/place/allowedZone';
import { fuelRange } from '../../../src/engine/place/fuelRange';
import { massRange, spotEffects } from '../../../src/engine/place/massRange';
import { sigmasFor } from '../../../src/engine/place/robust';
import { shrunkBand } from '../../../src/engine/place/shrunkBand';
import type { LoadCase } from '../../../src/engine/place/types';
import { between } from '../../between';

const one = (massG: number, stationMm: number, buttlineMm = 0, id = 'only'): LoadCase => ({
  id,
  name: id,
  massG,
  momentGmm: [massG * stationMm, massG * buttlineMm, 0],
});

describe('published examples', () => {
  test('shift: FAA Pilot’s Handbook of Aeronautical Knowledge, weight-shifting example', () => {
    // 8000 lb at 77.0 in; 100 lb moved from 30 to 150 in brings the CG to 78.5 in. A band that ends there is just reached.
    const rest = { ...one(7900, 0), momentGmm: [616_000 - 100 * 30, 0, 0] as const };
    const input = { cases: [rest], massesG: [100], band: { forwardMm: 70, aftMm: 78.5 }, lateralMm: null };
    expect(allowedZone(input)?.station.allowed?.toMm).toBeCloseTo(150, 9);
    expect(zoneMargin(input, 30, 0)?.marginMm).toBeCloseTo(78.5 - 77.0, 9);
  });

  test('add: 140 lb at 150 in to 6860 lb at 80.0 in gives 81.4 in (older PHAK, from memory)', () => {
    const limits = { band: { forwardMm: 60, aftMm: 81.4 }, lateralMm: null };
    expect(massRange([one(6860, 80)], limits, [150, 0, 0])?.mostG).toBeCloseTo(140, 6);
  });

  test('ballast: W·(distance out)/(arm from ballast to limit) (FAA AMT Handbook – General, p. 4-23)', () => {
    fc.assert(
      fc.property(between(500, 9000), between(0.1, 50), between(50, 900), (massG, outMm, armMm) => {
        const aftMm = 300;
        const found = massRange(
          [one(massG, aftMm + outMm)],
          { band: { forwardMm: -1e6, aftMm }, lateralMm: null },
          [aftMm - armMm, 0, 0],
        );
        expect(found?.leastG).toBeCloseTo((massG * outMm) / armMm, 6);
      }),
    );
  });
});

const caseOf = fc.record({
  massG: fc.integer({ min: 500, max: 3000 }),
  stationMm: between(80, 120),
  buttlineMm: between(-6, 6),
  ownG: fc.oneof(fc.constant(0), fc.integer({ min: 10, max: 600 })),
});
const zoneInput = fc
  .record({
    states: fc.array(caseOf, { minLength: 1, maxLength: 5 }),
    middle: between(95, 105),
    half: between(1, 15),
    lateralMm: fc.option(between(1, 6)),
  })
  .map(
    ({ states, middle, half, lateralMm }): ZoneInput => ({
      cases: states.map(({ massG, stationMm, buttlineMm }, i) => one(massG, stationMm, buttlineMm, `s${i}`)),
      massesG: states.map(({ ownG }) => ownG),
      band: { forwardMm: middle - half, aftMm: middle + half },
      lateralMm,
    }),
  );

/** The least margins by summing up masses and moments at a place: the definition. */
function byDefinition({ cases, massesG, band, lateralMm }: ZoneInput, x: number, y: number) {
  let margin = Number.POSITIVE_INFINITY;
  let lateral = Number.POSITIVE_INFINITY;
  cases.forEach(({ massG, momentGmm }, s) => {
    const m = massG + massesG[s]!;
    const cg = (momentGmm[0] + massesG[s]! * x) / m;
    margin = Math.min(margin, cg - band.forwardMm, band.aftMm - cg);
    if (lateralMm !== null)
      lateral = Math.min(lateral, lateralMm - Math.abs((momentGmm[1] + massesG[s]! * y) / m));
  });
  return { margin, lateral };
}

describe('the allowed zone', () => {
  test('holds exactly the places where every load state is within its limits', () => {
    fc.assert(
      fc.property(zoneInput, between(-400, 600), between(-300, 300), (input, x, y) => {
        const zone = allowedZone(input)!;
        const { margin, lateral } = byDefinition(input, x, y);
        fc.pre(Math.abs(margin) > 1e-6 && Math.abs(lateral) > 1e-6);
        const { station, buttline } = zone;
        expect(buttline === null).toBe(input.lateralMm === null);
        expect(station.allowed !== null && x >= station.allowed.fromMm && x <= station.allowed.toMm).toBe(
          margin > 0,
        );
        if (buttline) {
          expect(
            buttline.allowed !== null && y >= buttline.allowed.fromMm && y <= buttline.allowed.toMm,
          ).toBe(lateral > 0);
        }
        expect(zoneMargin(input, x, y)?.marginMm).toBeCloseTo(margin, 6);
        // No place is better than the best, and where there is none it fails by just that much.
        expect(station.bestMarginMm).toBeGreaterThanOrEqual(margin - 1e-6);
        if (station.bestMm !== null) {
          expect(byDefinition(input, station.bestMm, 0).margin).toBeCloseTo(station.bestMarginMm, 6);
        }
        if (!zone.possible) {
          expect(zone.failsByMm).toBeGreaterThanOrEqual(-station.bestMarginMm - 1e-9);
          expect(zone.blame.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test('blames the load states that no place can please together', () => {
    // Bands 4 mm apart between the two states: at best both are 1 mm out.
    const input: ZoneInput = {
      cases: [one(900, 90, 0, 'full'), one(900, 100, 0, 'fine'), one(900, 110, 0, 'dry')],
      massesG: [100, 100, 100],
      band: { forwardMm: 92, aftMm: 108 },
      lateralMm: null,
    };
    const zone = allowedZone(input)!;
    // (900·90 + 100·x)/1000 − 92 = 108 − (900·110 + 100·x)/1000 at x = 100: both 1 mm out.
    expect(zone.station).toMatchObject({ allowed: null });
    expect(zone.station.bestMm).toBeCloseTo(100, 6);
    expect(zone.failsByMm).toBeCloseTo(1, 9);
    expect(zone.blame.map(({ id }) => id).sort()).toEqual(['dry', 'full']);
  });
});

test('a load state without the item that stands right on a limit, but for rounding, forbids no place', () => {
  const band = { forwardMm: 92, aftMm: 108 };
  const zoneOf = (stationMm: number) =>
    allowedZone({ cases: [one(900, 100, 0), one(900, stationMm)], massesG: [100, 0], band, lateralMm: null })!
      .station;
  // (900·100 + 100·x)/1000 from 92 to 108.
  for (const stationMm of [92, 108, 92 - 1e-11, 108 + 1e-11])
    expect(zoneOf(stationMm).allowed).toEqual({
      fromMm: expect.closeTo(20, 9),
      toMm: expect.closeTo(180, 9),
    });
  expect(zoneOf(91.9).allowed).toBeNull();
  expect(zoneOf(108.1).allowed).toBeNull();
});

describe('masses at a place', () => {
  test('exactly the masses in the range keep every limit', () => {
    fc.assert(
      fc.property(
        zoneInput,
        fc.integer({ min: 0, max: 2000 }),
        fc.integer({ min: -400, max: 600 }),
        fc.integer({ min: -50, max: 50 }),
        (input, grams, x, y) => {
          const range = massRange(input.cases, input, [x, y, 0]);
          const { margin, lateral } = byDefinition({ ...input, massesG: input.cases.map(() => grams) }, x, y);
          fc.pre(Math.abs(margin) > 1e-6 && Math.abs(lateral) > 1e-6);
          expect(range !== null && grams >= range.leastG && grams <= range.mostG).toBe(
            Math.min(margin, lateral) > 0,
          );
          const [effect] = spotEffects(
            input.cases,
            input,
            [{ id: 's', name: 's', positionMm: [x, y, 0], stepG: 1, mostG: 9 }],
            grams,
          );
          expect(effect?.marginMm).toBeCloseTo(margin, 6);
          if (input.lateralMm !== null) expect(effect?.lateralMarginMm).toBeCloseTo(lateral, 6);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('fuel that keeps the band', () => {
  test('a tank at one station: x(f) = (W·x₀ + f·F·t)/(W + f·F) solved for the limit', () => {
    const [w, x0, fuelG, tankMm] = [1000, 100, 400, 150];
    const at = (f: number) => ({
      fuelFraction: f,
      massG: w + f * fuelG,
      cgMm: [(w * x0 + f * fuelG * tankMm) / (w + f * fuelG), 0, 0] as const,
    });
    const aftMm = 108;
    // f = W·(A − x₀)/(F·(t − A))
    const limit = (w * (aftMm - x0)) / (fuelG * (tankMm - aftMm));
    const [stretch, ...more] = fuelRange([at(1), at(0.7), at(0.2), at(0)], { forwardMm: 90, aftMm });
    expect(more).toEqual([]);
    expect(stretch?.fromFraction).toBe(0);
    expect(stretch?.toFraction).toBeCloseTo(limit, 9);
    expect(fuelRange([at(1), at(0)], { forwardMm: 90, aftMm: 95 })).toEqual([]);
  });
});

describe('fuel by trying every amount', () => {
  const travels = fc
    .array(
      fc.record({ fuel: fc.integer({ min: 0, max: 50 }), liquidG: between(0, 400), cg: between(60, 140) }),
      {
        minLength: 2,
        maxLength: 6,
      },
    )
    .map((list) =>
      [...new Map(list.map((point) => [point.fuel, point])).values()].map(({ fuel, liquidG, cg }) => ({
        fuelFraction: fuel / 50,
        massG: 800 + liquidG,
        cgMm: [cg, 0, 0] as const,
      })),
    );

  test('an amount keeps the band if and only if it lies in one of the stretches, which are apart and in order', () => {
    fc.assert(
      fc.property(travels, between(80, 100), between(0, 30), (travel, forwardMm, wide) => {
        fc.pre(travel.length > 1);
        const band = { forwardMm, aftMm: forwardMm + wide };
        const stretches = fuelRange(travel, band);
        stretches.slice(1).forEach(({ fromFraction }, k) => {
          expect(fromFraction).toBeGreaterThan(stretches[k]!.toFraction);
        });
        const points = [...travel].sort((a, b) => a.fuelFraction - b.fuelFraction);
        for (let k = 1; k < points.length; k += 1) {
          const [a, b] = [points[k - 1]!, points[k]!];
          for (let step = 0; step <= 20; step += 1) {
            const share = step / 20;
            const mix = (of: (point: (typeof points)[number]) => number) => of(a) + share * (of(b) - of(a));
            const cg = mix(({ massG, cgMm }) => massG * cgMm[0]) / mix(({ massG }) => massG);
            const margin = Math.min(cg - band.forwardMm, band.aftMm - cg);
            if (Math.abs(margin) < 1e-6) continue;
            const fuel = mix(({ fuelFraction }) => fuelFraction);
            const held = stretches.some(
              ({ fromFraction, toFraction }) => fuel >= fromFraction - 1e-9 && fuel <= toFraction + 1e-9,
            );
            expect(held).toBe(margin > 0);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  test('one amount alone is a stretch of no length, or none', () => {
    const only = { fuelFraction: 0.4, massG: 900, cgMm: [100, 0, 0] as const };
    expect(fuelRange([only], { forwardMm: 100, aftMm: 110 })).toEqual([
      { fromFraction: 0.4, toFraction: 0.4 },
    ]);
    expect(fuelRange([only], { forwardMm: 100.1, aftMm: 110 })).toEqual([]);
    expect(fuelRange([only], { forwardMm: 90, aftMm: 99.9 })).toEqual([]);
    expect(fuelRange([], { forwardMm: 90, aftMm: 99.9 })).toEqual([]);
  });
});

test('the load state that sets the most is named; right on a limit’s station mass changes nothing', () => {
  const limits = { band: { forwardMm: 90, aftMm: 110 }, lateralMm: null };
  const [light, heavy] = [one(1000, 100, 0, 'light'), one(1600, 108, 0, 'heavy')];
  // 1000·10 g·mm to the limit at 50 mm beyond it are 200 g; of the heavy one 1600·2 are 64 g.
  expect(massRange([light, heavy], limits, [160, 0, 0])).toEqual({ leastG: 0, mostG: 64, mostBy: heavy });
  expect(massRange([light], limits, [160, 0, 0])).toEqual({ leastG: 0, mostG: 200, mostBy: light });
  expect(massRange([light], limits, [100, 0, 0])).toEqual({ leastG: 0, mostG: Infinity, mostBy: null });
  expect(massRange([light], limits, [110, 0, 0])).toEqual({ leastG: 0, mostG: Infinity, mostBy: null });
  // Beyond the limit already, mass on its station brings it nearer, never back.
  expect(massRange([one(1000, 112)], limits, [110, 0, 0])).toBeNull();
  const sideways = { ...limits, lateralMm: 4 };
  // 1000 g 6 mm right want 2000 g·mm back, by mass 16 mm left of the limit: 100 g; too far right by 40 mm off the other.
  expect(massRange([one(1000, 100, 6)], sideways, [100, -16, 0])?.leastG).toBeCloseTo(100, 9);
  expect(massRange([one(1000, 100, -6)], sideways, [100, 16, 0])?.leastG).toBeCloseTo(100, 9);
});

describe('certainty', () => {
  test('two-sided quantiles of the normal distribution (any table: 1.959964, 2.575829)', () => {
    expect(sigmasFor(0.95)).toBeCloseTo(1.959964, 6);
    expect(sigmasFor(0.99)).toBeCloseTo(2.575829, 6);
    expect(() => sigmasFor(1)).toThrow(RangeError);
  });

  test('a band has nothing left beyond half its width', () => {
    expect(shrunkBand({ forwardMm: 10, aftMm: 20 }, 5)).toEqual({ forwardMm: 15, aftMm: 15 });
    expect(shrunkBand({ forwardMm: 10, aftMm: 20 }, 5.1)).toBeNull();
  });
});
