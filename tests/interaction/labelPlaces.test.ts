import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LabelAsk, type LabelBox, labelPlaces } from '../../src/interaction/labelPlaces';

const stage: LabelBox = { left: 0, top: 0, width: 800, height: 600 };
const ask = (id: string, x: number, topPx: number, must = false): LabelAsk => ({
  id,
  x,
  topPx,
  bottomPx: topPx + 30,
  width: 90,
  height: 22,
  must,
});
const meet = (a: LabelBox, b: LabelBox) =>
  a.left < b.left + b.width &&
  b.left < a.left + a.width &&
  a.top < b.top + b.height &&
  b.top < a.top + a.height;

describe('labels on the stage', () => {
  test('none covers another or what is taken, and none leaves the stage', () => {
    const at = fc.tuple(fc.integer({ min: -50, max: 850 }), fc.integer({ min: -50, max: 650 }));
    fc.assert(
      fc.property(fc.array(at, { maxLength: 30 }), at, (points, [left, top]) => {
        const taken = [{ left, top, width: 36, height: 36 }];
        const places = labelPlaces(
          points.map(([x, y], i) => ask(String(i), x, y)),
          taken,
          stage,
        );
        const boxes = [...places.values()];
        for (const [i, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.left + box.width).toBeLessThanOrEqual(800);
          expect(box.top).toBeGreaterThanOrEqual(0);
          expect(box.top + box.height).toBeLessThanOrEqual(600);
          for (const other of [...boxes.slice(i + 1), ...taken]) expect(meet(box, other)).toBe(false);
        }
      }),
    );
  });

  test('the first asked for is always shown, and so is one that must be', () => {
    const places = labelPlaces([ask('a', 400, 300), ask('b', 402, 301, true)], [], stage);
    expect([...places.keys()]).toEqual(['a', 'b']);
  });

  test('where the room above is taken, one that must be shown goes below', () => {
    const taken = [{ left: 300, top: 230, width: 200, height: 60 }];
    expect(labelPlaces([ask('a', 400, 300, true)], taken, stage).get('a')?.top).toBeGreaterThan(330);
  });
});
