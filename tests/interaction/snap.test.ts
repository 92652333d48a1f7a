import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Extent, type SnapSetting, snapPlace } from '../../src/interaction/snap';
import { between } from '../between';

const box = (x: number, y: number, z: number, half = 10): Extent => ({
  minMm: [x - half, y - half, z - half],
  maxMm: [x + half, y + half, z + half],
});
const alone: SnapSetting = {
  gridMm: 5,
  reachMm: 3,
  moving: [true, true, true],
  extent: box(0, 0, 0),
  neighbours: [],
};
const mm = between(-1500, 1500);

describe('snapping', () => {
  test('alone it catches on the grid, half a step away at most', () => {
    fc.assert(
      fc.property(mm, mm, mm, (x, y, z) => {
        const { positionMm, caught } = snapPlace([x, y, z], alone);
        for (const [axis, wanted] of [x, y, z].entries()) {
          const at = positionMm[axis] ?? Number.NaN;
          expect(Math.abs(at - wanted)).toBeLessThanOrEqual(Math.max(2.5, alone.reachMm) + 1e-9);
          expect(Math.abs(at / 5 - Math.round(at / 5))).toBeLessThan(1e-9);
          if (caught[axis] === 'grid') expect(Math.abs(at - wanted)).toBeLessThanOrEqual(2.5 + 1e-9);
        }
      }),
    );
  });

  test('near the plane of symmetry a buttline becomes 0', () => {
    expect(snapPlace([103, 2.9, 0], alone)).toEqual({
      positionMm: [105, 0, 0],
      caught: ['grid', 'centreline', 'grid'],
    });
    expect(snapPlace([103, 3.1, 0], alone).caught[1]).toBe('grid');
  });

  test('an axis that does not move keeps its place to the last digit', () => {
    fc.assert(
      fc.property(mm, (y) => {
        const { positionMm, caught } = snapPlace([12, y, 7], { ...alone, moving: [true, false, true] });
        expect(positionMm[1]).toBe(y);
        expect(caught[1]).toBe('free');
      }),
    );
  });

  test('beside a neighbour it catches on its face, front or rear, and the two then share no room', () => {
    const setting = { ...alone, neighbours: [box(101, 0, 0)] };
    expect(snapPlace([79.5, 0, 0], setting)).toMatchObject({
      positionMm: [81, 0, 0],
      caught: ['touching', 'centreline', 'grid'],
    });
    expect(snapPlace([122, 0, 0], setting).positionMm[0]).toBe(121);
  });

  test('a neighbour that it would pass clear of does not catch it', () => {
    const setting = { ...alone, neighbours: [box(101, 60, 0)] };
    expect(snapPlace([79.5, 20, 0], setting).caught[0]).toBe('grid');
  });
});
