import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { LEVEL } from '../../src/model/balance/balance';
import { certaintyOf } from '../../src/model/balance/certainty';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { type LoadEnvelope, loadEnvelopeOf } from '../../src/model/loads/loadStates';
import { readAircraft } from '../../src/model/reading/read';
import { createBench } from '../../src/store/bench';
import { type EnvelopeSolve, SEARCH_LIMIT_MS } from '../../src/store/loadSearcher';
import { setAttitude, setSwitch } from '../../src/store/viewStore';
import { dunlinJson } from '../model/aircraft';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const rest = () => vi.advanceTimersByTimeAsync(1000);

const NOTHING_YET = { envelope: null, loadSearch: { state: 'waiting' }, certainty: null, wander: null };

function benchWithSwitch() {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  const part = read.aircraft.parts[0]!;
  const bench = createBench({
    ...read.aircraft,
    switches: [
      {
        id: 'first',
        name: 'First',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: [part.id] },
        ],
      },
    ],
  });
  bench.rest.startCertainty(certaintyOf);
  return { bench, part };
}

test('answers come at rest, and go the moment that what they were for changes', async () => {
  const { bench, part } = benchWithSwitch();
  bench.rest.start(async (aircraft, down) => loadEnvelopeOf(aircraft, down));
  expect(bench.rest.get()).toEqual(NOTHING_YET);
  await rest();
  expect(bench.rest.get().loadSearch).toEqual({ state: 'done' });
  const { envelope, certainty, wander } = bench.rest.get();
  expect(envelope).toEqual(loadEnvelopeOf(bench.document.current(), LEVEL));
  expect(certainty?.travelPlusMinusMm.length).toBe(bench.balance.get().travel.length);
  expect(wander).not.toBeNull();

  const committed = bench.document.api.getState().committed;
  bench.document.preview(placeItem(committed, part.id, [700, 0, 0]));
  expect(bench.rest.get()).toEqual(NOTHING_YET);
  // Held in hand for a while: nothing is worked out for what is only passing by.
  await rest();
  expect(bench.rest.get().certainty).toBeNull();
  bench.document.commitPreview('Move it');
  await rest();
  expect(bench.rest.get().envelope).toEqual(loadEnvelopeOf(bench.document.current(), LEVEL));
});

test('what a change has no say in stays: the burn moves on, the load states do not', async () => {
  const { bench } = benchWithSwitch();
  bench.rest.start(async (aircraft, down) => loadEnvelopeOf(aircraft, down));
  await rest();
  const { envelope, certainty } = bench.rest.get();
  bench.view.setState({ fuelFraction: 0.4 });
  expect(bench.rest.get()).toEqual({ envelope, loadSearch: { state: 'done' }, certainty, wander: null });
  setSwitch(bench.view, 'first', 'off');
  expect(bench.rest.get()).toEqual({
    envelope,
    loadSearch: { state: 'done' },
    certainty: null,
    wander: null,
  });
  setAttitude(bench.view, { pitchDeg: 20 });
  expect(bench.rest.get()).toEqual(NOTHING_YET);
});

test('an answer that comes too late is dropped, and the right one asked for', async () => {
  const { bench, part } = benchWithSwitch();
  const asked: { aircraft: Aircraft; reply: (envelope: LoadEnvelope | null) => void }[] = [];
  bench.rest.start((aircraft) => new Promise((reply) => asked.push({ aircraft, reply })));
  await rest();
  const before = bench.document.current();
  bench.document.commit('Move it', placeItem(before, part.id, [900, 0, 0]));
  asked[0]!.reply(loadEnvelopeOf(before, LEVEL));
  await rest();
  expect(bench.rest.get().envelope).toBeNull();
  expect(asked).toHaveLength(2);
  expect(asked[1]!.aircraft).toBe(bench.document.current());
  asked[1]!.reply(loadEnvelopeOf(bench.document.current(), LEVEL));
  await rest();
  expect(bench.rest.get().envelope).toEqual(loadEnvelopeOf(bench.document.current(), LEVEL));
});

test('a failed search is tried once more, then said to have failed, and the rest of the bench goes on', async () => {
  const { bench } = benchWithSwitch();
  const solve = vi.fn<EnvelopeSolve>(() => Promise.reject(new Error('no worker')));
  bench.rest.start(solve);
  await rest();
  await rest();
  expect(solve).toHaveBeenCalledTimes(2);
  expect(bench.rest.get()).toMatchObject({
    envelope: null,
    loadSearch: { state: 'failed', sentence: 'no worker' },
  });
  expect(bench.rest.get().certainty).not.toBeNull();
  // Asked to, it tries again, and what comes then counts.
  solve.mockImplementation(async (aircraft, down) => loadEnvelopeOf(aircraft, down));
  bench.rest.retrySearch();
  expect(bench.rest.get().loadSearch).toEqual({ state: 'waiting' });
  await rest();
  expect(bench.rest.get().loadSearch).toEqual({ state: 'done' });
  expect(bench.rest.get().envelope).not.toBeNull();
});

test('a search that never answers runs out of time, is ended, and can be tried again', async () => {
  const { bench } = benchWithSwitch();
  const signals: AbortSignal[] = [];
  bench.rest.start((_aircraft, _down, signal) => {
    signals.push(signal);
    return new Promise(() => {});
  });
  await rest();
  expect(bench.rest.get().loadSearch).toEqual({ state: 'waiting' });
  await vi.advanceTimersByTimeAsync(SEARCH_LIMIT_MS);
  expect(bench.rest.get().loadSearch).toMatchObject({ state: 'timed out' });
  expect(signals.map(({ aborted }) => aborted)).toEqual([true]);
  bench.rest.retrySearch();
  await rest();
  expect(bench.rest.get().loadSearch).toEqual({ state: 'waiting' });
  expect(signals).toHaveLength(2);
});

test('a search for what is no longer on the bench is called off for the next', async () => {
  const { bench, part } = benchWithSwitch();
  const asked: { aircraft: Aircraft; signal: AbortSignal }[] = [];
  bench.rest.start((aircraft, _down, signal) => {
    asked.push({ aircraft, signal });
    return new Promise(() => {});
  });
  await rest();
  bench.document.commit('Move it', placeItem(bench.document.current(), part.id, [900, 0, 0]));
  await rest();
  expect(asked.map(({ signal }) => signal.aborted)).toEqual([true, false]);
  expect(asked[1]!.aircraft).toBe(bench.document.current());
});

test('without switches there are no other load states to check', async () => {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  const { structure, ...own } = read.aircraft;
  const bench = createBench({ ...own, structure: structure.filter(({ kind }) => kind !== 'leg') });
  await rest();
  expect(bench.rest.get().loadSearch).toEqual({ state: 'not needed' });
});
