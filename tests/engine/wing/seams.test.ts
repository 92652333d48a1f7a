import { describe, expect, test } from 'vitest';
import { neutralPoint } from '../../../src/engine/wing/neutralPoint';
import { seamStates } from '../../../src/engine/wing/seamBlend';
import type { Seam } from '../../../src/engine/wing/seams';
import type { LiftingSurface } from '../../../src/engine/wing/types';
import { flatPanel, surfaceOf } from './builders';

const solved = (surfaces: readonly LiftingSurface[]) => {
  const found = neutralPoint(surfaces, { detail: 'fine', maxUnknowns: 160 });
  if (!found) throw new Error('expected a neutral point');
  return { ...found, liftMm2: found.clAlphaPerRad * found.wing.areaMm2 };
};

/** A tapered, swept, bent wing cut at shares of its half span into so many surfaces. */
function wingInPieces(cuts: readonly number[], dihedralDeg = 3): LiftingSurface[] {
  const rise = Math.tan((dihedralDeg * Math.PI) / 180);
  const chordAt = (t: number) => 260 - 130 * t;
  return [0, ...cuts].map((from, k) => {
    const to = cuts[k] ?? 1;
    return surfaceOf(
      [
        flatPanel({
          spanMm: 1000 * (to - from),
          rootChordMm: chordAt(from),
          tipChordMm: chordAt(to),
          sweepMm: 300 * (to - from),
          dihedralDeg,
        }),
      ],
      { id: `piece ${k}`, rootMm: [300 * from, 1000 * from, 1000 * from * rise] },
    );
  });
}

const tail = surfaceOf([flatPanel({ spanMm: 300, rootChordMm: 150, tipChordMm: 110, sweepMm: 30 })], {
  id: 'tail',
  rootMm: [900, 0, 120],
});

/** In % of the wing's MAC, some 200 mm. */
const apart = (a: readonly LiftingSurface[], b: readonly LiftingSurface[]) =>
  (100 * Math.abs(solved(a).stationMm - solved(b).stationMm)) / 202;

describe('a shape is the same however it is entered', () => {
  test.each([[[0.5]], [[0.12]], [[0.91]], [[0.3, 0.7]], [[0.2, 0.215]]])('a wing cut at %j', (cuts) => {
    expect(apart(wingInPieces([]), wingInPieces(cuts))).toBeLessThan(1e-6);
    expect(apart([...wingInPieces([]), tail], [tail, ...wingInPieces(cuts)])).toBeLessThan(1e-6);
    expect(solved(wingInPieces(cuts)).liftMm2).toBeCloseTo(solved(wingInPieces([])).liftMm2, 3);
  });

  const winglet = (cantDeg: number) =>
    flatPanel({ spanMm: 140, rootChordMm: 130, tipChordMm: 80, sweepMm: 60, dihedralDeg: cantDeg });
  const plainWing = flatPanel({ spanMm: 800, rootChordMm: 220, tipChordMm: 130, sweepMm: 120 });

  test.each([30, 60, 85])('a winglet of %i° as the last panel and as a surface of its own', (cantDeg) => {
    const whole = [surfaceOf([plainWing, winglet(cantDeg)])];
    // A surface measures its span before cant, a panel after dihedral.
    const panel = flatPanel({ ...winglet(0), spanMm: 140 / Math.cos((cantDeg * Math.PI) / 180) });
    const pieces = [
      surfaceOf([plainWing]),
      surfaceOf([panel], { id: 'tip', rootMm: [120, 800, 0], cantDeg }),
    ];
    expect(apart(whole, pieces)).toBeLessThan(0.01);
  });

  test('fins at tailplane tips: entered with the tailplane or by themselves, root inside or out', () => {
    const wing = wingInPieces([]);
    const plane = flatPanel({ spanMm: 300, rootChordMm: 150, tipChordMm: 120, sweepMm: 30 });
    const fin = flatPanel({ spanMm: 110, rootChordMm: 120, tipChordMm: 80, sweepMm: 30 });
    const tailplane = surfaceOf([plane], { id: 'tail', rootMm: [900, 0, 50] });
    const fins = surfaceOf([fin], { id: 'fin', rootMm: [930, 300, 50], cantDeg: 88 });
    const steep = flatPanel({ ...fin, spanMm: 110 * Math.cos((88 * Math.PI) / 180), dihedralDeg: 88 });
    const whole = surfaceOf([plane, steep], { id: 'tail', rootMm: [900, 0, 50] });
    expect(apart([...wing, whole], [...wing, tailplane, fins])).toBeLessThan(0.01);
    // the fin drawn from its free end to the tailplane
    const tipDown = surfaceOf([{ ...fin, rootChordMm: 80, tipChordMm: 120, sweepMm: -30 }], {
      id: 'fin',
      rootMm: [960, 300 + 110 * Math.cos((88 * Math.PI) / 180), 50 + 110 * Math.sin((88 * Math.PI) / 180)],
      cantDeg: 180 + 88,
    });
    expect(apart([...wing, whole], [...wing, tailplane, tipDown])).toBeLessThan(0.01);
  });

  test('a V-tail from the middle out, and between booms from outside in', () => {
    const wing = wingInPieces([]);
    const [dy, dz] = [250 * Math.cos(0.6), 250 * Math.sin(0.6)];
    const out = surfaceOf([flatPanel({ spanMm: 250, rootChordMm: 150, tipChordMm: 100, sweepMm: 40 })], {
      id: 'tail',
      rootMm: [900, 0, dz],
      cantDeg: (-0.6 * 180) / Math.PI,
    });
    const inwards = surfaceOf([flatPanel({ spanMm: 250, rootChordMm: 100, tipChordMm: 150, sweepMm: -40 })], {
      id: 'tail',
      rootMm: [940, dy, 0],
      cantDeg: 180 - (0.6 * 180) / Math.PI,
    });
    expect(apart([...wing, out], [...wing, inwards])).toBeLessThan(0.01);
  });

  test('canard, wing in two and tail: three surfaces and four say the same', () => {
    const canard = surfaceOf([flatPanel({ spanMm: 200, rootChordMm: 110, tipChordMm: 90 })], {
      id: 'canard',
      rootMm: [-400, 0, 30],
    });
    expect(apart([canard, ...wingInPieces([]), tail], [canard, ...wingInPieces([0.4]), tail])).toBeLessThan(
      1e-6,
    );
  });
});

