import { describe, expect, test } from 'vitest';
import { downFromAttitude } from '../../../src/engine/liquid/attitude';
import { inLoadState, type Positions, switchesOf } from '../../../src/model/airframe/loadSwitches';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { hasOtherLoadStates } from '../../../src/model/loads/loadSearch';
import { loadEnvelopeOf } from '../../../src/model/loads/loadStates';
import { loadStateName } from '../../../src/model/loads/stateName';
import { readAircraft } from '../../../src/model/reading/read';
import { aircraftOf, boxBlock, boxPart, dunlinJson } from '../aircraft';

/** The kept aircraft with a retracting leg, a camera that comes off and a tank that can be empty. */
function switched(change: (aircraft: Aircraft) => Aircraft = (aircraft) => aircraft): Aircraft {
  const read = readAircraft(dunlinJson());
  if (!read.ok) throw new Error(read.faults[0]?.sentence);
  return change({
    ...read.aircraft,
    structure: read.aircraft.structure.map((element) =>
      element.kind === 'leg' ? { ...element, retract: { axis: [0, -1, 0], angleDeg: 80 } } : element,
    ),
    parts: [...read.aircraft.parts, boxPart('camera', 400, [100, 30, 0])],
    switches: [
      {
        id: 'camera',
        name: 'Camera',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['camera'] },
        ],
      },
      {
        id: 'main',
        name: 'Main tank',
        positions: [
          { id: 'full', name: 'full' },
          { id: 'empty', name: 'empty', empty: [read.aircraft.tanks[0]!.id] },
        ],
      },
    ],
  });
}

const combinations = (aircraft: Aircraft): Positions[] =>
  switchesOf(aircraft).reduce<Positions[]>(
    (all, { id, positions }) => all.flatMap((one) => positions.map((at) => ({ ...one, [id]: at.id }))),
    [{}],
  );

describe('the extremes over all load states', () => {
  test.each([
    ['level', LEVEL],
    ['in a climb', downFromAttitude({ pitchDeg: 30, rollDeg: 0, forwardG: 0, sideG: 0 })],
  ] as const)('%s: no load state of a fine grid lies beyond them', (_, down) => {
    const aircraft = switched();
    const envelope = loadEnvelopeOf(aircraft, down)!;
    let [least, most, lightest, heaviest] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const positions of combinations(aircraft)) {
      for (let step = 0; step <= 200; step++) {
        const { cgMm, massG } = balanceAt(aircraft, { fuelFraction: step / 200, down, positions });
        least = Math.min(least, cgMm![0]);
        most = Math.max(most, cgMm![0]);
        lightest = Math.min(lightest, massG);
        heaviest = Math.max(heaviest, massG);
      }
    }
    expect(combinations(aircraft)).toHaveLength(8);
    expect(envelope.foremost.cgMm[0]).toBeLessThanOrEqual(least + 1e-9);
    expect(envelope.aftmost.cgMm[0]).toBeGreaterThanOrEqual(most - 1e-9);
    // Nor do they promise what no load state has: a grid so fine comes within its own step of them.
    expect(envelope.foremost.cgMm[0]).toBeGreaterThan(least - 0.2);
    expect(envelope.aftmost.cgMm[0]).toBeLessThan(most + 0.2);
    expect(envelope.lightest.massG).toBeCloseTo(lightest, 6);
    expect(envelope.heaviest.massG).toBeCloseTo(heaviest, 6);
  });

  test('each extreme is the balance of the load state that it names', () => {
    const aircraft = switched();
    const { foremost, aftmost, leftmost, rightmost } = loadEnvelopeOf(aircraft, LEVEL)!;
    for (const state of [foremost, aftmost, leftmost, rightmost]) {
      const { cgMm } = balanceAt(aircraft, { ...state, down: LEVEL });
      state.cgMm.forEach((mm, axis) => {
        expect(cgMm![axis]).toBeCloseTo(mm, 8);
      });
    }
  });

  test('a position that is only for the balancing stand has no say', () => {
    const onStand = (aircraft: Aircraft): Aircraft => ({
      ...aircraft,
      switches: aircraft.switches!.map((one) => ({
        ...one,
        positions: one.positions.map((at) => (at.id === 'off' ? { ...at, onStand: true } : at)),
      })),
    });
    expect(loadEnvelopeOf(switched(), LEVEL)!.aftmost.positions.camera).toBe('off');
    expect(loadEnvelopeOf(switched(onStand), LEVEL)!.aftmost.positions.camera).toBe('on');
  });
});

describe('a weighed bare airframe in another load state', () => {
  const weighed = (use: 'correct' | 'replace') =>
    switched((aircraft) => ({
      ...aircraft,
      structure: [...aircraft.structure, boxBlock('canopy', [200, 0, 60], { by: 'weighed', massG: 80 })],
      bareAirframe: { massG: 2600, stationMm: 480, buttlineMm: 0, use },
      switches: [
        {
          id: 'canopy',
          name: 'Canopy',
          positions: [
            { id: 'on', name: 'on' },
            { id: 'off', name: 'off', without: ['canopy'] },
          ],
        },
      ],
    }));

  test.each(['correct', 'replace'] as const)('%s: without its canopy it is lighter by the canopy', (use) => {
    const aircraft = weighed(use);
    const at = (canopy: string) =>
      balanceAt(aircraft, { fuelFraction: 0, down: LEVEL, positions: { canopy } });
    const [on, off] = [at('on'), at('off')];
    expect(on.massG - off.massG).toBeCloseTo(80, 9);
    const moment = ({ massG, cgMm }: typeof on) => massG * cgMm![0];
    expect(moment(on) - moment(off)).toBeCloseTo(80 * 200, 6);
  });
});

describe('in words', () => {
  const aircraft = switched();
  const state = (fuelFraction: number, positions: Positions) => ({
    cgMm: [500, 0, 0] as const,
    massG: 5000,
    fuelFraction,
    positions,
  });
  test('a load state names the undercarriage, what differs from the start, and the fuel', () => {
    expect(loadStateName(aircraft, state(0.08, { undercarriage: 'up' }))).toBe(
      'with the undercarriage up and 8 % fuel',
    );
    expect(loadStateName(aircraft, state(0, { camera: 'off', main: 'empty' }))).toBe(
      'with the undercarriage down, camera off, main tank empty and dry tanks',
    );
  });
  test('water that is dumped is called water, and a drop of it is not none', () => {
    const dumping = { ...aircraft, fuel: { ...aircraft.fuel!, use: 'dump' as const } };
    const name = (fraction: number) => loadStateName(dumping, state(fraction, {}));
    expect(name(1)).toContain('all its water');
    expect(name(0.006)).toContain('1 % water');
    expect(name(0)).toContain('no water');
  });
});

test('with the switches as they start the document is the aircraft itself', () => {
  const aircraft = switched();
  expect(inLoadState(aircraft, {})).toBe(aircraft);
  const up = inLoadState(aircraft, { undercarriage: 'up' });
  expect(up.parts).toBe(aircraft.parts);
  expect(up.tanks).toBe(aircraft.tanks);
  expect(inLoadState({ ...aircraft, name: 'Other' }, { undercarriage: 'up' }).structure).toBe(up.structure);
});

test('there are other load states to search where a switch flies, and none without', () => {
  expect(hasOtherLoadStates(switched())).toBe(true);
  expect(hasOtherLoadStates(aircraftOf([], [boxPart('pack', 100, [0, 0, 0])]))).toBe(false);
});
