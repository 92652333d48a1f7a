import { describe, expect, test } from 'vitest';
import { polygonMoments } from '../../../src/engine/geometry/polygon';
import { roundedArea, roundedOutline, roundedSecond } from '../../../src/engine/mass/roundedRectangle';
import type { LoftSection, LoftShape, Shape } from '../../../src/engine/mass/shapes';
import { surfaceProperties } from '../../../src/engine/mass/surfaceProperties';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { expectPoint, expectTensor } from './closeTo';

const section = (xMm: number, widthMm: number, heightMm: number, roundness: number): LoftSection => ({
  xMm,
  widthMm,
  heightMm,
  centreYMm: 0,
  centreZMm: 0,
  roundness,
});

const loft = (...sections: LoftSection[]): LoftShape => ({ kind: 'loft', sections });

/** Cut into uneven stretches, which must not change a straight body. */
const straight = (length: number, w: number, h: number, r: number): LoftShape =>
  loft(...[-0.5, -0.31, 0.12, 0.5].map((x) => section(x * length, w, h, r)));

const tapered = (w0: number, h0: number, w1: number, h1: number, r: number): LoftShape =>
  loft(section(-40, w0, h0, r), section(40, w1, h1, r));

describe('lofts that are simpler solids', () => {
  test.each<[string, LoftShape, Shape]>([
    ['roundness 0: a box', straight(80, 50, 30, 0), { kind: 'box', lengthMm: 80, widthMm: 50, heightMm: 30 }],
    [
      'roundness 1, round: a cylinder',
      straight(80, 30, 30, 1),
      { kind: 'cylinder', lengthMm: 80, diameterMm: 30 },
    ],
    [
      'roundness 0, tapered: a tapered box',
      tapered(50, 30, 20, 44, 0),
      {
        kind: 'taperedBox',
        lengthMm: 80,
        frontWidthMm: 50,
        frontHeightMm: 30,
        rearWidthMm: 20,
        rearHeightMm: 44,
      },
    ],
    [
      'roundness 1, tapered: a frustum',
      tapered(50, 50, 20, 20, 1),
      { kind: 'frustum', lengthMm: 80, frontDiameterMm: 50, rearDiameterMm: 20 },
    ],
    [
      'to a point: a cone',
      tapered(0, 0, 20, 20, 1),
      { kind: 'frustum', lengthMm: 80, frontDiameterMm: 0, rearDiameterMm: 20 },
    ],
  ])('%s', (_, shape, simple) => {
    const [a, b] = [volumeProperties(shape), volumeProperties(simple)];
    expect(a.volumeMm3 / b.volumeMm3).toBeCloseTo(1, 13);
    expectPoint(a.centroidMm, b.centroidMm, 1e-12);
    expectTensor(a.inertiaAboutCentroidMm5, b.inertiaAboutCentroidMm5, 1e-14);
    const [c, d] = [surfaceProperties(shape), surfaceProperties(simple)];
    expect(c.areaMm2 / d.areaMm2).toBeCloseTo(1, 11);
    expectPoint(c.centroidMm, d.centroidMm, 1e-9);
    expectTensor(c.inertiaAboutCentroidMm4, d.inertiaAboutCentroidMm4, 1e-11);
  });

  test('roundness 1, oval: an elliptic cylinder (Meriam, Dynamics, app. D, from memory)', () => {
    const [a, b, h] = [30, 20, 80];
    const { volumeMm3: v, inertiaAboutCentroidMm5: t } = volumeProperties(straight(h, 2 * a, 2 * b, 1));
    expect(v / (Math.PI * a * b * h)).toBeCloseTo(1, 14);
    expect(t.xx / (v * ((a * a + b * b) / 4))).toBeCloseTo(1, 13);
    expect(t.yy / (v * ((b * b) / 4 + (h * h) / 12))).toBeCloseTo(1, 13);
    expect(t.zz / (v * ((a * a) / 4 + (h * h) / 12))).toBeCloseTo(1, 13);
  });

  test('width to nothing at constant height: half the box, centroid a third from the broad end', () => {
    const { volumeMm3, centroidMm } = volumeProperties(loft(section(0, 60, 30, 0), section(90, 0, 30, 0)));
    expect(volumeMm3).toBeCloseTo(81000, 8);
    expectPoint(centroidMm, [30, 0, 0], 1e-12);
  });

  test('an oblique cone: centroid a quarter of the way up the line from base centre to point', () => {
    const base = { ...section(0, 40, 40, 1), centreYMm: 5, centreZMm: -3 };
    const tip = { ...section(100, 0, 0, 1), centreYMm: 25, centreZMm: 17 };
    const { volumeMm3, centroidMm } = volumeProperties(loft(base, tip));
    expect(volumeMm3 / ((Math.PI * 400 * 100) / 3)).toBeCloseTo(1, 14);
    expectPoint(centroidMm, [25, 10, 2], 1e-12);
  });
});

test('skin of a flat-ended oval that closes to a knife edge, where the corners are hardest to integrate', () => {
  // The same skin in slices thinning towards the edge: another set of sample points altogether.
  const [from, to] = [section(0, 40, 30, 1), section(100, 40, 0, 1)];
  const whole = surfaceProperties(loft(from, to));
  const stations = [0, 0.5, 0.75, 0.9, 0.97, 0.99, 0.999, 1];
  const sliced = surfaceProperties(loft(...stations.map((s) => section(100 * s, 40, 30 - 30 * s, 1))));
  expect(whole.areaMm2 / sliced.areaMm2).toBeCloseTo(1, 9);
  expectTensor(whole.inertiaAboutCentroidMm4, sliced.inertiaAboutCentroidMm4, 1e-9);
});

describe('the rounded rectangle', () => {
  test.each([0, 0.2, 0.5, 0.83, 1])('roundness %d against its own outline', (r) => {
    const steps = 2000;
    const { area, uu, vv } = polygonMoments(roundedOutline(3, 2, r, steps));
    // An inscribed arc of n chords falls short by (π/2n)²/6 at most.
    const short = (Math.PI / (2 * steps)) ** 2;
    expect(Math.abs(area / (6 * roundedArea(r)) - 1)).toBeLessThan(short);
    expect(Math.abs(uu / (54 * roundedSecond(r)) - 1)).toBeLessThan(2 * short);
    expect(Math.abs(vv / (24 * roundedSecond(r)) - 1)).toBeLessThan(2 * short);
  });

  test('a square has area 4 and ∫u² 4/3, a circle π and π/4', () => {
    expect([roundedArea(0), roundedSecond(0)]).toEqual([4, 4 / 3]);
    expect(roundedArea(1)).toBeCloseTo(Math.PI, 15);
    expect(roundedSecond(1)).toBeCloseTo(Math.PI / 4, 15);
  });
});
