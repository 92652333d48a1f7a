import { expect, test } from 'vitest';
import { fitSearcher } from '../../src/workers/fitSearcher';
import type { FitAnswer, FitTask } from '../../src/workers/fitTask';
import { workerClient } from '../../src/workers/workerClient';
import { aircraftOf } from '../model/aircraft';
import { handPorts } from './handPorts';

const aircraft = aircraftOf([]);
const answer = { order: [], before: [], stuck: [] };

function bench() {
  const { ports, open } = handPorts<FitTask, FitAnswer>();
  const settings = { search: 'The search for a way in', purpose: 'fitting', silentS: 60 };
  return { ports, searcher: fitSearcher(workerClient(open, settings)) };
}

test('a worker that has answered is asked again', async () => {
  const { ports, searcher } = bench();
  const first = searcher.order(aircraft);
  ports[0]!.answer(answer);
  expect(await first).toEqual(answer);
  const second = searcher.entry(aircraft, 'pack');
  expect(ports).toHaveLength(1);
  expect(ports[0]!.asks[1]?.task).toMatchObject({ task: 'entry', itemId: 'pack' });
  searcher.stop();
  expect(await second).toBeNull();
});

test('another search ends the one that runs, which then gives null', async () => {
  const { ports, searcher } = bench();
  const first = searcher.entry(aircraft, 'pack');
  const second = searcher.order(aircraft);
  expect(ports.map(({ ended }) => ended)).toEqual([true, false]);
  expect(await first).toBeNull();
  ports[1]!.answer(answer);
  expect(await second).toEqual(answer);
});

test('to stop gives null; to stop again does nothing', async () => {
  const { ports, searcher } = bench();
  const search = searcher.order(aircraft);
  searcher.stop();
  searcher.stop();
  expect(await search).toBeNull();
  expect(ports[0]!.ended).toBe(true);
});

test('what goes wrong in the worker rejects with a sentence', async () => {
  const { ports, searcher } = bench();
  const failing = searcher.order(aircraft);
  ports[0]!.fail('no hull.');
  await expect(failing).rejects.toThrow('The search for a way in failed: no hull.');
});
