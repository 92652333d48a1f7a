import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { LEVEL } from '../../src/model/balance/balance';
import { placeItem } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { type LoadEnvelope, loadEnvelopeOf } from '../../src/model/loads/loadStates';
import { readAircraft } from '../../src/model/reading/read';
import { createBench } from '../../src/store/bench';
import { setAttitude, setSwitch } from '../../src/store/viewStore';
import { dunlinJson } from '../model/aircraft';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const rest = () => vi.advanceTimersByTimeAsync(1000);

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
  return { bench, part };
}

test('answers come at rest, and go the moment that what they were for changes', async () => {
  const { bench, part } = benchWithSwitch();
  bench.rest.start(async (aircraft, down) => loadEnvelopeOf(aircraft, down));
  expect(bench.rest.get()).toEqual({ envelope: null, certainty: null, wander: null });
  await rest();
  const { envelope, certainty, wander } = bench.rest.get();
  expect(envelope).toEqual(loadEnvelopeOf(bench.document.current(), LEVEL));
  expect(certainty?.travelPlusMinusMm.length).toBe(bench.balance.get().travel.length);
  expect(wander).not.toBeNull();

  const committed = bench.document.api.getState().committed;
  bench.document.preview(placeItem(committed, part.id, [700, 0, 0]));
  expect(bench.rest.get()).toEqual({ envelope: null, certainty: null, wander: null });
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
  expect(bench.rest.get()).toEqual({ envelope, certainty, wander: null });
  setSwitch(bench.view, 'first', 'off');
  expect(bench.rest.get()).toEqual({ envelope, certainty: null, wander: null });
  setAttitude(bench.view, { pitchDeg: 20 });
  expect(bench.rest.get()).toEqual({ envelope: null, certainty: null, wander: null });
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

test('a failed search leaves the rest of the bench alone and is not tried again and again', async () => {
  const { bench } = benchWithSwitch();
  const solve = vi.fn(() => Promise.reject(new Error('no worker')));
  bench.rest.start(solve);
  await rest();
  await rest();
  expect(solve).toHaveBeenCalledTimes(1);
  expect(bench.rest.get().envelope).toBeNull();
  expect(bench.rest.get().certainty).not.toBeNull();
});