describe('a one-piece tail', () => {
  const wing = wingInPieces([]);
  const half = flatPanel({ spanMm: 300, rootChordMm: 140, tipChordMm: 140 });
  const pair = surfaceOf([half], { id: 'tail', rootMm: [900, 0, 30] });
  const whole = (y: number) =>
    surfaceOf([flatPanel({ ...half, spanMm: 600 })], { id: 'tail', rootMm: [900, y, 30], sides: 'centre' });

  test('entered as centre counts as the pair it is, wherever it was set down across', () => {
    expect(apart([...wing, pair], [...wing, whole(-300)])).toBeLessThan(1e-6);
    expect(apart([...wing, pair], [...wing, whole(0)])).toBeLessThan(1e-6);
    expect(apart(wing, [...wing, whole(-300)])).toBeGreaterThan(5);
  });

  test('leaning over into a fin it fades to nothing without a jump', () => {
    const at = (cantDeg: number) =>
      neutralPoint([...wing, { ...whole(0), cantDeg }], { detail: 'coarse' })?.stationMm ?? Number.NaN;
    const points = Array.from({ length: 46 }, (_, k) => at(2 * k));
    points.slice(1).forEach((point, k) => {
      expect(Math.abs(point - (points[k] ?? 0))).toBeLessThan(3);
    });
    expect(points[45]).toBeCloseTo(neutralPoint(wing, { detail: 'coarse' })?.stationMm ?? 0, 9);
    expect(Math.abs((points[44] ?? 0) - (points[45] ?? 0))).toBeLessThan(0.5);
  });
});

describe('half-open seams', () => {
  const seam = (piece: number, weight: number): Seam => ({
    a: { piece, end: 'root' },
    b: 'plane',
    weight,
    gapMm: 0,
  });
  const shares = (...weights: number[]) =>
    seamStates(weights.map((weight, piece) => seam(piece, weight))).map(({ closed, share }) => [
      closed.map(({ a }) => a.piece),
      share,
    ]);

  test('shut seams and none take one state, half-open ones one more each; shares add up to 1', () => {
    expect(shares()).toEqual([[[], 1]]);
    expect(shares(1, 1)).toEqual([[[0, 1], 1]]);
    expect(shares(0.25, 1, 0.5)).toEqual([
      [[1], 0.5],
      [[1, 2], 0.25],
      [[0, 1, 2], 0.25],
    ]);
  });
});
