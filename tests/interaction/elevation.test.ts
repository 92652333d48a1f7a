import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  acrossAxis,
  axisOf,
  type Elevation,
  fitElevation,
  panElevation,
  uprightAxis,
  uprightMmPerPx,
  zoomElevation,
} from '../../src/interaction/elevation';
import type { Extent } from '../../src/interaction/snap';
import { type AxisState, axisToPx } from '../../src/store/axisStore';
import { between } from '../between';

const size = { widthPx: 880, heightPx: 600 };
const views: Elevation[] = ['side', 'top', 'front'];
const length = between(50, 4000);
const low = between(-2000, 500);
const extent = fc
  .tuple(low, low, low, length, length, length)
  .map(([x, y, z, l, w, h]): Extent => ({ minMm: [x, y, z], maxMm: [x + l, y + w, z + h] }));

const toPx = (axes: AxisState, view: Elevation, across: number, upright: number) => {
  const axis = axisOf(axes, view);
  return [
    axisToPx(axis, across),
    axes.heightPx / 2 - (upright - axes.middleMm[view]) / Math.abs(axis.mmPerPx),
  ] as const;
};

describe.each(views)('the %s elevation', (view) => {
  test('is fitted so that the whole aircraft is in the picture and touches a margin', () => {
    fc.assert(
      fc.property(extent, (box) => {
        const axes: AxisState = { ...size, ...fitElevation(box, view, size) };
        const corners = [box.minMm, box.maxMm].map((c) =>
          toPx(axes, view, c[acrossAxis(view)], c[uprightAxis(view)]),
        );
        for (const [x, y] of corners) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(size.widthPx);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(size.heightPx);
        }
        const [a, b] = corners as [readonly [number, number], readonly [number, number]];
        const fills = Math.max(Math.abs(a[0] - b[0]) / size.widthPx, Math.abs(a[1] - b[1]) / size.heightPx);
        expect(fills).toBeGreaterThan(0.7);
      }),
    );
  });

  test('zooms about the pointer and pans with it', () => {
    const px = fc.tuple(fc.integer({ min: 0, max: 880 }), fc.integer({ min: 0, max: 600 }));
    fc.assert(
      fc.property(extent, px, between(0.7, 1.4), (box, at, factor) => {
        const before: AxisState = { ...size, ...fitElevation(box, view, size) };
        const axis = axisOf(before, view);
        const across = axis.atLeftMm + at[0] * axis.mmPerPx;
        const upright = before.middleMm[view] + (300 - at[1]) * Math.abs(axis.mmPerPx);
        const zoomed = { ...before, ...zoomElevation(before, view, factor, at) };
        const [x, y] = toPx(zoomed, view, across, upright);
        expect(x).toBeCloseTo(at[0], 6);
        expect(y).toBeCloseTo(at[1], 6);
        expect(axisOf(zoomed, view).mmPerPx / axis.mmPerPx).toBeCloseTo(factor, 9);
        const panned = { ...before, ...panElevation(before, view, [31, -17]) };
        const [px1, py1] = toPx(panned, view, across, upright);
        expect(px1 - at[0]).toBeCloseTo(31, 6);
        expect(py1 - at[1]).toBeCloseTo(-17, 6);
      }),
    );
  });
});

describe('a wing that is wide for the window, from above', () => {
  // 4 m of span on 1.5 m of length, with a band of 20 mm.
  const glider: Extent = { minMm: [0, -2000, -50], maxMm: [1500, 2000, 200] };
  const fitted = (bandMm: number | null, wholeSpan: boolean): AxisState => ({
    ...size,
    ...fitElevation(glider, 'top', size, { bandMm, wholeSpan }),
  });
  const pxUp = (axes: AxisState, y: number) =>
    size.heightPx / 2 - (y - axes.middleMm.top) / uprightMmPerPx(axes, 'top');

  test.each([true, false])(
    'keeps the band at least 6 px wide and the length in the picture, whole span: %s',
    (whole) => {
      const axes = fitted(20, whole);
      expect(20 / axes.station.mmPerPx).toBeGreaterThanOrEqual(6 - 1e-9);
      for (const x of [0, 1500]) {
        expect(axisToPx(axes.station, x)).toBeGreaterThan(0);
        expect(axisToPx(axes.station, x)).toBeLessThan(size.widthPx);
      }
    },
  );

  test('is drawn true to scale, the body in the picture and the tips beyond it', () => {
    const axes = fitted(20, false);
    expect(axes.spanStretch).toBe(1);
    expect(axes.wholeSpanStretch).toBeGreaterThan(1);
    expect(pxUp(axes, 0)).toBeGreaterThan(0.25 * size.heightPx);
    expect(pxUp(axes, 0)).toBeLessThan(0.75 * size.heightPx);
    expect(pxUp(axes, 2000)).toBeLessThan(0);
    expect(pxUp(axes, -2000)).toBeGreaterThan(size.heightPx);
  });

  test('is in the picture with both tips where the whole span is asked for, in a scale of its own', () => {
    const axes = fitted(20, true);
    expect(axes.spanStretch).toBe(axes.wholeSpanStretch);
    expect(axes.spanStretch).toBeCloseTo(uprightMmPerPx(axes, 'top') / axes.station.mmPerPx, 12);
    for (const y of [-2000, 2000]) {
      expect(pxUp(axes, y)).toBeGreaterThan(0);
      expect(pxUp(axes, y)).toBeLessThan(size.heightPx);
    }
  });

  test.each([true, false])(
    'is whole and true where there is no band, or it is wide enough, whole span: %s',
    (whole) => {
      for (const bandMm of [null, 200]) {
        const axes = fitted(bandMm, whole);
        expect([axes.spanStretch, axes.wholeSpanStretch]).toEqual([1, 1]);
        for (const y of [-2000, 2000]) expect(Math.abs(pxUp(axes, y) - 300)).toBeLessThan(300);
      }
    },
  );

  test('is never drawn closer than its length allows', () => {
    const axes = fitted(0.1, true);
    expect(axisToPx(axes.station, 1500) - axisToPx(axes.station, 0)).toBeLessThan(size.widthPx);
  });
});

test.each([232, 250, 414])(
  'a stage %i px high leaves its upper edge to the switches, and shows most of a model',
  (heightPx) => {
    // The switches of a touch screen end 64 px under the edge.
    const low = { widthPx: 660, heightPx };
    const box: Extent = { minMm: [0, -800, -180], maxMm: [2000, 800, 330] };
    for (const view of views) {
      const axes: AxisState = { ...low, ...fitElevation(box, view, low) };
      const top =
        heightPx / 2 - (box.maxMm[uprightAxis(view)] - axes.middleMm[view]) / uprightMmPerPx(axes, view);
      expect(top, view).toBeGreaterThanOrEqual(64);
      expect(top, view).toBeLessThan(heightPx * 0.45);
    }
  },
);
