import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { cgErrorOf } from '../../../src/model/balance/certainty';
import { massOnScales } from '../../../src/model/balance/massOnScales';
import { measuredThings, USUAL } from '../../../src/model/balance/measurements';
import { mirrorPart, updatePart } from '../../../src/model/document/edit';
import type { Aircraft, MassFrom, StructurePiece } from '../../../src/model/document/types';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { parseAircraft } from '../../../src/model/reading/read';
import { enterFound, massFromWhole } from '../../../src/model/weigh/findMass';
import { headAndCause } from '../../../src/model/words/headline';
import { readings } from '../../../src/panels/readings';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

const at = (aircraft: Aircraft, fuelFraction = 1) => balanceAt(aircraft, { fuelFraction, down: LEVEL });
const twoSigmaMm = (aircraft: Aircraft) => 2 * cgErrorOf(aircraft, at(aircraft))!.sigmaMm[0];

const list: Aircraft = aircraftOf(
  [boxBlock('hull', [400, 0, 0], { by: 'foam', gPerMl: 0.3 })],
  [
    { ...boxPart('pack', 500, [150, 0, 0]), massFrom: 'typical' },
    { ...boxPart('engine', 900, [40, 0, 0]), massFrom: 'weighed' },
    { ...boxPart('camera', 300, [700, 0, 0]), massFrom: 'assumed' },
    boxPart('radio', 60, [300, 0, 0]),
  ],
);

describe('what the mass rests on', () => {
  test('the shares are those of the list and come to the whole', () => {
    const answer = massOnScales(list, at(list))!;
    const share = Object.fromEntries(answer.shares.map(({ restsOn, massG }) => [restsOn, massG]));
    // 200 × 100 × 50 mm at 0.3 g/ml are 300 g, and nobody weighed them.
    expect(share).toEqual({ weighed: 900, 'not said': 60, typical: 500, assumed: 600 });
    expect(answer.shares.reduce((sum, { massG }) => sum + massG, 0)).toBeCloseTo(answer.massG, 9);
  });

  test('each thing named makes the CG as sure as it says, once it is weighed', () => {
    const answer = massOnScales(list, at(list))!;
    expect(answer.nowMm).toBeCloseTo(twoSigmaMm(list), 9);
    expect(answer.next[0]!.id).toBe('camera');
    for (const { id, thenMm } of answer.next.filter(({ id }) => id !== 'hull')) {
      const weighed = updatePart(list, id, { massFrom: 'weighed', plusMinusG: USUAL.scalesG });
      expect(twoSigmaMm(weighed)).toBeCloseTo(thenMm, 9);
    }
    const all = list.parts.map(({ id }) => twoSigmaMm(updatePart(list, id, { massFrom: 'weighed' })));
    expect(Math.min(...all)).toBeCloseTo(answer.next[0]!.thenMm, 9);
  });

  test('with everything on a scale there is nothing left to weigh', () => {
    const weighed = aircraftOf(
      [],
      list.parts.map((part) => ({ ...part, massFrom: 'weighed' })),
    );
    expect(massOnScales(weighed, at(weighed))!.next).toEqual([]);
    expect(massOnScales(aircraftOf([]), at(aircraftOf([])))).toBeNull();
  });
});

