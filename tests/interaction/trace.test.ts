import { describe, expect, test } from 'vitest';
import {
  levelledTrace,
  mirroredTrace,
  movedTrace,
  type Placed,
  placeAtPx,
  placeOfPixel,
  pxOfPlace,
  scaledTrace,
  type ViewPlace,
} from '../../src/interaction/trace';
import type { Trace } from '../../src/model/document/types';
import type { AxisState } from '../../src/store/axisStore';

// All figures worked out by hand: shares of lengths, and the triangle of 3, 4 and 5.
const plain: Trace = { view: 'side', cornerMm: [0, 0], mmPerPx: 1, turnDeg: 0, opacity: 0.7 };

function laid(placed: Placed): Trace {
  if (typeof placed === 'string') throw new Error(placed);
  return placed;
}
const near = (at: ViewPlace, wanted: ViewPlace) => {
  expect(at[0]).toBeCloseTo(wanted[0], 2);
  expect(at[1]).toBeCloseTo(wanted[1], 2);
};

describe('where a pixel lies', () => {
  test('right is aft from the side and from above, and the left wing from ahead; down is down', () => {
    expect(placeOfPixel({ ...plain, cornerMm: [100, 50], mmPerPx: 2 }, [10, 5])).toEqual([120, 40]);
    expect(placeOfPixel({ ...plain, view: 'top', cornerMm: [100, 50] }, [10, 5])).toEqual([110, 45]);
    expect(placeOfPixel({ ...plain, view: 'front', cornerMm: [100, 50] }, [10, 5])).toEqual([90, 45]);
  });

  test('turned by the angle of 3, 4 and 5, fifty pixels go 40 right and 30 up', () => {
    const turnDeg = (Math.atan2(3, 4) * 180) / Math.PI;
    near(placeOfPixel({ ...plain, turnDeg }, [50, 0]), [40, 30]);
    near(placeOfPixel({ ...plain, turnDeg }, [0, 50]), [30, -40]);
    near(placeOfPixel({ ...plain, turnDeg, mirrored: true }, [50, 0]), [-40, -30]);
    near(placeOfPixel({ ...plain, turnDeg, view: 'front' }, [50, 0]), [-40, 30]);
  });
});

describe('scaling', () => {
  test('200 mm that are 1000 in truth: five times as large about the first click', () => {
    const trace: Trace = { ...plain, cornerMm: [0, 100], mmPerPx: 0.5 };
    const scaled = laid(
      scaledTrace(
        trace,
        [
          [100, 50],
          [300, 50],
        ],
        1000,
      ),
    );
    expect(scaled).toEqual({ ...trace, mmPerPx: 2.5, cornerMm: [-400, 300] });
    // The pixels under the clicks: the first (200, 100) stays, the second (600, 100) goes to 1100.
    expect(placeOfPixel(scaled, [200, 100])).toEqual([100, 50]);
    expect(placeOfPixel(scaled, [600, 100])).toEqual([1100, 50]);
  });

  test('the length goes by both directions: 30 across and 40 up are 50', () => {
    const scaled = laid(
      scaledTrace(
        plain,
        [
          [0, 0],
          [30, 40],
        ],
        25,
      ),
    );
    expect(scaled.mmPerPx).toBe(0.5);
  });

  test('the same place twice, no length, and a scale beyond any drawing are refused in words', () => {
    const twice = [
      [5, 5],
      [5, 5],
    ] as const;
    const apart = [
      [0, 0],
      [100, 0],
    ] as const;
    expect(scaledTrace(plain, twice, 100)).toContain('same place');
    expect(scaledTrace(plain, apart, 0)).toContain('more than 0');
    expect(scaledTrace(plain, apart, -3)).toContain('more than 0');
    expect(scaledTrace(plain, apart, Number.NaN)).toContain('more than 0');
    expect(scaledTrace(plain, apart, 1e9)).toContain('expected 0.001 to 1000 mm');
    expect(scaledTrace(plain, apart, 1e-9)).toContain('expected 0.001 to 1000 mm');
    expect(scaledTrace({ ...plain, cornerMm: [-9e4, 0] }, apart, 200)).toContain('100 m from the datum');
  });
});

