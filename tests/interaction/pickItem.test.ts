import { describe, expect, test } from 'vitest';
import { pickItem, rayToItem } from '../../src/interaction/pickItem';
import type { Part } from '../../src/model/document/types';

const part = (over: Partial<Part>): Part =>
  ({
    id: 'a',
    name: 'A',
    role: 'other',
    massG: 1,
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    shape: { kind: 'box', lengthMm: 40, widthMm: 20, heightMm: 10 },
    positionMm: [0, 0, 0],
    ...over,
  }) as Part;

describe('a ray and an item', () => {
  test('a box is met at its face', () => {
    const box = part({ positionMm: [100, 5, 0] });
    expect(rayToItem({ originMm: [0, 0, 0], direction: [1, 0, 0] }, box)).toBeCloseTo(80, 9);
    expect(rayToItem({ originMm: [0, 20, 0], direction: [1, 0, 0] }, box)).toBeNull();
    expect(rayToItem({ originMm: [200, 0, 0], direction: [1, 0, 0] }, box)).toBeNull();
  });

  test('a box turned a quarter by yaw shows its other side', () => {
    // Yawed by 90° the 40 mm length lies across: half of it reaches 20 mm to either side, half the width 10 mm ahead.
    const box = part({ yawDeg: 90 });
    expect(rayToItem({ originMm: [-100, 15, 0], direction: [1, 0, 0] }, box)).toBeCloseTo(90, 9);
  });

  test('a sphere is met where the closed form says, to its facets', () => {
    const sphere = part({ shape: { kind: 'sphere', diameterMm: 60 } });
    // r = 30, passing 12 above the middle: enters at −√(30² − 12²). Facets of 20 to the circle lie at most 2.5 % inside.
    const along = rayToItem({ originMm: [-100, 0, 12], direction: [1, 0, 0] }, sphere) ?? 0;
    expect(along).toBeGreaterThanOrEqual(100 - Math.sqrt(30 ** 2 - 12 ** 2) - 1e-9);
    expect(along).toBeLessThan(100 - Math.sqrt(30 ** 2 - 12 ** 2) + 0.04 * 60);
  });

  test('a mirrored tank is hit on the side it lies on', () => {
    const outlineMm = [
      [0, 0],
      [30, 0],
      [30, 20],
      [0, 20],
    ] as const;
    const tank = { ...part({}), shape: { kind: 'prism', lengthMm: 100, outlineMm } } as unknown as Part;
    const left = { ...tank, mirrored: true } as unknown as Part;
    const down = (y: number) => ({ originMm: [0, y, 100], direction: [0, 0, -1] }) as const;
    expect(rayToItem(down(15), tank)).not.toBeNull();
    expect(rayToItem(down(-15), tank)).toBeNull();
    expect(rayToItem(down(-15), left)).not.toBeNull();
    expect(rayToItem(down(15), left)).toBeNull();
  });
});

test('the nearest is picked, unless the preferred one lies under the pointer too', () => {
  const near = part({ id: 'near', positionMm: [50, 0, 0] });
  const far = part({ id: 'far', positionMm: [150, 0, 0] });
  const ray = { originMm: [0, 0, 0], direction: [1, 0, 0] } as const;
  expect(pickItem(ray, [far, near], null)).toEqual({ id: 'near', pointMm: [30, 0, 0] });
  expect(pickItem(ray, [far, near], 'far')?.id).toBe('far');
  expect(pickItem({ ...ray, originMm: [0, 50, 0] }, [far, near], 'far')).toBeNull();
});
