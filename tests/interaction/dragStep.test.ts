import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/engine/geometry/types';
import { type DragAsk, dragStep, type Grip, regrip } from '../../src/interaction/dragStep';
import { between } from '../between';

const FAR = { minMm: [-1e4, -1e4, -1e4], maxMm: [1e4, 1e4, 1e4] } as const;
const downAt = (x: number, y: number): DragAsk['ray'] => ({ originMm: [x, y, 5000], direction: [0, 0, -1] });
const ask = (ray: DragAsk['ray'], more: Partial<DragAsk> = {}): DragAsk => ({
  ray,
  view: 'free',
  upright: false,
  snap: null,
  bounds: FAR,
  ...more,
});
const grip: Grip = { itemMm: [100, 20, 5], grabbedMm: [103, 22, 15], upright: false };
const mm = between(-900, 900);

describe('a drag', () => {
  test('moves as the pointer moves and keeps its height to the last digit', () => {
    fc.assert(
      fc.property(mm, mm, (dx, dy) => {
        const moved = dragStep(grip, ask(downAt(103 + dx, 22 + dy)));
        expect(moved?.positionMm[0]).toBeCloseTo(100 + dx, 8);
        expect(moved?.positionMm[1]).toBeCloseTo(20 + dy, 8);
        expect(moved?.positionMm[2]).toBe(5);
      }),
    );
  });

  test('goes on without a jump when it turns upright in the middle', () => {
    const now: Vec3 = [140, -11, 5];
    const upright = regrip(grip, now, true);
    const ray = { originMm: [143, -5000, 15], direction: [0, 1, 0] } as const;
    expect(dragStep(upright, ask(ray, { upright: true }))?.positionMm).toEqual(now);
  });

  test('stays on the bench', () => {
    const bounds = { minMm: [0, -50, -50], maxMm: [300, 50, 50] } as const;
    expect(dragStep(grip, ask(downAt(9000, -9000), { bounds }))?.positionMm).toEqual([300, -50, 5]);
  });

  test('stands still where the pointer points past the horizon', () => {
    expect(dragStep(grip, ask({ originMm: [0, 0, 500], direction: [1, 0, 0.2] }))).toBeNull();
  });

  test('snaps only along the axes that its plane holds', () => {
    const snap = {
      gridMm: 10,
      reachMm: 2,
      extent: { minMm: [0, 0, 0], maxMm: [1, 1, 1] },
      neighbours: [],
    } as const;
    const odd: Grip = { ...grip, itemMm: [100, 20, 5.3] };
    expect(dragStep(odd, ask(downAt(147, 59), { snap }))).toEqual({
      positionMm: [140, 60, 5.3],
      caught: ['grid', 'grid', 'free'],
    });
  });
});
