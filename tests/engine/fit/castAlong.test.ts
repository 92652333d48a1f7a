import { expect, test } from 'vitest';
import { castAlong } from '../../../src/engine/fit/castAlong';
import { boxShape, placed, saddle } from './randomSolids';

const ball = (diameterMm: number) => ({ kind: 'sphere', diameterMm }) as const;

test('a box goes ahead until it meets the next', () => {
  const pack = placed(boxShape(40, 30, 20), [300, 0, 0]);
  expect(castAlong(pack, [-1, 0, 0], placed(boxShape(20, 10, 10), [200, 19, 0]))).toBeCloseTo(70, 5);
  expect(castAlong(pack, [-1, 0, 0], placed(boxShape(20, 10, 10), [200, 21, 0]))).toBeNull();
  expect(castAlong(pack, [-1, 0, 0], placed(boxShape(20, 10, 10), [400, 0, 0]))).toBeNull();
});

test('two balls that pass off centre meet where the centres are the radii apart', () => {
  const gone = castAlong(placed(ball(40), [200, 0, 0]), [-1, 0, 0], placed(ball(20), [0, 18, 0]));
  expect(gone).toBeCloseTo(200 - Math.sqrt(30 ** 2 - 18 ** 2), 5);
});

test('a rod goes through a saddle’s opening, a thicker one meets its roof', () => {
  const rod = (diameterMm: number, z: number) =>
    placed({ kind: 'cylinder', lengthMm: 50, diameterMm }, [200, 0, z]);
  expect(castAlong(rod(30, 0), [-1, 0, 0], placed(saddle, [0, 0, 0]))).toBeNull();
  expect(castAlong(rod(30, 10), [-1, 0, 0], placed(saddle, [0, 0, 0]))).toBeCloseTo(200 - 25 - 30, 5);
});
