import { describe, expect, test } from 'vitest';
import type { Aircraft, WeighIn } from '../../../src/model/document/types';
import {
  applyAndNote,
  applyCorrection,
  correctionOf,
  fitAfter,
  setClear,
  unaccountedEntry,
} from '../../../src/model/weigh/correction';
import { freshScales } from '../../../src/model/weigh/freshReadings';
import { heldAgainst } from '../../../src/model/weigh/heldAgainst';
import { predictedLoads } from '../../../src/model/weigh/predicted';
import { thoughtAt } from '../../../src/model/weigh/thought';
import { addWeighIn, lastWeighIn } from '../../../src/model/weigh/weighIns';
import { demo, without } from '../../demo/demoAircraft';

function held(aircraft: Aircraft, entry: WeighIn) {
  const answer = heldAgainst(aircraft, entry);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer;
}

/** A weigh-in whose scales read what the truth puts on them, each `moreG` more. */
function weighed(truth: Aircraft, fuelPct: number, moreG = 0): WeighIn {
  const reading = freshScales(truth);
  if (reading.by !== 'scales') throw new Error('no scales');
  const entry: WeighIn = {
    id: 'test',
    date: '2026-06-01',
    tool: 'Scales',
    fuelPct,
    switches: [],
    notes: '',
    reading,
  };
  const loads = predictedLoads(reading.scales, thoughtAt(truth, entry).balance, 0)!;
  const scales = reading.scales.map((scale, at) => ({ ...scale, grossG: loads[at]! + moreG }));
  return { ...entry, reading: { ...reading, scales, tapeMm: 0.5 } };
}

describe('the slip planted in Sandmartin', () => {
  const aircraft = demo('sandmartin');
  const last = lastWeighIn(aircraft)!;
  const { ranking, thought } = held(aircraft, last);
  const correction = correctionOf(aircraft, ranking()!.culprits[0]!, thought)!;

  test('is mended without anything running into anything else', () => {
    expect(fitAfter(aircraft, correction)).toEqual([]);
  });

  test('is noted with its day in the log of that weigh-in, and in no other', () => {
    const mended = applyAndNote(aircraft, correction, {
      weighInId: last.id,
      date: '2026-05-13',
      what: 'Put Silencer at buttline −64 mm',
    });
    const { weighIns: log, ...list } = mended;
    const { weighIns: _, ...only } = applyCorrection(aircraft, correction);
    expect(list).toEqual(only);
    expect(log?.map(({ corrected }) => corrected)).toEqual([
      undefined,
      [{ date: '2026-05-13', what: 'Put Silencer at buttline −64 mm' }],
    ]);
    expect(held(mended, lastWeighIn(mended)!).reconciled.agrees).toBe(true);
  });

  test('what cannot be where it would have to be says what is there', () => {
    const pack = ranking()!.culprits.find(({ id }) => id === 'ignition-pack')!;
    expect(fitAfter(aircraft, correctionOf(aircraft, pack, thought)!)).toEqual([
      'Flight pack lies inside Ignition pack.',
    ]);
  });
});

describe('something left out of the list', () => {
  // Taken off one by one from every demo with wheels, whatever room it stood in.
  test.each([
    ['sandmartin', 'camera'],
    ['sandmartin', 'flight-pack'],
    ['fieldfare', 'turbine'],
  ] as const)('%s without its %s: the entry that makes up for it runs into nothing', (name, id) => {
    const truth = demo(name);
    const entry = weighed(truth, 0);
    const listed = { ...without(truth, id), leads: [] };
    const unaccounted = held(listed, entry).unaccounted!;
    const found = unaccountedEntry(unaccounted)!;
    const clear = setClear(listed, found, {
      buttline: unaccounted.placeMm[1] !== null,
      waterline: unaccounted.placeMm[2] !== null,
    });
    expect(fitAfter(listed, clear)).toEqual([]);
    const { part } = clear as Extract<typeof clear, { kind: 'add' }>;
    const { part: before } = found as Extract<typeof found, { kind: 'add' }>;
    expect(part.positionMm.slice(0, 2)).toEqual(before.positionMm.slice(0, 2));
    expect(held(applyCorrection(listed, clear), entry).reconciled.agrees).toBe(true);
  });
});

test('more fuel than was said is nothing to be changed in the list', () => {
  const aircraft = demo('sandmartin');
  const { thought, ranking } = held(aircraft, { ...weighed(aircraft, 100), fuelPct: 60 });
  const liquid = ranking()?.culprits.find(({ id }) => !thought.dryIds.has(id));
  expect(liquid?.kind).toBe('not-weighed');
  expect(correctionOf(aircraft, liquid!, thought)).toBeNull();
});

test('a reading that no slip makes is explained by none', () => {
  const aircraft = demo('sandmartin');
  // Half as much again on every scale: a scale that lies, or another aircraft.
  const { ranking, reconciled } = held(aircraft, weighed(aircraft, 0, 1100));
  expect(reconciled.agrees).toBe(false);
  expect(ranking()?.culprits.filter(({ chanceLeft }) => chanceLeft < 1e-3)).toEqual([]);
});

test('a weigh-in that corrections were noted in is taken out of the log with them', () => {
  const { aircraft, id } = addWeighIn(demo('sandmartin'), weighed(demo('sandmartin'), 0));
  const noted = applyAndNote(
    aircraft,
    { kind: 'mass', id: 'camera', massG: 650 },
    { weighInId: id, date: '2026-06-02', what: 'Set Camera to 650 g' },
  );
  expect(noted.weighIns?.at(-1)?.corrected).toHaveLength(1);
  expect(noted.parts.find((part) => part.id === 'camera')?.massG).toBe(650);
});
