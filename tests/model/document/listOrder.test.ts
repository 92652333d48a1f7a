import { describe, expect, test } from 'vitest';
import { listInOrder, movedBefore } from '../../../src/model/document/listOrder';
import { aircraftOf, boxPart } from '../aircraft';

const bench = aircraftOf(
  [],
  ['a', 'b', 'c', 'd'].map((id) => boxPart(id, 10, [0, 0, 0])),
);

describe('the order of the list', () => {
  test.each([
    [['c', 'a', 'd', 'b'], 'cadb'],
    // Only what is named moves, among the places that it had.
    [['d', 'b'], 'adcb'],
    [['nobody', 'b', 'a'], 'bacd'],
  ])('%j', (ids, order) => {
    const moved = listInOrder(bench, ids);
    expect(moved.parts.map(({ id }) => id).join('')).toBe(order);
    expect(new Set(moved.parts)).toEqual(new Set(bench.parts));
    expect(moved.structure).toBe(bench.structure);
  });

  test('where nothing moves it is the very same aircraft', () => {
    expect(listInOrder(bench, ['a', 'c'])).toBe(bench);
    expect(listInOrder(bench, [])).toBe(bench);
  });
});

test.each([
  ['c', 'a', 'cabd'],
  ['a', null, 'bcda'],
  ['a', 'c', 'bacd'],
  ['a', 'a', 'abcd'],
  ['a', 'nobody', 'abcd'],
  ['nobody', 'a', 'abcd'],
])('%s before %s', (id, before, order) => {
  expect(movedBefore(['a', 'b', 'c', 'd'], id, before).join('')).toBe(order);
});
