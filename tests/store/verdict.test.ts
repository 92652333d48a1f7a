import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { advise } from '../../src/model/advice/advise';
import { applyRemedy } from '../../src/model/advice/remedy';
import { updatePart } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { createBench } from '../../src/store/bench';
import type { AdviceSolve } from '../../src/store/verdictStore';
import { aircraftOf, boxPart, weightlessWing } from '../model/aircraft';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** (900·500 + 100·1000)/1000 = 550 mm, 10 mm aft of the band. */
const tailHeavy: Aircraft = {
  ...aircraftOf(
    [],
    [{ ...boxPart('engine', 900, [500, 0, 0]), locked: true }, boxPart('pack', 100, [1000, 0, 0])],
  ),
  targetBand: { by: 'station', forwardMm: 500, aftMm: 540 },
  lateralToleranceMm: 0,
};
const here: AdviceSolve = async (...asked) => advise(...asked);
const rest = () => vi.advanceTimersByTimeAsync(1000);

test('the judgement is live, the remedy follows at rest, and carried out it mends', async () => {
  const { document, verdict } = createBench(tailHeavy);
  expect(verdict.judgement().severitySoFar).toBe('bad-aft');
  verdict.start(here);
  expect(verdict.get().advice).toBeNull();
  await rest();
  const remedy = verdict.get().advice!.remedy!;
  expect(verdict.checking()).toBe(false);
  document.commit(remedy.words, applyRemedy(document.current(), remedy));
  expect(verdict.get().advice).toBeNull();
  expect(verdict.checking()).toBe(true);
  await rest();
  expect(verdict.judgement().severity).toBe('good');
});

test('while something is in hand no remedy is sought, and none of before stands', async () => {
  const asked = vi.fn(here);
  const { document, verdict } = createBench(tailHeavy);
  verdict.start(asked);
  await rest();
  expect(asked).toHaveBeenCalledTimes(1);
  document.preview(updatePart(tailHeavy, 'pack', { massG: 120 }));
  expect(verdict.get().advice).toBeNull();
  // (450 000 + 120 000)/1020 = 558.8 mm at once.
  expect(verdict.judgement().aftmost?.cgMm[0]).toBeCloseTo(570_000 / 1020, 6);
  await rest();
  expect(asked).toHaveBeenCalledTimes(1);
  document.cancel();
  await rest();
  expect(asked).toHaveBeenCalledTimes(2);
});

test('a search that fails says so, and what it would have found is not called good', async () => {
  const { verdict } = createBench({ ...tailHeavy, parts: [tailHeavy.parts[0]!] });
  verdict.start(async () => {
    throw new Error('The worker stopped.');
  });
  await rest();
  expect(verdict.get()).toEqual({ advice: null, failed: 'The worker stopped.' });
  expect(verdict.checking()).toBe(false);
  expect(verdict.judgement().severity).toBe('unknown');
});

test('what stopped is told for each thing apart, and one retry works all of it out anew', async () => {
  const {
    stability,
    rest: atRest,
    verdict,
  } = createBench({
    ...tailHeavy,
    structure: [weightlessWing],
    switches: [
      {
        id: 'pod',
        name: 'Pod',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['pack'] },
        ],
      },
    ],
  });
  let broken = true;
  const unless = async <T>(answer: T): Promise<T> => {
    if (broken) throw new Error('The worker stopped.');
    return answer;
  };
  stability.start(() => unless(null));
  atRest.start(() => unless(null));
  verdict.start(async (...asked) => unless(advise(...asked)));
  await rest();
  const sentence = 'The worker stopped.';
  expect(verdict.stopped()).toEqual([
    { what: 'the margin', sentence },
    { what: 'other load states', sentence },
    { what: 'a remedy', sentence },
  ]);
  broken = false;
  verdict.retry();
  expect(verdict.stopped()).toEqual([]);
  await rest();
  expect(verdict.stopped()).toEqual([]);
  expect(verdict.get().advice).not.toBeNull();
  expect(stability.get()).toMatchObject({ fresh: true, fault: null });
});
