import { describe, expect, test } from 'vitest';
import { nudgeBy } from '../../src/interaction/nudge';
import type { View } from '../../src/store/viewStore';

describe('arrow keys', () => {
  test.each<[string, View, readonly number[]]>([
    // Right on the screen is aft from the side and from above; from ahead it is the aircraft's left.
    ['ArrowRight', 'side', [1, 0, 0]],
    ['ArrowRight', 'top', [1, 0, 0]],
    ['ArrowRight', 'front', [0, -1, 0]],
    ['ArrowLeft', 'front', [0, 1, 0]],
    // Up on the screen is up, or from above the right wing.
    ['ArrowUp', 'side', [0, 0, 1]],
    ['ArrowUp', 'front', [0, 0, 1]],
    ['ArrowUp', 'top', [0, 1, 0]],
    ['PageUp', 'free', [0, 0, 1]],
    ['PageDown', 'top', [0, 0, -1]],
  ])('%s in %s view', (key, view, by) => {
    nudgeBy(key, view, false)?.forEach((mm, axis) => {
      expect(mm).toBeCloseTo(by[axis] ?? Number.NaN, 12);
    });
    expect(nudgeBy(key, view, false)).not.toBeNull();
  });

  test('1 mm, and 10 mm with Shift; every pair of keys undoes itself', () => {
    for (const view of ['free', 'side', 'top', 'front'] as const) {
      for (const [there, back] of [
        ['ArrowLeft', 'ArrowRight'],
        ['ArrowUp', 'ArrowDown'],
        ['PageUp', 'PageDown'],
      ] as const) {
        for (const [fast, size] of [
          [false, 1],
          [true, 10],
        ] as const) {
          const a = nudgeBy(there, view, fast) ?? [0, 0, 0];
          const b = nudgeBy(back, view, fast) ?? [0, 0, 0];
          expect(Math.hypot(...a)).toBe(size);
          expect(Math.hypot(a[0] + b[0], a[1] + b[1], a[2] + b[2])).toBe(0);
        }
      }
    }
  });

  test('no other key moves anything', () => {
    for (const key of ['a', 'Enter', 'Home', ' ']) expect(nudgeBy(key, 'side', true)).toBeNull();
  });
});
