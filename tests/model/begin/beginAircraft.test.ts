import { describe, expect, test } from 'vitest';
import { COMMON_MARGINS } from '../../../src/engine/wing/margin';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { type ArrangementId, arrangementIds, arrangementOf } from '../../../src/model/begin/arrangements';
import { type Beginning, beginAircraft, motorsOf } from '../../../src/model/begin/beginAircraft';
import { constructions } from '../../../src/model/begin/proportions';
import { tapeFaults, wholeTape } from '../../../src/model/begin/tape';
import type { Aircraft, Surface } from '../../../src/model/document/types';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { readAircraft } from '../../../src/model/reading/read';
import { estimateStability } from '../../../src/model/stability/estimateStability';
import { marginKind } from '../../../src/model/stability/marginKind';
import { stabilityInput } from '../../../src/model/stability/stability';

const wishOf = (arrangement: ArrangementId, change: Partial<Beginning> = {}): Beginning => ({
  arrangement,
  typed: {},
  construction: 'balsa',
  motor: 'electric',
  massG: null,
  kit: null,
  band: null,
  ...change,
});

/** From a foam model of 0.8 m to a moulded one of 4 m, with an engine where there is room for one. */
const sizes = [
  { what: '0.8 m of foam', spanMm: 800, construction: 'foam', motor: 'electric' },
  { what: '1.6 m of balsa', spanMm: 1600, construction: 'balsa', motor: 'electric' },
  { what: '2.4 m with an engine', spanMm: 2400, construction: 'balsa', motor: 'petrol' },
  { what: '4 m of glass', spanMm: 4000, construction: 'glass', motor: 'electric' },
] as const;

const cases = arrangementIds.flatMap((arrangement) =>
  sizes
    .filter(({ motor }) => motorsOf(arrangement).includes(motor))
    .map(({ what, spanMm, ...made }) => ({
      name: `${arrangement}, ${what}`,
      arrangement,
      aircraft: beginAircraft(wishOf(arrangement, { typed: { spanMm }, ...made })),
    })),
);

const surfaceOf = ({ structure }: Aircraft, ...ids: string[]): Surface | undefined =>
  structure.find((piece): piece is Surface => piece.kind === 'surface' && ids.includes(piece.id));

/** Area of one half, mm², and the station of its quarter MAC, of a surface of one tapered panel, by the textbook. */
function half({ rootMm, rootChordMm: root, panels: [panel] }: Surface) {
  const { tipChordMm: tip, spanMm, sweepMm } = panel!;
  const taper = tip / root;
  const mac = ((2 / 3) * root * (1 + taper + taper ** 2)) / (1 + taper);
  const out = (1 + 2 * taper) / (3 * (1 + taper));
  return {
    area: (spanMm * (root + tip)) / 2,
    span: spanMm,
    mac,
    quarter: rootMm[0] + out * sweepMm + mac / 4,
  };
}

