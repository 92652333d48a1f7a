import { describe, expect, test } from 'vitest';
import { planform } from '../../../src/engine/wing/planform';
import { drelaNeutralPoint, textbookNeutralPoint } from '../../../src/engine/wing/textbook';
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

  test('a canard: between the two quarter chords, ahead of the wing', () => {
    const found = textbookNeutralPoint([{ ...tail, rootMm: [-200, 0, 0] }, wing]);
    expect(found?.method).toBe('canard');
    expect(found?.drelaPctMac).toBeNull();
    expect(found?.stationMm).toBeGreaterThan(-200 + 125 / 4);
    expect(found?.stationMm).toBeLessThan(350);
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
