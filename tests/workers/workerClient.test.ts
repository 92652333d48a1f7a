import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { CalledOff, orNull, workerClient } from '../../src/workers/workerClient';
import { handPorts } from './handPorts';

function bench() {
  const { ports, open } = handPorts<string, number, number>();
  const ask = workerClient(open, { search: 'The search', purpose: 'searching', silentS: 10 });
  return { ports, ask };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('a worker is opened at the first ask only, and kept once it has answered', async () => {
  const { ports, ask } = bench();
  expect(ports).toHaveLength(0);
  const first = ask('a');
  ports[0]!.answer(-1, ports[0]!.lastId() + 1);
  ports[0]!.answer(1);
  expect(await first).toBe(1);
  const second = ask('b');
  ports[0]!.answer(2);
  expect(await second).toBe(2);
  expect([ports.length, ports[0]!.asks.map(({ task }) => task)]).toEqual([1, ['a', 'b']]);
});

test('two tasks under way have a worker each, and answer in whatever order', async () => {
  const { ports, ask } = bench();
  const [first, second] = [ask('a'), ask('b')];
  ports[1]!.answer(2);
  ports[0]!.answer(1);
  expect(await Promise.all([first, second])).toEqual([1, 2]);
  expect(ports).toHaveLength(2);
});

test('what fails in the worker is said, and the worker kept', async () => {
  const { ports, ask } = bench();
  const answer = ask('a');
  ports[0]!.fail('a tank leaks.');
  await expect(answer).rejects.toThrow('The search failed: a tank leaks.');
  ask('b');
  expect([ports.length, ports[0]!.ended]).toEqual([1, false]);
});

test('a worker that breaks off, or whose file never came, is told and replaced', async () => {
  const { ports, ask } = bench();
  const first = ask('a');
  ports[0]!.breakOff('out of memory');
  await expect(first).rejects.toThrow('The worker for searching stopped: out of memory.');
  const second = ask('b');
  ports[1]!.breakOff('');
  await expect(second).rejects.toThrow(/could not be fetched/);
  const third = ask('c');
  ports[2]!.onmessageerror?.({} as MessageEvent);
  await expect(third).rejects.toThrow(/could not be read/);
  expect(ports.map(({ ended }) => ended)).toEqual([true, true, true]);
});

test('a task called off ends its worker, and the next opens another', async () => {
  const { ports, ask } = bench();
  const off = new AbortController();
  const answer = ask('a', { signal: off.signal });
  off.abort();
  await expect(answer).rejects.toBeInstanceOf(CalledOff);
  expect(ports[0]!.ended).toBe(true);
  await expect(ask('b', { signal: off.signal })).rejects.toThrow('The search was called off.');
  expect(ports).toHaveLength(1);
  const kept = new AbortController();
  const next = ask('c', { signal: kept.signal });
  ports[1]!.answer(3);
  kept.abort();
  expect([await next, ports[1]!.ended]).toEqual([3, false]);
});

test('what was called off may be taken as nothing; what failed may not', async () => {
  expect(await orNull(Promise.reject(new CalledOff()))).toBeNull();
  expect(await orNull(Promise.resolve(0))).toBe(0);
  await expect(orNull(Promise.reject(new Error('no')))).rejects.toThrow('no');
});

test('a worker that says nothing is ended at its limit, and its client told', async () => {
  const { ports, ask } = bench();
  const answer = ask('a');
  vi.advanceTimersByTime(9_900);
  expect(ports[0]!.ended).toBe(false);
  vi.advanceTimersByTime(200);
  expect(ports[0]!.ended).toBe(true);
  await expect(answer).rejects.toThrow('The worker for searching stopped: it said nothing for 10 s.');
});

test('progress is passed on and winds the limit up again; an answer ends it', async () => {
  const { ports, ask } = bench();
  const seen: number[] = [];
  const answer = ask('a', { onProgress: (share) => seen.push(share) });
  for (const progress of [1, 2, 3]) {
    vi.advanceTimersByTime(8_000);
    ports[0]!.say({ id: ports[0]!.lastId(), kind: 'progress', progress });
  }
  ports[0]!.answer(7);
  expect([await answer, seen]).toEqual([7, [1, 2, 3]]);
  vi.advanceTimersByTime(60_000);
  expect(ports[0]!.ended).toBe(false);
});