describe('squaring', () => {
  test('a line of 3, 4 and 5 comes level about its left end', () => {
    const turnDeg = (Math.atan2(3, 4) * 180) / Math.PI;
    const trace: Trace = { ...plain, cornerMm: [10, 20], turnDeg };
    const level = laid(
      levelledTrace(trace, [
        [10, 20],
        [50, 50],
      ]),
    );
    expect(level.turnDeg).toBeCloseTo(0, 4);
    near(placeOfPixel(level, [50, 0]), [60, 20]);
  });

  test('a photo on its side or its head comes upright, for the first click is the left end', () => {
    const onSide = laid(
      levelledTrace(plain, [
        [0, 0],
        [0, -80],
      ]),
    );
    expect(onSide.turnDeg).toBe(90);
    near(placeOfPixel(onSide, [0, 80]), [80, 0]);
    const onHead = laid(
      levelledTrace(plain, [
        [80, 0],
        [0, 0],
      ]),
    );
    expect(Math.abs(onHead.turnDeg)).toBe(180);
    near(placeOfPixel(onHead, [80, 0]), [80, 0]);
    near(placeOfPixel(onHead, [0, 0]), [160, 0]);
  });

  test('from ahead left is the right wing, buttline +', () => {
    const trace: Trace = { ...plain, view: 'front' };
    const kept = laid(
      levelledTrace(trace, [
        [50, 0],
        [-50, 0],
      ]),
    );
    expect(kept.turnDeg).toBe(0);
    const level = laid(
      levelledTrace(trace, [
        [50, 0],
        [-50, 100],
      ]),
    );
    expect(level.turnDeg).toBe(-45);
    expect(typeof levelledTrace(trace, [plain.cornerMm, plain.cornerMm])).toBe('string');
  });
});

test('moving shifts it; mirroring keeps its middle and swaps its ends', () => {
  expect(movedTrace({ ...plain, cornerMm: [10, 20] }, [5, -7])).toEqual({ ...plain, cornerMm: [15, 13] });
  expect(movedTrace(plain, [2e5, 0])).toContain('too far away');
  const size = { widthPx: 200, heightPx: 100 };
  const mirrored = laid(mirroredTrace({ ...plain, cornerMm: [100, 0] }, size));
  expect(placeOfPixel(mirrored, [100, 50])).toEqual([200, -50]);
  expect(placeOfPixel(mirrored, [0, 0])).toEqual([300, 0]);
  expect(placeOfPixel(mirrored, [200, 0])).toEqual([100, 0]);
  const turned: Trace = { ...plain, view: 'front', cornerMm: [40, 60], turnDeg: 30 };
  const middle = placeOfPixel(turned, [100, 50]);
  near(placeOfPixel(laid(mirroredTrace(turned, size)), [100, 50]), middle);
  const twice = laid(mirroredTrace(laid(mirroredTrace(turned, size)), size));
  near(placeOfPixel(twice, [17, 4]), placeOfPixel(turned, [17, 4]));
});

test('a pixel of the stage is a place of the elevation, the span with a scale of its own, and back', () => {
  const axes: AxisState = {
    widthPx: 800,
    heightPx: 400,
    station: { atLeftMm: -100, mmPerPx: 2 },
    lateral: { atLeftMm: 500, mmPerPx: -2.5 },
    middleMm: { side: 50, top: 0, front: 10 },
    spanStretch: 3,
    wholeSpanStretch: 3,
  };
  expect(placeAtPx(axes, 'side', [30, 100])).toEqual([-40, 250]);
  expect(placeAtPx(axes, 'top', [30, 100])).toEqual([-40, 600]);
  expect(placeAtPx(axes, 'front', [40, 300])).toEqual([400, -240]);
  for (const view of ['side', 'top', 'front'] as const)
    near(pxOfPlace(axes, view, placeAtPx(axes, view, [123, 45])), [123, 45]);
});
