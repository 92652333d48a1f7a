import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { axisOf, fitElevation, uprightMmPerPx } from '../../../src/interaction/elevation';
import type { Extent } from '../../../src/interaction/snap';
import { ruleNumerals } from '../../../src/scene/mat/graduation';
import { ruleRun } from '../../../src/scene/mat/ruleRun';
import { type AxisState, axisToPx } from '../../../src/store/axisStore';

/** From a small park flyer to a long glider; the datum anywhere about it. */
const extent = fc
  .tuple(
    fc.double({ min: -900, max: 100, noNaN: true }),
    fc.double({ min: 400, max: 3000, noNaN: true }),
    fc.double({ min: 300, max: 2500, noNaN: true }),
    fc.double({ min: 80, max: 700, noNaN: true }),
  )
  .map(
    ([noseMm, longMm, semiMm, highMm]): Extent => ({
      minMm: [noseMm, -semiMm, -0.4 * highMm],
      maxMm: [noseMm + longMm, semiMm, 0.6 * highMm],
    }),
  );

/** Stages of the windows that the bench is judged at, px. */
const pictures = fc.constantFrom(
  ...[
    [1320, 760],
    [856, 383],
    [520, 440],
    [660, 232],
    [844, 250],
    [390, 633],
    [368, 300],
  ].map(([widthPx = 0, heightPx = 0]) => ({ widthPx, heightPx })),
);

/** A letter of the face is six tenths as wide as it is high, and letters are 0.8 of their cell. */
const halfWidthPx = (text: string, cellPx: number) => (text.length * 0.6 * 0.8 * cellPx) / 2;

test.each(['side', 'top', 'front'] as const)(
  '%s: figures stand in the picture, apart, and clear of the bar',
  (view) => {
    fc.assert(
      fc.property(extent, pictures, fc.boolean(), (box, picture, wholeSpan) => {
        const fit = { bandMm: 20, wholeSpan };
        const axes: AxisState = { ...picture, ...fitElevation(box, view, picture, fit) };
        const axis = axisOf(axes, view);
        const run = ruleRun({ view, extent: box, zeroMm: 0, picture, fit });
        const cellPx = run.figureMm / Math.abs(axis.mmPerPx);
        const linePx = picture.heightPx / 2 - (run.atMm - axes.middleMm[view]) / uprightMmPerPx(axes, view);
        expect(cellPx).toBeGreaterThanOrEqual(16);
        let lastRight = -Infinity;
        const figures = ruleNumerals(run, 'metric').sort(
          (a, b) => axisToPx(axis, a.at[0]) - axisToPx(axis, b.at[0]),
        );
        for (const { text, at } of figures) {
          const px = axisToPx(axis, at[0]);
          const half = halfWidthPx(text, cellPx);
          expect(px - half).toBeGreaterThan(Math.max(0, lastRight + 2));
          expect(px + half).toBeLessThan(picture.widthPx);
          const bottom = linePx + 1.52 * cellPx;
          expect(bottom).toBeLessThanOrEqual(picture.heightPx);
          // The folded bar of a touch screen: to 76 px from the left, from 64 px over the lower edge.
          if (px - half < 76) expect(bottom).toBeLessThanOrEqual(picture.heightPx - 64);
          lastRight = px + half;
        }
      }),
    );
  },
);
