import { expect, test } from 'vitest';
import { wayWords } from '../../src/panels/fit/wayWords';
import { readings } from '../../src/panels/readings';

const say = readings('metric', 0);
const plain = (by: readonly [number, number, number]) => wayWords(by, say).replaceAll('\u202f', ' ');

test('a move in words, the longest first, by the signs of the axes: aft, right and up are positive', () => {
  expect(plain([0, 0, 12])).toBe('12.0 mm up');
  expect(plain([-3, 0, -12])).toBe('12.0 mm down and 3.0 mm forward');
  expect(plain([3, -20, 12])).toBe('20.0 mm left, 12.0 mm up and 3.0 mm aft');
  expect(plain([0, 7, 0.01])).toBe('7.0 mm right');
});
