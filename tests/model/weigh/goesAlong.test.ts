import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { updatePart, updateTank } from '../../../src/model/document/edit';
import type { Aircraft, WeighIn } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { applyAndNote, applyCorrection, correctionOf } from '../../../src/model/weigh/correction';
import { freshStand } from '../../../src/model/weigh/freshReadings';
import { heldAgainst } from '../../../src/model/weigh/heldAgainst';
import { predictedLoads } from '../../../src/model/weigh/predicted';
import { thoughtAt } from '../../../src/model/weigh/thought';
import { lastWeighIn } from '../../../src/model/weigh/weighIns';
import { createDocumentStore } from '../../../src/store/documentStore';
import { type DemoName, demo } from '../../demo/demoAircraft';

/** Three 1 g scales under an aircraft, 300 mm ahead of its CG and 80 mm behind it, left and right. */
function weighed(truth: Aircraft, fuelPct: number): WeighIn {
  const entry: WeighIn = {
    id: 'test',
    date: '2026-06-01',
    tool: 'Scales',
    fuelPct,
    switches: [],
    notes: '',
    reading: {
      by: 'stand',
      supportMm: null,
      plusMinusMm: 1,
      addedG: 0,
      addedAtMm: 0,
      massG: null,
      massPlusMinusG: 1,
    },
  };
  const { balance } = thoughtAt(truth, entry);
  const [x] = balance.cgMm!;
  const supports: readonly Vec3[] = [
    [x - 300, 0, 0],
    [x + 80, -150, 0],
    [x + 80, 150, 0],
  ];
  const loads = predictedLoads(
    supports.map((supportMm) => ({ supportMm })),
    balance,
    0,
  )!;
  const scales = supports.map((supportMm, at) => ({
    name: `Support ${at + 1}`,
    grossG: Math.round(loads[at]!),
    tareG: 0,
    supportMm,
  }));
  const reading = {
    by: 'scales',
    scales,
    resolutionG: 1,
    tapeMm: 0.5,
    pitchDeg: 0,
    pitchPlusMinusDeg: 0.2,
  } as const;
  return { ...entry, reading };
}

function spoilt(truth: Aircraft, id: string, wrong: (place: Vec3) => Vec3): Aircraft {
  const tank = truth.tanks.find((each) => each.id === id);
  if (tank) return updateTank(truth, id, { positionMm: wrong(tank.positionMm) });
  const part = truth.parts.find((each) => each.id === id)!;
  return updatePart(truth, id, { positionMm: wrong(part.positionMm) });
}

const sign = ([x, y, z]: Vec3): Vec3 => [-x, y, z];
const unit = ([x, y, z]: Vec3): Vec3 => [x / 25.4, y, z];
const ten = ([x, y, z]: Vec3): Vec3 => [x / 10, y, z];

const planted: readonly (readonly [DemoName, string, string, (place: Vec3) => Vec3])[] = [
  ['sandmartin', 'main-tank', 'sign', sign],
  ['sandmartin', 'header-tank', 'sign', sign],
  ['fieldfare', 'header-tank', 'place-times-ten', ten],
  ['fieldfare', 'saddle-right', 'place-unit', unit],
  ['corncrake', 'wing-tank-left', 'place-unit', unit],
  ['whimbrel', 'controller', 'sign', sign],
  ['whimbrel', 'flight-pack-left', 'sign', sign],
  ['whimbrel', 'controller', 'place-unit', unit],
];

describe('a slip of place of a full tank, or of a part with leads, comes first and is mended', () => {
  test.each(planted)('%s, %s: %s', (name, id, kind, wrong) => {
    const truth = demo(name);
    const listed = spoilt(truth, id, wrong);
    const entry = weighed(truth, 100);
    const held = heldAgainst(listed, entry);
    if (!held.ok) throw new Error(held.sentence);
    const { alike } = held.ranking()!;
    const found = alike.find((culprit) => culprit.kind === kind && culprit.id === id);
    expect(alike.map((culprit) => `${culprit.kind} ${culprit.id}`)).toContain(`${kind} ${id}`);
    const mended = applyCorrection(listed, correctionOf(listed, found!, held.thought)!);
    const again = heldAgainst(mended, entry);
    expect(again.ok && again.reconciled.agrees).toBe(true);
  });
});

test('a correction of one coordinate leaves the others to the last digit', () => {
  const truth = spoilt(demo('corncrake'), 'receiver-pack', ([x]) => [x, 12.3456, -20.0456]);
  const listed = spoilt(truth, 'receiver-pack', unit);
  const held = heldAgainst(listed, weighed(truth, 0));
  if (!held.ok) throw new Error(held.sentence);
  const [first] = held.ranking()!.culprits;
  expect([first?.kind, first?.id, first?.axis]).toEqual(['place-unit', 'receiver-pack', 0]);
  const mended = applyCorrection(listed, correctionOf(listed, first!, held.thought)!);
  expect(mended.parts.find(({ id }) => id === 'receiver-pack')?.positionMm.slice(1)).toEqual([
    12.3456, -20.0456,
  ]);
});

test('every button leaves what it was said to leave, and undo gives the file back to the byte', () => {
  const aircraft = demo('sandmartin');
  const entry = lastWeighIn(aircraft)!;
  const held = heldAgainst(aircraft, entry);
  if (!held.ok) throw new Error(held.sentence);
  const { culprits } = held.ranking()!;
  const written = writeAircraft(aircraft);
  const store = createDocumentStore(aircraft);
  for (const culprit of culprits) {
    const correction = correctionOf(aircraft, culprit, held.thought)!;
    const noted = { weighInId: entry.id, date: '2026-05-13', what: 'Mended' };
    store.commit('Mend', applyAndNote(store.current(), correction, noted));
    const after = heldAgainst(store.current(), entry);
    if (!after.ok) throw new Error(after.sentence);
    expect(Math.abs(after.reconciled.chance - culprit.chanceLeft)).toBeLessThan(0.03);
    expect(writeAircraft(store.current())).not.toBe(written);
    store.undo();
    expect(writeAircraft(store.current())).toBe(written);
  }
  expect(culprits.length).toBeGreaterThan(3);
});

test('a mass weighed in one load state is not offered for another', () => {
  const aircraft = demo('sandmartin');
  const part = aircraft.switches?.find(({ positions }) => positions.length > 1);
  if (!part) throw new Error('no switch');
  const massFor = (at: number) => {
    const reading = freshStand(aircraft, 0, [{ switchId: part.id, positionId: part.positions[at]!.id }]);
    return reading.by === 'stand' ? reading.massG : undefined;
  };
  expect(massFor(0)).toBe(741 + 3053 + 3053);
  expect(massFor(1)).toBeNull();
});
