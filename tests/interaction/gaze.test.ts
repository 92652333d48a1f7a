import { expect, test } from 'vitest';
import {
  elevationOfGaze,
  gazeOfElevation,
  panElevation,
  zoomElevation,
} from '../../src/interaction/elevation';
import { type AxisState, pxToAxis } from '../../src/store/axisStore';

const axes = (widthPx: number, heightPx: number): AxisState => ({
  widthPx,
  heightPx,
  station: { atLeftMm: -100, mmPerPx: 1.5 },
  lateral: { atLeftMm: 700, mmPerPx: -1.25 },
  middleMm: { side: 20, top: -5, front: 30 },
  spanStretch: 1,
  wholeSpanStretch: 1,
});

test.each(['side', 'top', 'front'] as const)('%s is looked at again as it was', (view) => {
  const start = axes(900, 500);
  const zoomed = { ...start, ...zoomElevation(start, view, 0.6, [300, 100]) };
  const moved = { ...zoomed, ...panElevation(zoomed, view, [40, -25]) };
  const back = { ...start, ...elevationOfGaze(start, view, gazeOfElevation(moved, view)) };
  const axis = view === 'front' ? 'lateral' : 'station';
  expect(back[axis].mmPerPx).toBeCloseTo(moved[axis].mmPerPx, 9);
  expect(back[axis].atLeftMm).toBeCloseTo(moved[axis].atLeftMm, 9);
  expect(back.middleMm[view]).toBeCloseTo(moved.middleMm[view], 9);
});

test('in a picture of another shape all that was seen is still in it, about the same middle', () => {
  const gaze = gazeOfElevation(axes(900, 500), 'side');
  for (const [widthPx, heightPx] of [
    [400, 900],
    [1900, 300],
  ] as const) {
    const other = axes(widthPx, heightPx);
    const { station } = { ...other, ...elevationOfGaze(other, 'side', gaze) };
    expect(pxToAxis(station, widthPx / 2)).toBeCloseTo(gaze.atMm[0], 9);
    expect(widthPx * station.mmPerPx).toBeGreaterThanOrEqual(gaze.wideMm - 1e-9);
    expect(heightPx * station.mmPerPx).toBeGreaterThanOrEqual(gaze.highMm - 1e-9);
  }
});
