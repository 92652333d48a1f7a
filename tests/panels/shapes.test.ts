import { describe, expect, test } from 'vitest';
import { shapeBounds } from '../../src/engine/mass/shapeBounds';
import { shapeFault } from '../../src/engine/mass/shapeFault';
import { dimensionsOf, plainShapes, shapeAs, withDimension } from '../../src/panels/card/shapes';

const box = { kind: 'box', lengthMm: 100, widthMm: 40, heightMm: 40 } as const;

describe('shapes on the card', () => {
  test.each(plainShapes.map(({ kind }) => kind))(
    'a box made a %s is sound, and every dimension can be typed',
    (kind) => {
      const shape = shapeAs(box, kind);
      expect(shape.kind).toBe(kind);
      expect(shapeFault(shape)).toBeNull();
      const sizes = Object.values(shape).filter((value) => typeof value === 'number');
      expect(dimensionsOf(shape).map(({ valueMm }) => valueMm)).toEqual(sizes);
    },
  );

  test('square in section, it keeps its room; a sphere cannot', () => {
    for (const { kind } of plainShapes) {
      if (kind === 'sphere') continue;
      const { minMm, maxMm } = shapeBounds(shapeAs(box, kind));
      expect([0, 1, 2].map((axis) => (maxMm[axis] ?? 0) - (minMm[axis] ?? 0))).toEqual([100, 40, 40]);
    }
  });

  test('one dimension changes and the others stay', () => {
    expect(withDimension(box, 'widthMm', 55)).toEqual({ ...box, widthMm: 55 });
  });
});
