import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { itemById, placeItem } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { bandToKeep } from '../../../src/model/judgement/bandToKeep';
import { judge } from '../../../src/model/judgement/judge';
import { applyArrangement } from '../../../src/model/place/applyArrangement';
import { itemZone } from '../../../src/model/place/itemZone';
import { searchPlaces } from '../../../src/model/place/searchPlaces';
import { changeStability, type StabilityEstimate } from '../../../src/model/stability/stability';
import { demo } from '../../demo/demoAircraft';
import { now, solve } from '../../engine/place/solver';
import { estimateAt } from '../judgement/estimate';
import { redshank } from './bench';

/** What the verdict has to say of the CG along the aircraft; that the stated band reaches too far is no place's fault. */
const ALONG = [
  'tail-heavy',
  'nose-heavy',
  'behind-neutral-point',
  'margin-tiny',
  'margin-under',
  'margin-over',
];
const blamed = (aircraft: Aircraft, estimate: StabilityEstimate | null) =>
  judge(aircraft, { down: LEVEL, estimate, loads: { status: 'unfinished' }, fit: [], certainty: null })
    .findings.map(({ kind }) => kind)
    .filter((kind) => ALONG.includes(kind));
const bandFor = (aircraft: Aircraft, estimate: StabilityEstimate | null) =>
  bandToKeep(balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, estimate }), aircraft)!;

/** The CG of the redshank is near 560; a limit of 570, and a neutral point so near that the margin counts first. */
const near = redshank(570);
const wished = (aircraft: Aircraft) => changeStability(aircraft, { marginRange: { minPct: 4, maxPct: 9 } });
const sandmartin = demo('sandmartin');
const sandmartinAft = sandmartin.targetBand?.by === 'station' ? sandmartin.targetBand.aftMm : Number.NaN;

const CASES: readonly (readonly [string, Aircraft, StabilityEstimate | null, string])[] = [
  ['stated limits alone', near, null, 'camera'],
  ['limits and the usual margin', near, estimateAt(580), 'camera'],
  ['limits and a margin wanted', wished(near), estimateAt(575), 'camera'],
  ['a margin wanted, no limits', wished({ ...near, targetBand: null }), estimateAt(575), 'camera'],
  ['fuel aboard and a load that drops', sandmartin, null, 'flight-pack'],
  ['the same with the usual margin', sandmartin, estimateAt(sandmartinAft + 10), 'flight-pack'],
];

describe.each(CASES)('%s', (_, aircraft, estimate, wantedId) => {
  const id = itemById(aircraft, wantedId) ? wantedId : aircraft.parts.find(({ locked }) => !locked)!.id;
  const band = bandFor(aircraft, estimate);

  test('at either end of the zone the verdict says nothing of the CG, and beyond the aft end it does', () => {
    const zone = itemZone(aircraft, id, LEVEL, band)!;
    const { fromMm, toMm } = zone.station.allowed!;
    const [, y, z] = itemById(aircraft, id)!.positionMm;
    const at = (stationMm: number) => placeItem(aircraft, id, [stationMm, y, z]);
    const inward = Math.min(0.01, (toMm - fromMm) / 4);
    expect(blamed(at(toMm - inward), estimate)).toEqual([]);
    expect(blamed(at(fromMm + inward), estimate)).toEqual([]);
    // Farther aft by what moves the CG of every state by more than the tenth that may be held back.
    const item = itemById(aircraft, id)!;
    const { massG } = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });
    const ownG = 'massG' in item ? item.massG : item.emptyMassG;
    expect(blamed(at(toMm + (0.3 * massG) / ownG), estimate)).not.toEqual([]);
  });
});

test.each(CASES.slice(1, 3))('what Arrange finds is good in the verdict too: %s', (_, aircraft, estimate) => {
  const outcome = searchPlaces(
    {
      variants: [{ name: '', aircraft }],
      settings: { down: LEVEL, band: bandFor(aircraft, estimate) },
      probability: null,
    },
    { solve, now, timeMs: 60_000 },
  );
  if ('fault' in outcome) throw new Error(outcome.fault);
  const after = applyArrangement(aircraft, outcome.problem, outcome.answer.best!);
  expect(blamed(after, estimate)).toEqual([]);
});
