import { expect, test } from 'vitest';
import type { FitAsk, FitReply } from '../../src/workers/fitMessages';
import { type FitPort, fitSearcher } from '../../src/workers/fitSearcher';
import { aircraftOf } from '../model/aircraft';

const aircraft = aircraftOf([]);
const answer = { order: [], before: [], stuck: [] };

/** Workers driven by hand. */
function handPorts() {
  const ports: (FitPort & { asks: FitAsk[]; ended: boolean })[] = [];
  const searcher = fitSearcher(() => {
    const port = {
      asks: [] as FitAsk[],
      ended: false,
      postMessage: (ask: FitAsk) => port.asks.push(ask),
      terminate: () => {
        port.ended = true;
      },
      onmessage: null,
      onerror: null,
    };
    ports.push(port);
    return port;
  });
  const reply = (at: number, data: FitReply) => ports[at]?.onmessage?.({ data } as MessageEvent<FitReply>);
  return { ports, searcher, reply };
}

test('a worker that has answered is asked again', async () => {
  const { ports, searcher, reply } = handPorts();
  expect(ports).toHaveLength(0);
  const first = searcher.order(aircraft);
  reply(0, { id: ports[0]?.asks[0]?.id ?? -1, ok: true, answer });
  expect(await first).toEqual(answer);
  searcher.entry(aircraft, 'pack');
  expect(ports).toHaveLength(1);
  expect(ports[0]?.asks[1]?.task).toMatchObject({ task: 'entry', itemId: 'pack' });
});

test('another search ends the one that runs, which then gives null', async () => {
  const { ports, searcher, reply } = handPorts();
  const first = searcher.entry(aircraft, 'pack');
  const second = searcher.order(aircraft);
  expect(ports.map(({ ended }) => ended)).toEqual([true, false]);
  expect(await first).toBeNull();
  reply(1, { id: ports[1]?.asks[0]?.id ?? -1, ok: true, answer });
  expect(await second).toEqual(answer);
});

test('to stop gives null; to stop again does nothing', async () => {
  const { ports, searcher } = handPorts();
  const search = searcher.order(aircraft);
  searcher.stop();
  searcher.stop();
  expect(await search).toBeNull();
  expect(ports[0]?.ended).toBe(true);
});

test('what goes wrong in the worker rejects with a sentence', async () => {
  const { ports, searcher, reply } = handPorts();
  const failing = searcher.order(aircraft);
  reply(0, { id: ports[0]?.asks[0]?.id ?? -1, ok: false, sentence: 'no hull.' });
  await expect(failing).rejects.toThrow('The search for a way in failed: no hull.');
  const stopping = searcher.order(aircraft);
  ports[0]?.onerror?.({ message: 'out of memory' } as ErrorEvent);
  await expect(stopping).rejects.toThrow('The worker for fitting stopped: out of memory');
});
