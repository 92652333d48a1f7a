import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axisToPx, fitAxis, panAxis, pxToAxis, zoomAxis } from '../../src/store/axisStore';
import { between } from '../between';

const mm = between(-5000, 5000);
const px = between(0, 2000);

test('pixels and millimetres go back and forth', () => {
  fc.assert(
    fc.property(mm, between(0.05, 20), px, fc.boolean(), (atLeftMm, scale, x, flip) => {
      const axis = { atLeftMm, mmPerPx: flip ? -scale : scale };
      expect(axisToPx(axis, pxToAxis(axis, x))).toBeCloseTo(x, 6);
    }),
  );
});

test('a fitted axis shows its range with the margin on either side, in either direction', () => {
  const forward = fitAxis({ lowMm: -50, highMm: 1450 }, 880, 40);
  expect(axisToPx(forward, -50)).toBeCloseTo(40, 9);
  expect(axisToPx(forward, 1450)).toBeCloseTo(840, 9);
  const backward = fitAxis({ lowMm: -1200, highMm: 1200 }, 880, 40, -1);
  expect(axisToPx(backward, 1200)).toBeCloseTo(40, 9);
  expect(axisToPx(backward, -1200)).toBeCloseTo(840, 9);
});

test('zoom keeps the place under the pointer, pan carries the picture along', () => {
  fc.assert(
    fc.property(px, between(0.2, 5), fc.boolean(), (x, factor, flip) => {
      const axis = { atLeftMm: 100, mmPerPx: flip ? -1.5 : 1.5 };
      expect(pxToAxis(zoomAxis(axis, factor, x), x)).toBeCloseTo(pxToAxis(axis, x), 6);
      expect(axisToPx(panAxis(axis, 25), 300)).toBeCloseTo(axisToPx(axis, 300) + 25, 6);
    }),
  );
});