describe('the source feeds the ±', () => {
  const plusMinusOf = (massFrom: MassFrom | undefined) => {
    const aircraft = aircraftOf([], [{ ...boxPart('pack', 500, [150, 0, 0]), massFrom }]);
    return measuredThings(aircraft, at(aircraft).bodies)[0]!.plusMinus.g;
  };

  test('the less sure the source, the wider it is; what is unknown may be all of it', () => {
    const order = (['weighed', 'measured', 'typical', 'assumed', 'unknown'] as const).map(plusMinusOf);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(new Set(order).size).toBe(order.length);
    expect(plusMinusOf('unknown')).toBe(500);
    // A file that says nothing is read as it always was.
    expect(plusMinusOf(undefined)).toBe(USUAL.scalesG);
  });

  test('a ± that somebody stated counts whatever the source', () => {
    const aircraft = aircraftOf(
      [],
      [{ ...boxPart('pack', 500, [150, 0, 0]), massFrom: 'assumed', plusMinusG: 3 }],
    );
    expect(measuredThings(aircraft, at(aircraft).bodies)[0]!.plusMinus.g).toBe(3);
  });

  test('sizes that are assumed make the place less sure, along their own length', () => {
    const aircraft = aircraftOf([], [{ ...boxPart('pack', 500, [150, 0, 0]), sizeFrom: 'assumed' }]);
    const { sigmaMm } = measuredThings(aircraft, at(aircraft).bodies)[0]!;
    // A box of 100 × 40 × 20 mm: half of a tenth of each length, with the tape's 2 mm, as two standard uncertainties.
    [100, 40, 20].forEach((lengthMm, axis) => {
      expect(2 * sigmaMm[axis]!).toBeCloseTo(Math.hypot(2, (0.1 * lengthMm) / 2), 9);
    });
  });
});

const inG = (massG: number) => `${massG} g`;

