import { describe, expect, test } from 'vitest';
import { updatePart } from '../../../src/model/document/edit';
import type { Aircraft, WeighIn } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { readAircraft } from '../../../src/model/reading/read';
import { applyCorrection, correctionOf, unaccountedEntry } from '../../../src/model/weigh/correction';
import { freshScales, freshStand } from '../../../src/model/weigh/freshReadings';
import { heldAgainst } from '../../../src/model/weigh/heldAgainst';
import { predictedLoads } from '../../../src/model/weigh/predicted';
import { thoughtAt } from '../../../src/model/weigh/thought';
import { enterWeighed, toWeigh } from '../../../src/model/weigh/toWeigh';
import { addWeighIn, lastWeighIn } from '../../../src/model/weigh/weighIns';
import { wheelsOf } from '../../../src/model/weigh/wheels';
import { agreementWords, culpritWords } from '../../../src/model/words/weighWords';
import { balanced, demo, NAMES } from '../../demo/demoAircraft';

const say = {
  units: 'metric',
  fromMm: 0,
  length: (mm: number) => `${mm.toFixed(1)} mm`,
  station: (mm: number) => `${mm.toFixed(0)} mm`,
  mass: (g: number) => `${g.toFixed(0)} g`,
} as const;

function held(aircraft: Aircraft, entry: WeighIn) {
  const answer = heldAgainst(aircraft, entry);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer;
}

const standAt = (aircraft: Aircraft, supportMm: number) => {
  const reading = freshStand(aircraft, 100);
  if (reading.by !== 'stand') throw new Error('no stand');
  return { ...reading, supportMm };
};

/** A weigh-in whose scales read exactly what the truth puts on them. */
function weighed(truth: Aircraft, fuelPct: number): WeighIn {
  const entry: WeighIn = {
    id: 'test',
    date: '2026-06-01',
    tool: 'Scales',
    fuelPct,
    switches: [],
    notes: '',
    reading: freshScales(truth),
  };
  if (entry.reading.by !== 'scales') throw new Error('no scales');
  const loads = predictedLoads(entry.reading.scales, thoughtAt(truth, entry).balance, 0);
  if (!loads) throw new Error('no loads');
  const scales = entry.reading.scales.map((scale, at) => ({ ...scale, grossG: loads[at]! }));
  return { ...entry, reading: { ...entry.reading, scales, resolutionG: 1, tapeMm: 0.5 } };
}

describe('every demo aircraft with wheels, put on scales as it is listed', () => {
  test.each(NAMES.filter((name) => wheelsOf(demo(name)).length === 3))(
    '%s agrees, full, half and dry',
    (name) => {
      for (const fuelPct of [100, 50, 0]) {
        const aircraft = demo(name);
        const answer = held(aircraft, weighed(aircraft, fuelPct));
        const { massG, cgMm } = balanced(aircraft, fuelPct / 100);
        expect(answer.weighed.massG?.value).toBeCloseTo(massG, 6);
        expect(answer.weighed.stationMm.value).toBeCloseTo(cgMm![0], 6);
        expect(answer.weighed.buttlineMm?.value).toBeCloseTo(cgMm![1], 6);
        expect(answer.reconciled.agrees).toBe(true);
        expect(answer.ranking()).toBeNull();
      }
    },
  );
});

describe('Sandmartin carries a slip to be found', () => {
  const aircraft = demo('sandmartin');
  const last = lastWeighIn(aircraft)!;

  test('the last weigh-in does not agree, and the silencer comes first', () => {
    const answer = held(aircraft, last);
    expect(answer.reconciled.agrees).toBe(false);
    const [first] = answer.ranking()!.culprits;
    expect(first).toMatchObject({ kind: 'mirrored', id: 'silencer' });
    expect(culpritWords(first!, answer.thought, say)).toMatch(/^Silencer is on the other side/);
  });

  test('its correction changes the silencer and nothing else, and then they agree', () => {
    const answer = held(aircraft, last);
    const correction = correctionOf(aircraft, answer.ranking()!.culprits[0]!, answer.thought)!;
    const mended = applyCorrection(aircraft, correction);
    const silencer = aircraft.parts.find(({ id }) => id === 'silencer')!;
    const [x, y, z] = silencer.positionMm;
    expect(mended).toEqual(
      updatePart(aircraft, 'silencer', {
        positionMm: [x, -y, z],
        yawDeg: 0 - silencer.yawDeg,
        rollDeg: 0 - silencer.rollDeg,
      }),
    );
    expect(held(mended, last).reconciled.agrees).toBe(true);
    expect(agreementWords(held(mended, last), say)).toMatch(/agree within .* at 95 % confidence/);
  });

  test('the one before it agreed', () => {
    expect(held(aircraft, aircraft.weighIns![0]!).reconciled.agrees).toBe(true);
  });
});

