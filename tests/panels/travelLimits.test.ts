import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { limitPlaces } from '../../src/panels/beam/travelLimits';

const room = { fromPx: 114, toPx: 316, pictureWidthPx: 390, foreWidthPx: 46, aftWidthPx: 46, dryPx: null };

/** What a figure covers, px. */
const covered = ({ xPx, anchor }: { xPx: number; anchor: 'start' | 'end' }, widthPx: number) =>
  anchor === 'start' ? ([xPx, xPx + widthPx] as const) : ([xPx - widthPx, xPx] as const);

test('the limits stand within a band that has room for both, and either side of one that has not', () => {
  const [fore, aft] = limitPlaces(room);
  expect(covered(fore, 46)[0]).toBeGreaterThan(114);
  expect(covered(aft, 46)[1]).toBeLessThan(316);
  const [left, right] = limitPlaces({ ...room, toPx: 174 });
  expect(covered(left, 46)[1]).toBeLessThan(114);
  expect(covered(right, 46)[0]).toBeGreaterThan(174);
});

test('the dot that ends the curve never lies on a figure that has room on the other side of its edge', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 70, max: 200, noNaN: true }),
      fc.double({ min: 20, max: 120, noNaN: true }),
      fc.double({ min: 0, max: 390, noNaN: true }),
      (fromPx, longPx, dryPx) => {
        const toPx = fromPx + longPx;
        const [fore, aft] = limitPlaces({ ...room, fromPx, toPx, dryPx });
        for (const place of [fore, aft]) {
          const [left, right] = covered(place, 46);
          expect(left).toBeGreaterThanOrEqual(0);
          expect(right).toBeLessThanOrEqual(390);
          // A dot has a radius of 4 px.
          expect(dryPx > left - 4 && dryPx < right + 4).toBe(false);
        }
      },
    ),
  );
});

test('where there is room on one side only, the figure stays there', () => {
  const [, aft] = limitPlaces({ ...room, toPx: 380, dryPx: 350 });
  expect(covered(aft, 46)[1]).toBeLessThanOrEqual(380);
});
