import { expect, test } from 'vitest';
import { stabilityInput } from '../../src/model/stability/stability';
import type { StabilityAsk, StabilityReply } from '../../src/workers/stabilityMessages';
import { type StabilityPort, stabilitySolver } from '../../src/workers/stabilitySolver';
import { aircraftOf } from '../model/aircraft';

const input = stabilityInput(aircraftOf([]));

function handPort() {
  const asks: StabilityAsk[] = [];
  let opened = 0;
  const port: StabilityPort = { postMessage: (ask) => asks.push(ask), onmessage: null, onerror: null };
  const solve = stabilitySolver(() => {
    opened += 1;
    return port;
  });
  const reply = (data: StabilityReply) => port.onmessage?.({ data } as MessageEvent<StabilityReply>);
  const stop = (message: string) => port.onerror?.({ message } as ErrorEvent);
  return { asks, solve, reply, stop, opened: () => opened };
}

test('the worker is opened at the first ask and then kept', async () => {
  const { solve, opened } = handPort();
  expect(opened()).toBe(0);
  solve(input, 'fine');
  solve(input, 'coarse');
  expect(opened()).toBe(1);
});

test('replies find their asks in whatever order they come', async () => {
  const { asks, solve, reply } = handPort();
  const [first, second] = [solve(input, 'fine'), solve(input, 'coarse')];
  reply({ id: asks[1]?.id ?? -1, ok: true, answer: { fault: 'of the second' } });
  reply({ id: asks[0]?.id ?? -1, ok: true, answer: null });
  expect(await first).toBe(null);
  expect(await second).toEqual({ fault: 'of the second' });
});

test('an error in the worker rejects with a sentence', async () => {
  const { asks, solve, reply } = handPort();
  const answer = solve(input, 'fine');
  reply({ id: asks[0]?.id ?? -1, ok: false, sentence: 'no such lattice.' });
  await expect(answer).rejects.toThrow('The estimate of the neutral point failed: no such lattice.');
});

test('a worker that stops rejects all that waits and is opened anew', async () => {
  const { solve, stop, opened } = handPort();
  const waiting = [solve(input, 'fine'), solve(input, 'coarse')];
  stop('it could not be fetched');
  for (const answer of waiting) await expect(answer).rejects.toThrow('it could not be fetched');
  solve(input, 'fine');
  expect(opened()).toBe(2);
});
