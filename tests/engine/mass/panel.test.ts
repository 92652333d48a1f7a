import { describe, expect, test } from 'vitest';
import { polygonArea } from '../../../src/engine/geometry/polygon';
import { aerofoilHalfThickness, aerofoilOutline, aerofoilPieces } from '../../../src/engine/mass/aerofoil';
import type { PanelShape } from '../../../src/engine/mass/shapes';
import { panelSections } from '../../../src/engine/mass/solids/panel';
import { surfaceProperties } from '../../../src/engine/mass/surfaceProperties';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectPoint, expectTensor } from './closeTo';

const plain: PanelShape = {
  kind: 'panel',
  spanMm: 500,
  rootChordMm: 200,
  tipChordMm: 200,
  sweepMm: 0,
  riseMm: 0,
  rootTwistDeg: 0,
  tipTwistDeg: 0,
  rootThickness: 0.12,
  tipThickness: 0.12,
};

describe('the section', () => {
  // Abbott & von Doenhoff, Theory of Wing Sections, app. I, NACA 0012 ordinates, per cent chord
  // (from memory). The table's trailing edge is open by 0.126 % on each side; ours is closed, and
  // differs from it by (0.1036 − 0.1015) · 0.6 · x⁴.
  test.each([
    [1.25, 1.894],
    [2.5, 2.615],
    [5, 3.555],
    [10, 4.683],
    [20, 5.737],
    [30, 6.002],
    [40, 5.803],
    [50, 5.294],
    [60, 4.563],
    [80, 2.623],
    [95, 0.807],
    [100, 0.126],
  ])('ordinate at %d %%', (x, half) => {
    const closing = 0.0021 * 0.6 * (x / 100) ** 4 * 100;
    expect(Math.abs(100 * aerofoilHalfThickness(x / 100, 0.12) - (half - closing))).toBeLessThan(6e-4);
  });

  test('its area is the integral of the formula, less 0.2 % for the corners', () => {
    // 2 · 5t · (2/3 · 0.2969 − 0.1260/2 − 0.3516/3 + 0.2843/4 − 0.1036/5)
    const curve = 10 * 0.12 * ((2 / 3) * 0.2969 - 0.063 - 0.1172 + 0.071075 - 0.02072);
    const polygon = -polygonArea(aerofoilOutline(0.12));
    expect(polygon / curve).toBeGreaterThan(0.998);
    expect(polygon / curve).toBeLessThan(1);
  });

  test('runs from trailing edge under the nose and back, symmetric and closed', () => {
    const outline = aerofoilOutline(0.15);
    expect(outline).toHaveLength(2 * aerofoilPieces);
    expect(outline[0]).toEqual([1, -0]);
    expect(outline[aerofoilPieces]).toEqual([0, -0]);
    for (let i = 1; i < aerofoilPieces; i += 1) {
      const [lower, upper] = [outline[i]!, outline[2 * aerofoilPieces - i]!];
      expect(upper).toEqual([lower[0], -lower[1]]);
      expect(lower[1]).toBeLessThan(0);
    }
  });
});

describe('the panel', () => {
  const sectionArea = -polygonArea(aerofoilOutline(0.12)) * 200 * 200;

  test('without taper: section area times span, centroid at mid span', () => {
    const { volumeMm3, centroidMm } = volumeProperties(plain);
    expect(volumeMm3 / (sectionArea * 500)).toBeCloseTo(1, 13);
    expect(centroidMm![1]).toBeCloseTo(250, 10);
    expect(centroidMm![2]).toBeCloseTo(0, 10);
  });

  test('to a point: a pyramid, a third of the block, centroid a quarter of the way out', () => {
    const { volumeMm3, centroidMm } = volumeProperties({ ...plain, tipChordMm: 0, sweepMm: 50 });
    expect(volumeMm3 / ((sectionArea * 500) / 3)).toBeCloseTo(1, 13);
    expect(centroidMm![1]).toBeCloseTo(125, 10);
  });

  test('similar sections: the prismatoid rule V = b/6 (A₀ + 4Aₘ + A₁)', () => {
    const { volumeMm3 } = volumeProperties({ ...plain, tipChordMm: 100, sweepMm: 80, riseMm: 33 });
    expect(volumeMm3 / ((500 / 6) * sectionArea * (1 + 4 * 0.75 ** 2 + 0.25))).toBeCloseTo(1, 13);
  });

  test('sweep and rise shear it: volume as before, centroid moved by half of each', () => {
    const before = volumeProperties(plain).centroidMm!;
    const sheared = volumeProperties({ ...plain, sweepMm: 90, riseMm: 40 });
    expect(sheared.volumeMm3 / volumeProperties(plain).volumeMm3).toBeCloseTo(1, 13);
    expectPoint(sheared.centroidMm, [before[0] + 45, before[1], before[2] + 20], 1e-9);
  });

  test('twist lifts the nose and turns about the quarter-chord point', () => {
    const { root, tip } = panelSections({
      ...plain,
      rootTwistDeg: 4,
      tipTwistDeg: -3,
      sweepMm: 30,
      riseMm: 10,
    });
    const [rootNose, rootTail] = [root[aerofoilPieces]!, root[0]!];
    const four = (4 * Math.PI) / 180;
    expect(rootNose[0]).toBeCloseTo(50 - 50 * Math.cos(four), 10);
    expect(rootNose[1]).toBeCloseTo(50 * Math.sin(four), 10);
    expect(rootTail[1]).toBeCloseTo(-150 * Math.sin(four), 10);
    expect(tip[aerofoilPieces]![1]).toBeLessThan(10);
  });

  test('the same twist all along turns the body about the quarter-chord line', () => {
    const level = volumeProperties(plain);
    const twisted = volumeProperties({ ...plain, rootTwistDeg: 7, tipTwistDeg: 7 });
    const angle = (7 * Math.PI) / 180;
    const aft = level.centroidMm![0] - 50;
    expectPoint(twisted.centroidMm, [50 + aft * Math.cos(angle), 250, -aft * Math.sin(angle)], 1e-9);
    expect(twisted.inertiaAboutCentroidMm5.yy / level.inertiaAboutCentroidMm5.yy).toBeCloseTo(1, 12);
  });

  test('skin without taper: perimeter times span, and two ribs', () => {
    const { root } = panelSections(plain);
    const perimeter = root.reduce((sum, [x, z], i) => {
      const [nextX, nextZ] = root[(i + 1) % root.length]!;
      return sum + Math.hypot(nextX - x, nextZ - z);
    }, 0);
    const { areaMm2, centroidMm } = surfaceProperties(plain);
    expect(areaMm2 / (perimeter * 500 + 2 * sectionArea)).toBeCloseTo(1, 12);
    expect(centroidMm![1]).toBeCloseTo(250, 9);
  });

  test('thin: a flat plate, twice over', () => {
    // Both sides of a 200 × 500 mm plate: I = m b²/12 and so on, thickness 1e-6 of chord.
    const { areaMm2, inertiaAboutCentroidMm4 } = surfaceProperties({
      ...plain,
      rootThickness: 1e-6,
      tipThickness: 1e-6,
    });
    expect(areaMm2 / 200000).toBeCloseTo(1, 5);
    const twelfth = 200000 / 12;
    const plate = { xx: twelfth * 250000, yy: twelfth * 40000, zz: twelfth * 290000, xy: 0, xz: 0, yz: 0 };
    expectTensor(inertiaAboutCentroidMm4, plate, 1e-5);
  });
});
