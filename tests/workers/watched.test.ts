import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { watched } from '../../src/workers/watched';

interface Reply {
  readonly kind: 'answer' | 'progress';
}

function table() {
  const worker = {
    asked: [] as number[],
    ended: false,
    onmessage: null as ((event: MessageEvent<Reply>) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
    postMessage: (ask: number) => worker.asked.push(ask),
    terminate: () => {
      worker.ended = true;
    },
  };
  const said: string[] = [];
  const port = watched<number, Reply>(() => worker as never, 10)();
  port.onmessage = ({ data }) => said.push(data.kind);
  port.onerror = ({ message }) => said.push(`failed: ${message}`);
  const say = (kind: Reply['kind']) => worker.onmessage?.({ data: { kind } } as MessageEvent<Reply>);
  return { worker, port, said, say };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('a worker that says nothing is ended at its limit, and its client told', () => {
  const { worker, port, said } = table();
  port.postMessage(1);
  vi.advanceTimersByTime(9_900);
  expect([said, worker.ended]).toEqual([[], false]);
  vi.advanceTimersByTime(200);
  expect([said, worker.ended]).toEqual([['failed: it said nothing for 10 s'], true]);
});

test('progress winds the limit up again, an answer ends it', () => {
  const { worker, port, said, say } = table();
  port.postMessage(1);
  for (let report = 0; report < 5; report++) {
    vi.advanceTimersByTime(8_000);
    say('progress');
  }
  say('answer');
  vi.advanceTimersByTime(60_000);
  expect([said.at(-1), worker.ended]).toEqual(['answer', false]);
});

test('of two questions both are waited for; nothing is waited for unasked', () => {
  const { worker, port, say } = table();
  vi.advanceTimersByTime(60_000);
  port.postMessage(1);
  port.postMessage(2);
  say('answer');
  vi.advanceTimersByTime(11_000);
  expect(worker.ended).toBe(true);
});

test('a worker whose file never came is told as such', () => {
  const { worker, said } = table();
  worker.onerror?.({ message: '' } as ErrorEvent);
  expect(said).toEqual([expect.stringMatching(/could not be fetched/)]);
});
