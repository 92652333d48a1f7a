import { expect, test } from 'vitest';
import { LEVEL } from '../../src/model/balance/balance';
import { blankAircraft } from '../../src/model/document/blank';
import type { LoadAsk, LoadReply } from '../../src/workers/loadMessages';
import { type LoadPort, loadSolver } from '../../src/workers/loadSolver';

function fakePort() {
  const asks: LoadAsk[] = [];
  let ended = 0;
  const port: LoadPort = {
    postMessage: (ask) => asks.push(ask),
    terminate: () => {
      ended += 1;
    },
    onmessage: null,
    onerror: null,
  };
  const reply = (data: LoadReply) => port.onmessage?.({ data } as MessageEvent<LoadReply>);
  return { port, asks, reply, ended: () => ended };
}

test('opens the worker at the first ask only and passes the answer on', async () => {
  const { port, asks, reply } = fakePort();
  let opened = 0;
  const solve = loadSolver(() => {
    opened += 1;
    return port;
  });
  expect(opened).toBe(0);
  const answer = solve(blankAircraft(), LEVEL);
  reply({ id: asks[0]!.id + 1, ok: true, envelope: null });
  reply({ id: asks[0]!.id, ok: true, envelope: null });
  expect(await answer).toBeNull();
  const second = solve(blankAircraft(), LEVEL);
  reply({ id: asks[1]!.id, ok: false, sentence: 'a tank leaks' });
  await expect(second).rejects.toThrow(/a tank leaks/);
  expect(opened).toBe(1);
});

test('a worker that stops rejects with a sentence and is opened anew', async () => {
  const ports = [fakePort(), fakePort()];
  let opened = 0;
  const solve = loadSolver(() => ports[opened++]!.port);
  const answer = solve(blankAircraft(), LEVEL);
  ports[0]!.port.onerror?.({ message: 'out of memory' } as ErrorEvent);
  await expect(answer).rejects.toThrow(/stopped: out of memory/);
  const again = solve(blankAircraft(), LEVEL);
  ports[1]!.reply({ id: ports[1]!.asks[0]!.id, ok: true, envelope: null });
  expect(await again).toBeNull();
});

test('a search that nobody waits for any more ends its worker, and the next opens another', async () => {
  const ports = [fakePort(), fakePort()];
  let opened = 0;
  const solve = loadSolver(() => ports[opened++]!.port);
  const abort = new AbortController();
  const answer = solve(blankAircraft(), LEVEL, abort.signal);
  abort.abort();
  await expect(answer).rejects.toThrow(/called off/);
  expect(ports[0]!.ended()).toBe(1);
  const again = solve(blankAircraft(), LEVEL, new AbortController().signal);
  ports[1]!.reply({ id: ports[1]!.asks[0]!.id, ok: true, envelope: null });
  expect(await again).toBeNull();
  expect(ports[1]!.ended()).toBe(0);
});