describe.each(cases)('$name', ({ arrangement, aircraft }) => {
  const plan = arrangementOf(arrangement);

  test('is an aircraft that reads, and nothing in it clashes', () => {
    expect(readAircraft(structuredClone(aircraft))).toMatchObject({ ok: true });
    expect(wholeFit(aircraft).problems).toEqual([]);
  });

  test('balances within the margins of its kind', () => {
    const answer = estimateStability(stabilityInput(aircraft), 'coarse');
    if (!answer || 'fault' in answer) throw new Error('no estimate');
    const { margin, fit } = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, estimate: answer });
    // What is usual by kind: common practice, no source; tests/engine/wing/margin.test.ts holds what a margin is.
    const { minPct, maxPct } = COMMON_MARGINS[marginKind(aircraft)];
    expect(margin?.leastPct).toBeGreaterThan(minPct - 0.01);
    expect(margin?.nowPct).toBeLessThan(maxPct + 0.01);
    expect(fit?.where).toBe('inside');
  });

  // Drela, Basic Aircraft Design Rules, MIT Unified Engineering (from memory): V_h 0.30 to 0.60, V_v 0.02 to 0.05.
  test('has tails of published volume', () => {
    const wing = half(surfaceOf(aircraft, 'wing')!);
    const S = 2 * plan.wings * wing.area;
    const tail = surfaceOf(aircraft, 'tailplane', 'v-tail');
    if (tail) {
      const { area, quarter } = half(tail);
      // A V counts flat by cos²: Purser and Campbell, NACA Report 823 (from memory).
      const flat = Math.cos((tail.cantDeg * Math.PI) / 180) ** 2;
      const volume = (2 * area * flat * (quarter - wing.quarter)) / (S * wing.mac);
      expect(volume).toBeGreaterThan(0.3);
      expect(volume).toBeLessThan(0.6);
    }
    const fin = surfaceOf(aircraft, 'fin');
    if (fin && plan.fin !== 'tips') {
      const { area, quarter } = half(fin);
      const both = fin.sides === 'both' ? 2 : 1;
      const volume = (both * area * (quarter - wing.quarter)) / (S * 2 * wing.span);
      expect(volume).toBeGreaterThan(0.02);
      expect(volume).toBeLessThan(0.05);
    }
  });

  // Reynolds, Model Builder, September 1989: mass over area^1.5 is the same for all sizes of a kind. His classes, from
  // memory, run from 2 to 14 oz/ft³, and one oz/ft³ is 28.3495 g over 0.3048³ m³: 1.001 kg/m³.
  test('weighs what models of its size weigh', () => {
    const wing = half(surfaceOf(aircraft, 'wing')!);
    const areaM2 = (2 * plan.wings * wing.area) / 1e6;
    const { massG } = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
    const cubeLoading = massG / 1000 / areaM2 ** 1.5;
    expect(cubeLoading).toBeGreaterThan(2);
    expect(cubeLoading).toBeLessThan(14);
  });

  test('has its pack in a bay, and legs where its kind has them', () => {
    expect(aircraft.parts.find(({ id }) => id === 'flight-pack')?.bayId).toBe('pack-bay');
    const legs = aircraft.structure.filter(({ kind }) => kind === 'leg');
    expect(legs.length > 0).toBe(plan.wheels !== 'none');
  });
});

test('what was typed is what comes out', () => {
  const typed = {
    spanMm: 1830,
    rootChordMm: 330,
    tipChordMm: 240,
    sweepMm: 35,
    lengthMm: 1410,
    wingAtMm: 345,
    tailSpanMm: 660,
    tailChordMm: 165,
  };
  const aircraft = beginAircraft(wishOf('low-wing', { typed, massG: 3150 }));
  const wing = surfaceOf(aircraft, 'wing')!;
  expect(wing).toMatchObject({ rootChordMm: 330, rootMm: [345, 0, expect.any(Number)] });
  expect(wing.panels).toMatchObject([{ spanMm: 915, tipChordMm: 240, sweepMm: 35 }]);
  const tail = surfaceOf(aircraft, 'tailplane')!;
  expect(2 * tail.panels[0]!.spanMm).toBe(660);
  expect((tail.rootChordMm + tail.panels[0]!.tipChordMm) / 2).toBeCloseTo(165, 0);
  expect(tail.rootMm[0] + tail.rootChordMm).toBeCloseTo(1410, 0);
  // Masses are rounded to a gram, skins to a tenth of a gram on the square metre.
  expect(balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }).massG / 3150).toBeCloseTo(1, 2);
});

test('every construction can be had, and carbon is lighter than glass', () => {
  const masses = Object.fromEntries(
    constructions.map((construction) => {
      const aircraft = beginAircraft(wishOf('mid-wing', { construction }));
      expect(wholeFit(aircraft).problems).toEqual([]);
      return [construction, balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }).massG];
    }),
  );
  expect(masses.carbon).toBeLessThan(masses.glass!);
});

describe('figures that no aircraft can have are refused in a sentence', () => {
  test.each([
    ['a span of nothing', { spanMm: 0 }, 'spanMm'],
    ['a span of a kilometre', { spanMm: 1e6 }, 'spanMm'],
    ['a wing behind the tail', { lengthMm: 900, wingAtMm: 800 }, 'wingAtMm'],
    ['a tip twice the root', { rootChordMm: 200, tipChordMm: 400 }, 'tipChordMm'],
    ['a tail wider than the wing', { spanMm: 1000, tailSpanMm: 1300 }, 'tailSpanMm'],
  ] as const)('%s', (_what, typed, field) => {
    expect(tapeFaults('low-wing', typed, 'electric')[field]).toMatch(/^[A-Z].*\.$/);
  });

  test.each(arrangementIds)('%s begins without a fault', (id) => {
    for (const motor of motorsOf(id)) expect(tapeFaults(id, {}, motor)).toEqual({});
    expect(Object.values(wholeTape(id, {}, 'electric')).every(Number.isFinite)).toBe(true);
  });
});