describe('an unknown mass', () => {
  const unknown = updatePart(list, 'camera', { massFrom: 'unknown', massG: 1 });
  const head = (aircraft: Aircraft) => {
    const judgement = judgeFully(aircraft, { down: LEVEL, estimate: null });
    return { severity: judgement.severity, ...headAndCause(aircraft, judgement, readings('metric', 0)) };
  };

  test('is never good, and the verdict says whose it is', () => {
    const sound: Aircraft = {
      ...list,
      structure: [],
      parts: list.parts.map((part) => ({ ...part, inTheOpen: true })),
      targetBand: { by: 'station', forwardMm: 100, aftMm: 500 },
    };
    const doubtful = updatePart(sound, 'camera', { massFrom: 'unknown' });
    expect(head(doubtful).severity).toBe('unknown');
    expect(head(doubtful).headline).toMatch(/mass of “camera” is not known/);
    expect(head(sound).headline).not.toMatch(/not known/);
  });

  test('is the whole less all else, and as unsure as both together', () => {
    const wholeG = at(list).massG;
    const found = massFromWhole(unknown, at(unknown), 'camera', { massG: wholeG, plusMinusG: 6 }, inG);
    if (typeof found === 'string') throw new Error(found);
    expect(found.massG).toBe(300);
    // ± 10 % of the pack's 500 g, 5 % of the hull's 300 g, 1 g each for engine and radio, 6 g for the scale.
    const expected = Math.hypot(50, 15, 1, 1, 6);
    expect(found.plusMinusG).toBeGreaterThanOrEqual(expected);
    expect(found.plusMinusG).toBeLessThanOrEqual(expected + 0.1);
    const entered = enterFound(unknown, 'camera', found);
    expect(entered.parts.find(({ id }) => id === 'camera')).toMatchObject({
      massG: 300,
      massFrom: 'measured',
    });
  });

  test('with liquid aboard, the same: what burns is no part of it', () => {
    const read = parseAircraft(
      readFileSync(new URL('../../../demo-data/sandmartin.json', import.meta.url), 'utf8'),
    );
    if (!read.ok) throw new Error(read.faults[0]?.sentence);
    const { id, massG } = read.aircraft.parts[2]!;
    const guessed = updatePart(read.aircraft, id, { massG: massG / 3, massFrom: 'unknown' });
    for (const left of [1, 0.4, 0]) {
      const whole = { massG: at(read.aircraft, left).massG, plusMinusG: 5 };
      const found = massFromWhole(guessed, at(guessed, left), id, whole, inG);
      expect(typeof found === 'string' ? found : found.massG).toBeCloseTo(massG, 0);
    }
  });

  test.each([
    [{ massG: 100, plusMinusG: 5 }, list, /nothing is left for “camera”/],
    [
      { massG: 2000, plusMinusG: 5 },
      updatePart(list, 'pack', { massFrom: 'unknown' }),
      /“pack” is not known either/,
    ],
    // A list from a table has what nobody knows as nothing at all.
    [
      { massG: 2000, plusMinusG: 5 },
      updatePart(list, 'pack', { massFrom: 'unknown', massG: 0 }),
      /“pack” is not known either/,
    ],
    [{ massG: 2000, plusMinusG: 5 }, aircraftOf([]), /not aboard/],
    // Less than is written down: a twentieth of a gram.
    [{ massG: 1760.04, plusMinusG: 5 }, list, /nothing is left for “camera”/],
  ])('is not found from %j where it cannot be', (whole, aircraft, sentence) => {
    expect(massFromWhole(aircraft, at(aircraft), 'camera', whole, inG)).toMatch(sentence);
  });

  test('in its words masses are written as the person reads them', () => {
    const whole = { massG: 1000, plusMinusG: 5 };
    // 1 oz = 28.349 523 125 g: NIST Special Publication 811, appendix B. All else is 1760 g.
    const ounces = (massG: number) => `${(massG / 28.349523125).toFixed(2)} oz`;
    expect(massFromWhole(list, at(list), 'camera', whole, ounces)).toMatch(
      /62\.08 oz by.* 35\.27 oz nothing/,
    );
  });

  const finding = (aircraft: Aircraft, id: string, wholeG: number) => {
    const whole = { massG: wholeG, plusMinusG: 6 };
    const found = massFromWhole(aircraft, at(aircraft), id, whole, inG);
    if (typeof found === 'string') throw new Error(found);
    return { found, entered: enterFound(aircraft, id, found) };
  };

  test('of a mirrored pair is shared, and the two together are as unsure as the whole less all else', () => {
    const off = updatePart(unknown, 'camera', { positionMm: [700, 80, 0], massG: 0 });
    const { aircraft } = mirrorPart(off, 'camera')!;
    const { found, entered } = finding(aircraft, 'camera', 1760 + 300);
    expect(found.massG).toBe(150);
    expect(at(entered).massG).toBeCloseTo(2060, 9);
    const twins = measuredThings(entered, at(entered).bodies).filter(
      ({ massFrom }) => massFrom === 'measured',
    );
    const together = Math.hypot(...twins.map(({ plusMinus }) => plusMinus.g));
    expect(together).toBeGreaterThanOrEqual(Math.hypot(50, 15, 1, 1, 6) - 1e-9);
    expect(together).toBeLessThan(Math.hypot(50, 15, 1, 1, 6) + 0.2);
  });

  const leg: StructurePiece = {
    id: 'leg',
    kind: 'leg',
    name: 'Leg',
    sides: 'both',
    topMm: [300, 50, -30],
    axleMm: [310, 180, -170],
    strutDiameterMm: 6,
    strutMassG: 60,
    wheelDiameterMm: 80,
    wheelWidthMm: 28,
    wheelMassG: 40,
    massFrom: 'unknown',
  };

  test('of structure is found too: a hull from its density, legs of which there are two', () => {
    const hull = {
      ...list,
      structure: list.structure.map((piece) => ({ ...piece, massFrom: 'unknown' }) as const),
    };
    // All else is 1760 g.
    const { entered } = finding(hull, 'hull', 1760 + 410);
    expect(entered.structure[0]).toMatchObject({
      mass: { by: 'weighed', massG: 410, spread: 'solid' },
      massFrom: 'measured',
    });
    expect(at(entered).massG).toBeCloseTo(2170, 9);
    const onLegs = { ...list, structure: [...list.structure, leg] };
    const found = finding(onLegs, 'leg', at(list).massG + 250);
    // 125 g on either side, of which two fifths is the wheel as before.
    expect(found.entered.structure[1]).toMatchObject({
      strutMassG: 75,
      wheelMassG: 50,
      massFrom: 'measured',
    });
    expect(at(found.entered).massG).toBeCloseTo(at(list).massG + 250, 9);
    const weighed: Aircraft = {
      ...onLegs,
      bareAirframe: { massG: 500, stationMm: 400, buttlineMm: 0, use: 'replace' },
    };
    expect(massFromWhole(weighed, at(weighed), 'leg', { massG: 3000, plusMinusG: 5 }, inG)).toMatch(
      /weighed with the whole bare airframe/,
    );
  });
});
