import { expect, test } from 'vitest';
import { outlineOf } from '../../../src/panels/beam/outlineOf';
import { roleLooks } from '../../../src/panels/roleLooks';

// Commands and the order of their figures: W3C, Scalable Vector Graphics 2, "9.3 Path data". The places are worked by hand.

test('each point goes to its place, and what is horizontal or vertical stays so', () => {
  expect(outlineOf('M0 -10L6 0H-6ZM0 -7V-3')(100, 50, 2)).toBe('M100 30L112 50H88ZM100 36V44');
});

test('the radii of an arc grow with it, while its turn and its two flags stay', () => {
  expect(outlineOf('M0 0A.5.25 30 1 0 0-1')(7, 9, 8)).toBe('M7 9A4 2 30 1 0 7 1');
});

test('the three points of a curve go along', () => {
  expect(outlineOf('M0-1C.1-.8 .45-.62 .45-.36Z')(10, 20, 100)).toBe('M10 -80C20 -60 55 -42 55 -16Z');
});

test('every role is drawn in commands that can be drawn elsewhere', () => {
  for (const { path } of Object.values(roleLooks)) {
    const commands = (drawn: string) => drawn.replace(/[^A-Za-z]/g, '');
    expect(commands(outlineOf(path)(3, 4, 5))).toBe(commands(path));
  }
  expect(() => outlineOf('m0 0l1 1')).toThrow('holds m');
});