test('something that is not in the list is entered as an entry of its own, where it is', () => {
  const aircraft = demo('sandmartin');
  const camera = aircraft.parts.find(({ id }) => id === 'camera')!;
  const listed = { ...aircraft, parts: aircraft.parts.filter(({ id }) => id !== 'camera') };
  const entry = weighed(aircraft, 0);
  const answer = held(listed, entry);
  const found = unaccountedEntry(answer.unaccounted!)!;
  expect(found.kind).toBe('add');
  const mended = applyCorrection(listed, found);
  const added = mended.parts.at(-1)!;
  expect(Math.abs(added.massG - camera.massG)).toBeLessThan(1);
  expect(Math.abs(added.positionMm[0] - camera.positionMm[0])).toBeLessThan(2);
  expect(mended.parts.slice(0, -1)).toEqual(listed.parts);
  expect(held(mended, entry).reconciled.agrees).toBe(true);
});

test('a stand that balances where the list says agrees; grams without the whole’s mass are asked for', () => {
  const aircraft = demo('sandmartin');
  const { cgMm } = balanced(aircraft, 1);
  const entry: WeighIn = { ...weighed(aircraft, 100), reading: standAt(aircraft, cgMm![0]) };
  expect(held(aircraft, entry).reconciled.agrees).toBe(true);
  const answer = heldAgainst(aircraft, {
    ...entry,
    reading: { ...standAt(aircraft, 760), addedG: 20 },
  });
  expect(answer.ok ? '' : answer.sentence).toMatch(/mass of the whole aircraft is needed/);
});

test('an unfinished weigh-in says so and gives no answer', () => {
  const aircraft = demo('sandmartin');
  const entry = { ...weighed(aircraft, 0), reading: freshScales(aircraft) };
  const answer = heldAgainst(aircraft, entry);
  expect(answer.ok ? '' : answer.sentence).toBe('All the scales read nothing.');
});

describe('the log in the file', () => {
  test('is written and read back to the letter', () => {
    const added = addWeighIn(demo('fieldfare'), weighed(demo('fieldfare'), 0)).aircraft;
    const read = readAircraft(JSON.parse(writeAircraft(added)));
    expect(read.ok && writeAircraft(read.aircraft)).toBe(writeAircraft(added));
  });

  test.each([
    ['a day that is none', { date: '12 May' }, /2026-05-12/],
    ['more fuel than there is', { fuelPct: 140 }, /0 to 100 %/],
    ['a reading of no known kind', { reading: { by: 'guess' } }, /scales|stand/],
  ])('%s is refused where it stands', (_, change, words) => {
    const aircraft = demo('sandmartin');
    const json = { ...aircraft, weighIns: [{ ...weighed(aircraft, 0), ...change }] };
    const read = readAircraft(JSON.parse(JSON.stringify(json)));
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : JSON.stringify(read.faults)).toMatch(words);
    expect(read.ok ? '' : JSON.stringify(read.faults)).toMatch(/weighIns/);
  });

  test('two of one id are refused', () => {
    const aircraft = demo('sandmartin');
    const twice = { ...aircraft, weighIns: [weighed(aircraft, 0), weighed(aircraft, 100)] };
    const read = readAircraft(JSON.parse(JSON.stringify(twice)));
    expect(read.ok ? '' : read.faults[0]?.sentence).toMatch(/two weigh-ins have the id "test"/);
  });
});

test('part by part, the largest effect comes first, and a reading is entered with its day and ±', () => {
  const aircraft = demo('sandmartin');
  const list = toWeigh(aircraft, balanced(aircraft, 0));
  expect(list).toHaveLength(aircraft.parts.length + aircraft.tanks.length);
  // By hand: how far the CG goes when the part weighs its ± more.
  const { massG, cgMm } = balanced(aircraft, 0);
  for (const { id, plusMinusG, effectMm } of list) {
    const part = aircraft.parts.find((one) => one.id === id && one.shape.kind === 'box');
    if (!part) continue;
    const now = (massG * cgMm![0] + plusMinusG * part.positionMm[0]) / (massG + plusMinusG);
    expect(Math.abs(now - cgMm![0])).toBeCloseTo(effectMm, 1);
  }
  expect(list.map(({ effectMm }) => effectMm)).toEqual(
    list.map(({ effectMm }) => effectMm).toSorted((a, b) => b - a),
  );
  const entered = enterWeighed(aircraft, 'camera', { massG: 652, plusMinusG: 0.6, weighedOn: '2026-06-01' });
  expect(entered.parts.find(({ id }) => id === 'camera')).toMatchObject({
    massG: 652,
    plusMinusG: 0.6,
    weighedOn: '2026-06-01',
    massFrom: 'weighed',
  });
});
