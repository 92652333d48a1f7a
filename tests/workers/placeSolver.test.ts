import { expect, test } from 'vitest';
import type { ArrangeAnswer } from '../../src/engine/place/searchState';
import type { PlaceAsk, PlaceReply } from '../../src/workers/placeMessages';
import { type PlacePort, placeSolver } from '../../src/workers/placeSolver';
import { runPlaceTask } from '../../src/workers/placeTask';
import { pointCase } from '../engine/place/cases';
import { arranged, solve } from '../engine/place/solver';

/** A worker in the same thread, that answers when told to. */
function port(): PlacePort & { asked: PlaceAsk[]; ended: boolean; answer(): void } {
  const made = {
    asked: [] as PlaceAsk[],
    ended: false,
    onmessage: null as PlacePort['onmessage'],
    onerror: null as PlacePort['onerror'],
    postMessage: (ask: PlaceAsk) => {
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
      const answer = runPlaceTask(
        task,
        solve,
        () => performance.now(),
        (progress) => post({ id, kind: 'progress', progress }),
      );
      post({ id, kind: 'answer', answer });
    },
  };
  return made;
}

const problem = pointCase(2);

test('an answer from the worker is the engine’s, with progress on the way, and the worker is kept', async () => {
  const ports: ReturnType<typeof port>[] = [];
  const ask = placeSolver(() => {
    ports.push(port());
    return ports.at(-1)!;
  });
  const seen: unknown[] = [];
  for (let round = 0; round < 2; round++) {
    const run = ask({ task: 'arrange', problem, timeMs: 5000 }, (progress) => seen.push(progress));
    ports[0]!.answer();
    const answer = (await run.answer) as ArrangeAnswer;
    expect(answer.boundG).toBe(arranged(problem).boundG);
    expect(answer.best?.ballastG).toBe(arranged(problem).best?.ballastG);
  }
  expect(ports).toHaveLength(1);
  expect(seen.length > 0).toBe(arranged(problem).best !== null);
});

test('cancelling ends the worker and answers nothing', async () => {
  const only = port();
  const run = placeSolver(() => only)({ task: 'arrange', problem, timeMs: 5000 });
  run.cancel();
  expect(await run.answer).toBeNull();
  expect(only.ended).toBe(true);
});

test('what goes wrong in the worker is said', async () => {
  const only = port();
  const run = placeSolver(() => only)({ task: 'arrange', problem, timeMs: 5000 });
  only.onmessage?.({
    data: { id: only.asked[0]!.id, kind: 'failed', sentence: 'No memory.' },
  } as MessageEvent<PlaceReply>);
  await expect(run.answer).rejects.toThrow('The search for a place failed: No memory.');
});
