import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import {
  lastOnly,
  lastPerObject,
  notesOn,
  perEitherPair,
  perObject,
  perObjects,
} from '../../../src/engine/memory/memory';

test('an answer about an object is worked out once, even where it is nothing', () => {
  for (const answer of [7, null, undefined, false]) {
    const work = vi.fn((_: object) => answer);
    const remembered = perObject(work);
    const [a, b] = [{}, {}];
    expect([remembered(a), remembered(a), remembered(b)]).toEqual([answer, answer, answer]);
    expect(work.mock.calls).toEqual([[a], [b]]);
  }
});

test('what throws is asked again', () => {
  const work = vi.fn((_: object): number => {
    throw new RangeError('no');
  });
  const key = {};
  for (const remembered of [perObject(work), perObjects(work), lastOnly(work), lastPerObject(work)]) {
    work.mockClear();
    expect(() => remembered(key)).toThrow('no');
    expect(() => remembered(key)).toThrow('no');
    expect(work).toHaveBeenCalledTimes(2);
  }
});

// Against a plain list of all that was ever asked, searched from its start.
test('several keys of any kind, in any order of asking', () => {
  const objects = [{}, {}, {}];
  const key = fc.oneof(fc.constantFrom(...objects), fc.constantFrom(0, -0, 1, 'a', '', null, undefined, NaN));
  const asked = fc.tuple(fc.constantFrom(...objects), key, key);
  fc.assert(
    fc.property(fc.array(asked, { maxLength: 60 }), (all) => {
      let made = 0;
      const remembered = perObjects((..._: [object, unknown, unknown]) => {
        made += 1;
        return made;
      });
      const before: { keys: readonly unknown[]; answer: number }[] = [];
      // A map's keys are the same where `===` says so, and NaN is itself.
      const same = (a: unknown, b: unknown) => a === b || (Number.isNaN(a) && Number.isNaN(b));
      for (const keys of all) {
        const found = before.find((one) => one.keys.every((k, i) => same(k, keys[i])));
        const answer = remembered(...keys);
        if (found) expect(answer).toBe(found.answer);
        else expect(before.map((one) => one.answer)).not.toContain(answer);
        before.push({ keys, answer });
      }
    }),
    { numRuns: 100 },
  );
});

test('fewer keys are not more keys', () => {
  const count = perObjects((...keys: [object, ...unknown[]]) => keys.length);
  const key = {};
  expect([count(key), count(key, undefined), count(key, undefined, null), count(key)]).toEqual([1, 2, 3, 1]);
});

test('a pair is worked out one way round and turned for the other', () => {
  const work = vi.fn((a: { at: number }, b: { at: number }) => b.at - a.at);
  const gap = perEitherPair(work, (mm) => -mm);
  const [a, b] = [{ at: 3 }, { at: 10 }];
  expect([gap(a, b), gap(b, a), gap(a, b), gap(b, a), gap(a, a)]).toEqual([7, -7, 7, -7, 0]);
  expect(work).toHaveBeenCalledTimes(2);
});

test('the last answer alone is kept', () => {
  const work = vi.fn((a: object | null, b: number) => ({ a, b }));
  const remembered = lastOnly(work);
  const a = {};
  const first = remembered(a, 1);
  expect(remembered(a, 1)).toBe(first);
  expect(remembered(a, 2)).toEqual({ a, b: 2 });
  expect(remembered(a, 1)).not.toBe(first);
  expect(remembered(null, Number.NaN)).toBe(remembered(null, Number.NaN));
  expect(work).toHaveBeenCalledTimes(4);
});

test('the last answer for each object, by a likeness of its own', () => {
  const sum = vi.fn((_: object, list: readonly number[]) => list.reduce((a, b) => a + b, 0));
  const remembered = lastPerObject(sum, ([before], [now]) => before.join() === now.join());
  const [a, b] = [{}, {}];
  expect([remembered(a, [1, 2]), remembered(b, [5]), remembered(a, [1, 2]), remembered(b, [5])]).toEqual([
    3, 5, 3, 5,
  ]);
  expect(sum).toHaveBeenCalledTimes(2);
  expect(remembered(a, [4])).toBe(4);
  expect(remembered(a, [1, 2])).toBe(3);
  expect(sum).toHaveBeenCalledTimes(4);
  const strict = lastPerObject(sum);
  const list = [1];
  strict(a, list);
  strict(a, list);
  strict(a, [1]);
  expect(sum).toHaveBeenCalledTimes(6);
});

test('notes are found with what they are about', () => {
  const notes = notesOn<object, string>();
  const [a, b] = [{}, {}];
  notes.set(a, 'seen');
  expect([notes.get(a), notes.get(b)]).toEqual(['seen', undefined]);
});
