import { describe, expect, test } from 'vitest';
import { planform } from '../../../src/engine/wing/planform';
import {
  drelaNeutralPoint,
  nelsonNeutralPoint,
  textbookNeutralPoint,
} from '../../../src/engine/wing/textbook';
import { flatPanel, rectangular, surfaceOf } from './builders';

const wing = rectangular(8, { rootMm: [300, 0, 0] });
const tail = surfaceOf([flatPanel({ spanMm: 250, rootChordMm: 125, tipChordMm: 125 })], {
  id: 'tail',
  rootMm: [900, 0, 0],
});

describe('textbook neutral point', () => {
  test('a flying wing: its quarter MAC', () => {
    expect(textbookNeutralPoint([wing])).toEqual({
      method: 'quarter MAC',
      stationMm: 350,
      pctMac: 25,
      drelaPctMac: null,
    });
  });

  test('wing and tail by hand', () => {
    // AR 8 and 4; S 1600 × 200, S_t 500 × 125, arm from 350 to 931.25
    const volume = (500 * 125 * 581.25) / (1600 * 200 * 200);
    const slope = (ar: number) => (2 * Math.PI * ar) / (2 + Math.sqrt(ar * ar + 4));
    const share = 0.25 + volume * (slope(4) / slope(8)) * (1 - (2 * slope(8)) / (Math.PI * 8));
    const found = textbookNeutralPoint([tail, wing]);
    expect(found?.method).toBe('wing and tail');
    expect(found?.pctMac).toBeCloseTo(100 * share, 9);
    expect(found?.stationMm).toBeCloseTo(300 + 200 * share, 9);
    expect(found?.drelaPctMac).toBeCloseTo(100 * drelaNeutralPoint(8, 4, volume), 9);
  });

  test('a canard by hand: both quarter chords weighted by slope × area, the wing’s inner part in the downwash', () => {
    const slope = (ar: number) => (2 * Math.PI * ar) / (2 + Math.sqrt(ar * ar + 4));
    const found = textbookNeutralPoint([{ ...tail, rootMm: [-200, 0, 0] }, wing]);
    expect(found?.method).toBe('canard');
    expect(found?.drelaPctMac).toBeNull();
    // Spans 500 and 1600: that share of the wing meets 1 − 2CLα/(π·AR) of the flow.
    const ofWing = slope(8) * 1600 * 200 * (1 - (500 / 1600) * ((2 * slope(4)) / (Math.PI * 4)));
    const ofCanard = slope(4) * 500 * 125;
    const stationMm = (ofWing * 350 + ofCanard * (-200 + 125 / 4)) / (ofWing + ofCanard);
    expect(found?.stationMm).toBeCloseTo(stationMm, 9);
    expect(found?.pctMac).toBeCloseTo((100 * (stationMm - 300)) / 200, 9);
  });

  test('a wing whose root is carried through a body is the wing through it', () => {
    const outside = (id: string, y: number) =>
      surfaceOf([flatPanel({ spanMm: 800 - y })], { id, rootMm: [300, y, 0] });
    const through = textbookNeutralPoint([wing, tail]);
    const carried = textbookNeutralPoint([outside('wing', 60), tail], { wing: 1 });
    expect(carried?.stationMm).toBeCloseTo(through?.stationMm ?? 0, 9);
    // And so is a tail: here one of 200 mm chord behind, its root at the boom's side.
    const whole = surfaceOf([flatPanel({ spanMm: 250 })], { id: 'tail', rootMm: [900, 0, 0] });
    const cut = surfaceOf([flatPanel({ spanMm: 220 })], { id: 'tail', rootMm: [900, 30, 0] });
    const expected = textbookNeutralPoint([wing, whole])?.stationMm ?? 0;
    expect(textbookNeutralPoint([wing, cut], { tail: 1 })?.stationMm).toBeCloseTo(expected, 9);
  });

  test('a tail counts from three hundredths of the wing on', () => {
    const methodOf = (share: number) =>
      textbookNeutralPoint([
        wing,
        surfaceOf([flatPanel({ spanMm: (share * 1600 * 200) / 200, rootChordMm: 100, tipChordMm: 100 })], {
          id: 'tail',
          rootMm: [900, 0, 0],
        }),
      ])?.method;
    expect([methodOf(0.0299), methodOf(0.0301)]).toEqual(['quarter MAC', 'wing and tail']);
  });

  test('Nelson’s terms: a fuselage moves it by Cmα/CLα, a slower flow at the tail takes its share (equation 2.36, by hand)', () => {
    const terms = {
      aerodynamicCentre: 0.25,
      fuselageCmAlpha: 0.3,
      wingSlope: 5,
      tailSlope: 4,
      tailVolume: 0.6,
      tailEfficiency: 0.9,
      downwash: 0.4,
    };
    expect(nelsonNeutralPoint(terms)).toBeCloseTo(0.25 - 0.3 / 5 + 0.9 * 0.6 * (4 / 5) * 0.6, 12);
  });

  test('Drela’s rule by hand: AR 10 and 5, volume 0.5', () => {
    expect(drelaNeutralPoint(10, 5, 0.5)).toBeCloseTo(0.25 + (1.2 / 1.4) * (1 - 4 / 12) * 0.5, 12);
  });

  test('a V-tail counts with the square of the cosine on its own area', () => {
    const shareOfTail = (cantDeg: number) =>
      (textbookNeutralPoint([wing, { ...tail, cantDeg }])?.pctMac ?? 0) - 25;
    expect(shareOfTail(40) / shareOfTail(0)).toBeCloseTo(Math.cos((40 * Math.PI) / 180) ** 2, 9);
    expect(planform({ ...tail, cantDeg: 40 }, 'own').areaMm2).toBe(planform(tail).areaMm2);
  });

  test('three lifting surfaces, or none, have no such formula; a fin and a strake do not count', () => {
    expect(textbookNeutralPoint([wing, tail, { ...tail, id: 'canard', rootMm: [-200, 0, 0] }])).toBeNull();
    expect(textbookNeutralPoint([])).toBeNull();
    const fin = { ...tail, id: 'fin', cantDeg: 90, sides: 'centre' as const };
    const strake = surfaceOf([flatPanel({ spanMm: 30, rootChordMm: 60, tipChordMm: 60 })], {
      id: 'strake',
      rootMm: [100, 0, 0],
    });
    expect(textbookNeutralPoint([wing, fin, strake])?.method).toBe('quarter MAC');
  });
});
