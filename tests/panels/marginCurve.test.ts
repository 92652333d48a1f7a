import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelSide, marginSpan, marginToPx, PLOT_PX, plotLeft } from '../../src/panels/beam/marginCurve';

const pct = fc.integer({ min: -600, max: 900 }).map((tenths) => tenths / 10);

describe('the axis of margins', () => {
  test('always shows the neutral point and every margin, in whole steps', () => {
    fc.assert(
      fc.property(fc.array(pct, { minLength: 1 }), (margins) => {
        const span = marginSpan(margins);
        expect(span.leastPct).toBeLessThanOrEqual(Math.min(0, ...margins));
        expect(span.mostPct).toBeGreaterThanOrEqual(Math.max(0, ...margins));
        expect(span.mostPct).toBeGreaterThan(span.leastPct);
        expect([span.leastPct % 5, span.mostPct % 5].map(Math.abs)).toEqual([0, 0]);
      }),
    );
  });

  test('runs as the stations do: less margin is farther aft, to the right', () => {
    const span = marginSpan([12, 8]);
    expect(span).toEqual({ leastPct: 0, mostPct: 15 });
    expect([15, 7.5, 0].map((margin) => marginToPx(span, margin, 90))).toEqual([0, 45, 90]);
    const unstable = marginSpan([4, -3]);
    expect(unstable).toEqual({ leastPct: -5, mostPct: 10 });
    expect(marginToPx(unstable, 0, 90)).toBeCloseTo(60, 12);
  });
});

test('its picture keeps clear of the travel and the detail, or is left out', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 200, max: 2000 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.constantFrom('left' as const, 'right' as const, null),
      (widthPx, share, detail) => {
        const cgPx = share * widthPx;
        const left = plotLeft({ widthPx, cgPx, detail, detailPx: 312, labelPx: 80 });
        if (left === null) return;
        const [from, to] = [left, left + PLOT_PX];
        expect(to <= cgPx || from >= cgPx).toBe(true);
        expect(from).toBeGreaterThanOrEqual(76);
        expect(to).toBeLessThanOrEqual(widthPx - 16);
        // What is free beside the disc for its reading: up to the picture, the detail or the edge.
        const freeFrom = to <= cgPx ? to : 76 + (detail === 'left' ? 312 : 0);
        const freeTo = from >= cgPx ? from : widthPx - (detail === 'right' ? 312 : 0);
        expect(Math.max(cgPx - freeFrom, freeTo - cgPx)).toBeGreaterThan(80);
      },
    ),
  );
  expect(plotLeft({ widthPx: 900, cgPx: 340, detail: 'right', detailPx: 312, labelPx: 80 })).toBe(76);
  expect(plotLeft({ widthPx: 542, cgPx: 212, detail: null, detailPx: 312, labelPx: 80 })).toBe(326);
  expect(plotLeft({ widthPx: 400, cgPx: 200, detail: null, detailPx: 312, labelPx: 80 })).toBeNull();
});

test('the reading stands on the right, on the left where only that has room, or says that neither has', () => {
  expect(labelSide(300, 200, 12, 600)).toBe('right');
  expect(labelSide(300, 200, 12, 500)).toBe('left');
  expect(labelSide(200, 200, 12, 400)).toBeNull();
});
