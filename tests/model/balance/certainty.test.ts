import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { certaintyOf, cgErrorOf } from '../../../src/model/balance/certainty';
import { USUAL } from '../../../src/model/balance/measurements';
import { placeItem, updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { readAircraft } from '../../../src/model/reading/read';
import { changeStability } from '../../../src/model/stability/stability';
import { adviceWords, sureWords } from '../../../src/model/words/certaintyWords';
import { gaussians } from '../../engine/balance/gaussians';
import { aircraftOf, boxBlock, boxPart, dunlinJson } from '../aircraft';
import { estimateAt } from '../judgement/estimate';

const full = { fuelFraction: 1, down: LEVEL };
const errorOf = (aircraft: Aircraft) => cgErrorOf(aircraft, balanceAt(aircraft, full))!;

test('by hand: two equal packs 200 mm apart, each ± 2 g and ± 4 mm', () => {
  const well = { plusMinusG: 2, plusMinusMm: 4 };
  const aircraft = aircraftOf(
    [],
    [
      { ...boxPart('a', 500, [0, 0, 0]), ...well },
      { ...boxPart('b', 500, [200, 0, 0]), ...well },
    ],
  );
  // u² = 2·(100/1000 · 1 g)² + 2·(1/2 · 2 mm)², with standard uncertainties of half the ± (GUM 6.3.3).
  expect(errorOf(aircraft).sigmaMm[0]).toBeCloseTo(Math.sqrt(2 * 0.1 ** 2 + 2 * 1 ** 2), 12);
  expect(errorOf(aircraft).massSigmaG).toBeCloseTo(Math.SQRT2, 12);
});

describe('what is not said is taken as usual', () => {
  test('a part: the resolution of the scales and the tape', () => {
    const [silent, said] = [
      aircraftOf([], [boxPart('a', 500, [0, 0, 0])]),
      aircraftOf(
        [],
        [{ ...boxPart('a', 500, [0, 0, 0]), plusMinusG: USUAL.scalesG, plusMinusMm: USUAL.tapeMm }],
      ),
    ];
    expect(errorOf(silent)).toEqual(errorOf(said));
  });

  test('a typical figure and a mass from a density are known less well than one from the scales', () => {
    const weighed = aircraftOf([], [boxPart('a', 500, [0, 0, 0])]);
    const typical = aircraftOf([], [{ ...boxPart('a', 500, [0, 0, 0]), massFrom: 'typical' }]);
    expect(errorOf(typical).massSigmaG).toBeCloseTo((0.1 * 500) / 2, 9);
    expect(errorOf(weighed).massSigmaG).toBeCloseTo(0.5, 9);
    // A foam block of 200 × 100 × 50 mm at 0.1 g/ml weighs 100 g.
    const foam = aircraftOf([boxBlock('a', [0, 0, 0], { by: 'foam', gPerMl: 0.1 })]);
    expect(errorOf(foam).massSigmaG).toBeCloseTo((0.05 * 100) / 2, 9);
  });

  test('a weighed bare airframe stands for all its elements, however badly these are known', () => {
    const vague = { ...boxBlock('a', [0, 0, 0], { by: 'foam', gPerMl: 0.1 }), plusMinusG: 90 };
    const aircraft: Aircraft = {
      ...aircraftOf([vague]),
      bareAirframe: {
        massG: 104,
        stationMm: 3,
        buttlineMm: 0,
        use: 'correct',
        plusMinusG: 2,
        plusMinusMm: 6,
      },
    };
    expect(errorOf(aircraft).massSigmaG).toBeCloseTo(1, 9);
    expect(errorOf(aircraft).sigmaMm[0]).toBeCloseTo(3, 9);
  });
});

test('Monte Carlo on the document itself gives the same spread (second route, seeded)', () => {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  // Only parts are off, so that each draw is an ordinary edit; liquid and structure are taken as known.
  const known = { plusMinusG: 0, plusMinusMm: 0 };
  const aircraft: Aircraft = {
    ...read.aircraft,
    fuel: { ...read.aircraft.fuel!, plusMinusGPerMl: 0 },
    structure: read.aircraft.structure.map((element) => ({ ...element, ...known })),
    tanks: read.aircraft.tanks.map((tank) => ({ ...tank, ...known })),
    bareAirframe: null,
    parts: read.aircraft.parts.map((part) => ({ ...part, plusMinusG: 8, plusMinusMm: 12 })),
  };
  const next = gaussians(20261125);
  const draws = Array.from({ length: 4000 }, () => {
    let drawn = aircraft;
    for (const {
      id,
      massG,
      positionMm: [x, y, z],
    } of aircraft.parts) {
      drawn = updatePart(drawn, id, { massG: massG + 4 * next() });
      drawn = placeItem(drawn, id, [x + 6 * next(), y + 6 * next(), z + 6 * next()]);
    }
    return balanceAt(drawn, full).cgMm![0];
  });
  const mean = draws.reduce((sum, x) => sum + x, 0) / draws.length;
  const spread = Math.sqrt(draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (draws.length - 1));
  // The standard error of a standard deviation from 4000 draws is 1/√8000, 1.1 %; four of them.
  expect(errorOf(aircraft).sigmaMm[0] / spread).toBeGreaterThan(0.955);
  expect(errorOf(aircraft).sigmaMm[0] / spread).toBeLessThan(1.045);
});

describe('certainty over the burn', () => {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  const { aircraft } = read;

  test('at the fuel shown it agrees with the error of the CG', () => {
    const certainty = certaintyOf(aircraft, balanceAt(aircraft, full));
    expect(certainty.travelPlusMinusMm[0]).toBeCloseTo(2 * errorOf(aircraft).sigmaMm[0], 9);
  });

  test('a band far around the travel is sure, one that ends at its foremost point is not', () => {
    const { travel } = balanceAt(aircraft, full);
    const least = Math.min(...travel.map(({ cgMm }) => cgMm[0]));
    const withBand = (forwardMm: number, aftMm: number): Aircraft => ({
      ...aircraft,
      targetBand: { by: 'station', forwardMm, aftMm },
    });
    const sure = (one: Aircraft) => certaintyOf(one, balanceAt(one, full)).probability;
    expect(sure(withBand(least - 500, least + 500))).toBeCloseTo(1, 9);
    // The limit runs through the middle of its distribution.
    expect(sure(withBand(least, least + 500))).toBeCloseTo(0.5, 6);
  });

  test('the badly weighed part leads the ranking, and the advice names it', () => {
    const bad: Aircraft = {
      ...updatePart(aircraft, aircraft.parts[0]!.id, { plusMinusG: 300 }),
      targetBand: { by: 'station', forwardMm: -1e4, aftMm: 1e4 },
    };
    const certainty = certaintyOf(bad, balanceAt(bad, full));
    expect(certainty.ranking[0]).toMatchObject({
      bodyId: bad.parts[0]!.id,
      quantity: 'mass',
      plusMinus: 300,
    });
    expect(certainty.ranking.length).toBeLessThanOrEqual(5);
    const say = { mass: (g: number) => `${g} g`, lengthFine: (mm: number) => `${mm} mm` };
    expect(adviceWords(certainty, say)).toBe(`Weighing “${bad.parts[0]!.name}” to 1 g would help most.`);
  });
});

test('no probability is ever called certain', () => {
  expect(sureWords(0.97, true)).toBe('97 % sure that the whole burn is in the band.');
  expect(sureWords(1, false)).toBe('More than 99 % sure that the CG is in the band.');
  expect(sureWords(0, true)).toBe('Less than 1 % sure that the whole burn is in the band.');
});

test('a band that hangs on an estimated neutral point is as unsure as that is; a stated one is not', () => {
  const pack = { ...boxPart('pack', 1000, [520, 0, 0]), plusMinusG: 1, plusMinusMm: 4 };
  const wanted = changeStability(aircraftOf([], [pack]), { marginRange: { minPct: 5, maxPct: 15 } });
  const sure = (aircraft: Aircraft, neutralPointSigmaMm: number) => {
    // MAC 200 mm: the band runs from 535 − 30 to 535 − 10 mm.
    const estimate = { ...estimateAt(535), neutralPointSigmaMm };
    return certaintyOf(aircraft, balanceAt(aircraft, { ...full, estimate })).probability;
  };
  // Both limits move as one: Φ((525 − 520)/s) − Φ((505 − 520)/s), s² = 2² + 3² mm²; Φ by Abramowitz and Stegun, table 26.1.
  // s = √13: Φ(1.3868) = 0.9172, Φ(−4.16) = 0.0000; s = 2: Φ(2.5) = 0.9938.
  expect(sure(wanted, 3)).toBeCloseTo(0.9172, 3);
  expect(sure(wanted, 0)).toBeCloseTo(0.9938, 3);
  const stated: Aircraft = { ...wanted, targetBand: { by: 'station', forwardMm: 505, aftMm: 525 } };
  expect(sure(stated, 3)).toBeCloseTo(0.9938, 3);
});
