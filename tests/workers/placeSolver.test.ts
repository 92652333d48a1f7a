import { expect, test } from 'vitest';
import { LEVEL } from '../../src/model/balance/balance';
import { searchPlaces } from '../../src/model/place/searchPlaces';
import type { PlaceProgress, PlaceTask } from '../../src/model/place/tasks';
import type { Ask, Port, Reply } from '../../src/workers/envelope';
import { type PlaceAnswer, placeSolver } from '../../src/workers/placeSolver';
import { runPlaceTask } from '../../src/workers/placeTask';
import { workerClient } from '../../src/workers/workerClient';
import { now, solve } from '../engine/place/solver';
import { redshank } from '../model/place/bench';

type PlacePort = Port<PlaceTask, PlaceAnswer, PlaceProgress>;
type PlaceReply = Reply<PlaceAnswer, PlaceProgress>;

const solverIn = (open: () => PlacePort) =>
  placeSolver(workerClient(open, { search: 'The search for a place', purpose: 'placing', silentS: 600 }));

/** A worker in the same thread, that answers when told to. */
function port(): PlacePort & { asked: Ask<PlaceTask>[]; ended: boolean; answer(): void } {
  const made = {
    asked: [] as Ask<PlaceTask>[],
    ended: false,
    onmessage: null as PlacePort['onmessage'],
    onerror: null as PlacePort['onerror'],
    postMessage: (ask: Ask<PlaceTask>) => {
      // What crosses to a worker is copied, so it must be plain data.
      made.asked.push(structuredClone(ask));
    },
    terminate: () => {
      made.ended = true;
    },
    answer: () => {
      const { id, task } = made.asked.at(-1)!;
      const post = (reply: PlaceReply) =>
        made.onmessage?.({ data: structuredClone(reply) } as MessageEvent<PlaceReply>);
      const answer = runPlaceTask(task, solve, now, (progress) => post({ id, kind: 'progress', progress }));
      post({ id, kind: 'answer', answer });
    },
  };
  return made;
}

const request = {
  variants: [{ name: '', aircraft: redshank(530) }],
  settings: { down: LEVEL },
  probability: null,
};
const task: PlaceTask = { task: 'search', request, timeMs: 20_000 };

test('an answer from the worker is the model’s, with progress on the way, and the worker is kept', async () => {
  const ports: ReturnType<typeof port>[] = [];
  const ask = solverIn(() => {
    ports.push(port());
    return ports.at(-1)!;
  });
  const seen: unknown[] = [];
  for (let round = 0; round < 2; round++) {
    const run = ask(task, (progress) => seen.push(progress));
    ports[0]!.answer();
    const answer = await run.answer;
    const here = searchPlaces(request, { solve, now, timeMs: 20_000 });
    if (!answer || !('answer' in answer) || !('answer' in here)) throw new Error('Expected what was found.');
    expect(answer.answer.boundG).toBe(here.answer.boundG);
    expect(answer.answer.best?.ballastG).toBe(here.answer.best?.ballastG);
  }
  expect(ports).toHaveLength(1);
  expect(seen.length).toBeGreaterThan(0);
});

test('cancelling ends the worker and answers nothing', async () => {
  const only = port();
  const run = solverIn(() => only)(task);
  run.cancel();
  expect(await run.answer).toBeNull();
  expect(only.ended).toBe(true);
});

test('what goes wrong in the worker is said', async () => {
  const only = port();
  const run = solverIn(() => only)(task);
  only.onmessage?.({
    data: { id: only.asked[0]!.id, kind: 'failed', sentence: 'No memory.' },
  } as MessageEvent<PlaceReply>);
  await expect(run.answer).rejects.toThrow('The search for a place failed: No memory.');
});
