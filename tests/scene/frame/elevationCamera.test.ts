import * as fc from 'fast-check';
import { OrthographicCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { acrossAxis, axisOf, type Elevation, uprightAxis } from '../../../src/interaction/elevation';
import { registerElevation } from '../../../src/scene/frame/elevationCamera';
import { toWorld } from '../../../src/scene/frame/frame';
import { type AxisState, axisToPx } from '../../../src/store/axisStore';
import { between } from '../../between';

const axesIn = (mmPerPx: number, atLeftMm: number, widthPx: number, heightPx: number): AxisState => ({
  widthPx,
  heightPx,
  station: { atLeftMm, mmPerPx },
  lateral: { atLeftMm: -atLeftMm, mmPerPx: -mmPerPx },
  middleMm: { side: -40, top: 12, front: 33 },
  spanStretch: 1,
  wholeSpanStretch: 1,
});

/** Where three.js itself draws a point of the aircraft, px from the top left corner. */
function drawnAt(view: Elevation, axes: AxisState, point: Vec3): readonly [number, number] {
  const camera = new OrthographicCamera();
  registerElevation(camera, view, axes);
  const { x, y } = toWorld(point, new Vector3()).project(camera);
  return [((x + 1) / 2) * axes.widthPx, ((1 - y) / 2) * axes.heightPx];
}

const views: Elevation[] = ['side', 'top', 'front'];
const mm = between(-3000, 3000);
const scale = between(0.05, 20);

describe('an elevation is registered with the shared axis', () => {
  test.each(views)('%s: a column of pixels is a station or a buttline, to 0.01 px', (view) => {
    fc.assert(
      fc.property(fc.tuple(mm, mm, mm), scale, mm, (point, mmPerPx, left) => {
        const axes = axesIn(mmPerPx, left, 883, 597);
        const [px] = drawnAt(view, axes, point);
        expect(Math.abs(px - axisToPx(axisOf(axes, view), point[acrossAxis(view)]))).toBeLessThan(0.01);
      }),
    );
  });

  test.each(views)('%s: a pixel is as high as it is wide, the middle at mid-height', (view) => {
    fc.assert(
      fc.property(fc.tuple(mm, mm, mm), scale, (point, mmPerPx) => {
        const axes = axesIn(mmPerPx, 0, 640, 480);
        const [, py] = drawnAt(view, axes, point);
        const wanted = 240 - (point[uprightAxis(view)] - axes.middleMm[view]) / mmPerPx;
        expect(Math.abs(py - wanted)).toBeLessThan(0.01);
      }),
    );
  });

  test('the nose is on the left from the side and from above; the right wing is up from above and left from ahead', () => {
    const axes = axesIn(1, -400, 800, 600);
    const nose: Vec3 = [0, 0, 0];
    const rightTip: Vec3 = [0, 200, 0];
    const tail: Vec3 = [300, 0, 0];
    for (const view of ['side', 'top'] as const) {
      expect(drawnAt(view, axes, nose)[0]).toBeLessThan(drawnAt(view, axes, tail)[0]);
    }
    expect(drawnAt('top', axes, rightTip)[1]).toBeLessThan(drawnAt('top', axes, nose)[1]);
    expect(drawnAt('front', axes, rightTip)[0]).toBeLessThan(drawnAt('front', axes, nose)[0]);
  });
});
