import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { movedStructure, replaceStructure } from '../../../src/model/document/edit';
import type { Aircraft, Surface } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { parseAircraft, readAircraft } from '../../../src/model/reading/read';
import { bandStations, wingPlanform } from '../../../src/model/stability/band';
import { estimateStability } from '../../../src/model/stability/estimateStability';
import { likelyMarginKind } from '../../../src/model/stability/marginKind';
import {
  changeStability,
  type StabilityEstimate,
  stabilityInput,
  stabilitySettings,
} from '../../../src/model/stability/stability';
import { aircraftOf, boxPart, dunlinJson } from '../aircraft';

const demo = (name: string): Aircraft =>
  JSON.parse(readFileSync(new URL(`../../../demo-data/${name}.json`, import.meta.url), 'utf8'));

const estimateOf = (aircraft: Aircraft, detail: 'coarse' | 'fine' = 'fine'): StabilityEstimate => {
  const answer = estimateStability(stabilityInput(aircraft), detail);
  if (!answer || 'fault' in answer) throw new Error(`expected an estimate, got ${JSON.stringify(answer)}`);
  return answer;
};

/** A straight wing of chord 200 mm with its leading edge at station 500. */
const plank = (halfSpanMm: number, given: Partial<Surface> = {}): Surface => ({
  id: 'wing',
  kind: 'surface',
  name: 'Wing',
  role: 'wing',
  sides: 'both',
  rootMm: [500, 0, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm: 200,
  rootThicknessPct: 10,
  panels: [
    { spanMm: halfSpanMm, tipChordMm: 200, sweepMm: 0, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 10 },
  ],
  mass: { by: 'weighed', massG: 500 },
  ...given,
});

const kinds = ['corncrake', 'fieldfare', 'sandmartin', 'whimbrel'];

describe('the estimate', () => {
  test('puts a long straight wing at its quarter chord, as thin-aerofoil theory does', () => {
    // Aspect ratio 40. No planform has a greater lift-curve slope in lifting-line theory than the elliptic
    // one's 2π·AR/(AR + 2); a rectangle of this aspect ratio has a few per cent less.
    const { neutralPointMm, pctMac, macMm, lemacMm, clAlphaPerRad } = estimateOf(aircraftOf([plank(4000)]));
    expect([macMm, lemacMm]).toEqual([200, 500]);
    expect(Math.abs(neutralPointMm - 550)).toBeLessThan(1);
    expect(pctMac).toBeCloseTo((neutralPointMm - 500) / 2, 9);
    const ofEllipse = (2 * Math.PI * 40) / 42;
    expect(clAlphaPerRad).toBeLessThan(ofEllipse);
    expect(clAlphaPerRad).toBeGreaterThan(0.95 * ofEllipse);
  });

  test.each(kinds)('converges for the demo aircraft %s and is read on the MAC of the screen', (name) => {
    const aircraft = demo(name);
    const estimate = estimateOf(aircraft);
    const mac = wingPlanform(aircraft);
    expect(estimate.converged).toBe(true);
    expect([estimate.macMm, estimate.lemacMm]).toEqual([mac?.macMm, mac?.lemacMm]);
    // A coarse lattice is for dragging: within one or two per cent of the chord, or the mark would jump.
    const { neutralPointMm } = estimateOf(aircraft, 'coarse');
    expect(Math.abs(neutralPointMm - estimate.neutralPointMm)).toBeLessThan(0.02 * estimate.macMm);
  });

  test.each(kinds)('leaves %s a margin in all of its stated band', (name) => {
    const aircraft = demo(name);
    expect(estimateOf(aircraft).neutralPointMm).toBeGreaterThan(bandStations(aircraft)?.aftMm ?? Infinity);
  });

  test('moves with the aircraft when the datum is moved', () => {
    const aircraft = demo('sandmartin');
    const before = estimateOf(aircraft, 'coarse');
    fc.assert(
      fc.property(fc.integer({ min: -2000, max: 2000 }), fc.integer({ min: -300, max: 300 }), (x, z) => {
        const structure = aircraft.structure.map((piece) => movedStructure(piece, [x, 0, z]));
        const after = estimateOf({ ...aircraft, structure }, 'coarse');
        expect(after.neutralPointMm - before.neutralPointMm).toBeCloseTo(x, 5);
        expect(after.lemacMm - before.lemacMm).toBeCloseTo(x, 9);
        expect(after.pctMac).toBeCloseTo(before.pctMac, 6);
      }),
      { numRuns: 12 },
    );
  });

  test('is the same for the mirror image', () => {
    const aircraft = demo('fieldfare');
    const structure = aircraft.structure.map((piece) =>
      piece.kind === 'fuselage'
        ? { ...piece, buttlineMm: -piece.buttlineMm }
        : piece.kind === 'surface' && piece.sides === 'centre'
          ? { ...piece, cantDeg: 180 - piece.cantDeg }
          : piece,
    );
    expect(estimateOf({ ...aircraft, structure }, 'coarse').neutralPointMm).toBeCloseTo(
      estimateOf(aircraft, 'coarse').neutralPointMm,
      9,
    );
  });

  test('counts the fuselage unless told not to; a body that reaches ahead of the wing destabilises', () => {
    const aircraft = demo('sandmartin');
    const counted = estimateOf(aircraft);
    const bare = estimateOf(changeStability(aircraft, { fuselage: false }));
    expect(counted.fuselageShiftMm).toBeLessThan(0);
    expect(bare.fuselageShiftMm).toBe(0);
    expect(counted.neutralPointMm - counted.fuselageShiftMm).toBeCloseTo(bare.neutralPointMm, 9);
    const causes = bare.doubts.map(({ cause }) => cause);
    expect(causes).toContain('fuselageNotCounted');
    expect(causes).not.toContain('fuselage');
    expect(bare.neutralPointSigmaMm).toBeGreaterThan(-counted.fuselageShiftMm);
  });

  test('a wing whose roots end at the hull’s sides carries on through the hull', () => {
    const section = { heightMm: 100, waterlineMm: 0, roundness: 1 };
    const hull = {
      id: 'hull',
      kind: 'fuselage' as const,
      name: 'Hull',
      sides: 'centre' as const,
      buttlineMm: 0,
      sections: [
        { ...section, stationMm: 300, widthMm: 120 },
        { ...section, stationMm: 900, widthMm: 120 },
      ],
      skinMm: 2,
      mass: { by: 'weighed' as const, massG: 300 },
    };
    const parted = changeStability(aircraftOf([hull, plank(940, { rootMm: [500, 60, 0] })]), {
      fuselage: false,
    });
    const whole = aircraftOf([plank(1000)]);
    const [inTwo, inOne] = [estimateOf(parted), estimateOf(whole)];
    expect(inTwo.clAlphaPerRad).toBeCloseTo(inOne.clAlphaPerRad, 9);
    expect(inTwo.neutralPointMm).toBeCloseTo(inOne.neutralPointMm, 8);
  });

  test('says what is wrong with a geometry, and nothing where nothing lifts', () => {
    const broken = estimateStability(
      stabilityInput(aircraftOf([plank(500, { rootMm: [500, -20, 0] })])),
      'fine',
    );
    expect(broken).toEqual({ fault: expect.stringContaining('lifting surface "Wing"') });
    expect(estimateStability(stabilityInput(aircraftOf([])), 'fine')).toBe(null);
  });
});

describe('what the estimate depends on', () => {
  test('is the same object until structure or settings change', () => {
    const aircraft = demo('sandmartin');
    const input = stabilityInput(aircraft);
    const pack = aircraft.parts[0];
    expect(stabilityInput({ ...aircraft, parts: pack ? [pack] : [] })).toBe(input);
    expect(stabilityInput(changeStability(aircraft, { marginRange: { minPct: 5, maxPct: 10 } }))).toBe(input);
    expect(stabilityInput(changeStability(aircraft, { fuselage: false }))).not.toBe(input);
    const [first] = aircraft.structure;
    if (!first) throw new Error('the demo has no structure');
    expect(stabilityInput(replaceStructure(aircraft, movedStructure(first, [1, 0, 0])))).not.toBe(input);
  });

  test('can be sent to a worker', () => {
    const input = stabilityInput(demo('whimbrel'));
    expect(structuredClone(input)).toEqual(input);
  });
});

describe('the settings in the file', () => {
  const asked = { marginRange: { minPct: 5, maxPct: 12 }, fuselage: false };

  test('are optional, come back as written, and have plain defaults', () => {
    const old = readAircraft(dunlinJson());
    if (!old.ok) throw new Error('the old file does not read');
    expect(stabilitySettings(old.aircraft)).toEqual({ marginRange: null, fuselage: true });
    const read = parseAircraft(writeAircraft(changeStability(old.aircraft, asked)));
    expect(read.ok && stabilitySettings(read.aircraft)).toEqual(asked);
  });

  test('refuse a range the wrong way round, at its place', () => {
    const read = readAircraft({ ...dunlinJson(), stability: { marginRange: { minPct: 12, maxPct: 5 } } });
    expect(!read.ok && read.faults.map(({ at }) => at)).toEqual([['stability', 'marginRange', 'minPct']]);
  });

  test.each([
    ['corncrake', 'glider'],
    ['fieldfare', 'canard'],
    ['sandmartin', 'sport'],
    ['whimbrel', 'flyingWing'],
  ])('%s is offered the usual margin of a %s', (name, kind) => {
    expect(likelyMarginKind(demo(name))).toBe(kind);
  });
});

describe('the balance', () => {
  const wing = { ...aircraftOf([plank(4000)], [boxPart('pack', 1500, [530, 0, 0])]), bareAirframe: null };
  const wanted = changeStability(wing, { marginRange: { minPct: 5, maxPct: 10 } });
  const estimate = estimateOf(wing);
  const loading = { fuelFraction: 1, down: LEVEL, estimate };

  test('takes its band from the margin wanted, at NP − margin × MAC', () => {
    const { band, bandFrom, estimatedBand, fit } = balanceAt(wanted, loading);
    expect(bandFrom).toBe('estimate');
    expect(band).toEqual(estimatedBand);
    expect(band?.forwardMm).toBeCloseTo(estimate.neutralPointMm - 20, 9);
    expect(band?.aftMm).toBeCloseTo(estimate.neutralPointMm - 10, 9);
    expect(fit).not.toBe(null);
  });

  test('keeps to stated limits when there are any, with the other band beside them', () => {
    const stated: Aircraft = { ...wanted, targetBand: { by: 'station', forwardMm: 510, aftMm: 525 } };
    const { band, bandFrom, estimatedBand } = balanceAt(stated, loading);
    expect([bandFrom, band]).toEqual(['stated', { forwardMm: 510, aftMm: 525 }]);
    expect(estimatedBand?.aftMm).toBeCloseTo(estimate.neutralPointMm - 10, 9);
  });

  test('has no band and no margin without an estimate, and none that nobody asked for', () => {
    const without = balanceAt(wanted, { fuelFraction: 1, down: LEVEL });
    expect([without.band, without.bandFrom, without.margin, without.travelMarginsPct]).toEqual([
      null,
      null,
      null,
      [],
    ]);
    expect(balanceAt(wing, loading).band).toBe(null);
  });

  test('gives the static margin (NP − CG)/MAC now, and the least over the burn where the CG is aftmost', () => {
    const aircraft = demo('sandmartin');
    const own = estimateOf(aircraft, 'coarse');
    const now = balanceAt(aircraft, { fuelFraction: 0.6, down: LEVEL, estimate: own });
    const marginAt = (stationMm: number) => (100 * (own.neutralPointMm - stationMm)) / own.macMm;
    expect(now.margin?.nowPct).toBeCloseTo(marginAt(now.cgMm?.[0] ?? NaN), 9);
    expect(now.travelMarginsPct).toHaveLength(now.travel.length);
    now.travel.forEach(({ cgMm }, index) => {
      expect(now.travelMarginsPct[index]).toBeCloseTo(marginAt(cgMm[0]), 9);
    });
    expect(now.margin?.leastPct).toBeCloseTo(Math.min(...now.travelMarginsPct), 9);
    const aftmost = now.travel.find(({ fuelFraction }) => fuelFraction === now.margin?.atFuelFraction);
    expect(marginAt(aftmost?.cgMm[0] ?? NaN)).toBeCloseTo(now.margin?.leastPct ?? NaN, 9);
  });
});
