import { describe, expect, test } from 'vitest';
import { flyingStates, isFlying, standStates } from '../../../src/model/airframe/flyingStates';
import { loadGroups } from '../../../src/model/airframe/loadGroups';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft, SwitchItem } from '../../../src/model/document/types';
import { loadEnvelopeOf } from '../../../src/model/loads/loadStates';
import { readAircraft } from '../../../src/model/reading/read';
import { aircraftOf, boxPart, dunlinJson } from '../aircraft';

const offSwitch = (id: string, things: readonly string[], onStand = false): SwitchItem => ({
  id: `switch ${id}`,
  name: id,
  positions: [
    { id: 'on', name: 'on' },
    { id: 'off', name: 'off', without: [...things], ...(onStand && { onStand }) },
  ],
});

/** So many parts of 100 g in a row 10 mm apart about station 500, each on a switch, on an airframe of 5000 g at 500. */
function rowOf(count: number): Aircraft {
  const parts = Array.from({ length: count }, (_, k) =>
    boxPart(`p${k}`, 100, [500 + 10 * (k - (count - 1) / 2), 0, 0]),
  );
  return {
    ...aircraftOf([], [boxPart('airframe', 5000, [500, 0, 0]), ...parts]),
    switches: parts.map(({ id }) => offSwitch(id, [id])),
  };
}

describe('many switches', () => {
  test('forty that only add up: aftmost with those aboard that lie behind the CG', () => {
    const { aftmost, lightest } = loadEnvelopeOf(rowOf(40), LEVEL)!;
    // The seventeen at 500 + 35, 45, … 195, each 100 g: 195 500 g·mm on 6700 g is 29.2 mm, and the next is at 25 mm.
    expect(aftmost.cgMm[0]).toBeCloseTo(500 + 195_500 / 6700, 9);
    expect(lightest.massG).toBeCloseTo(5000, 9);
    expect(Object.values(aftmost.positions).filter((id) => id === 'off')).toHaveLength(23);
  });

  test('twelve that hang together by their leads are all gone through', () => {
    const own = rowOf(12);
    const leads = own.parts.slice(2).map(({ id }, k) => ({
      id: `lead ${k}`,
      name: id,
      from: own.parts[1 + k]!.id,
      to: id,
      massGPerM: 1000,
      waypointsMm: [],
    }));
    const chained = { ...own, leads };
    expect(loadGroups(chained)).toHaveLength(1);
    const { aftmost } = loadEnvelopeOf(chained, LEVEL)!;
    // The six after parts with the five leads between them, each 10 g in the middle of its 10 mm.
    const moment = 100 * (5 + 15 + 25 + 35 + 45 + 55) + 10 * (10 + 20 + 30 + 40 + 50);
    expect(aftmost.cgMm[0]).toBeCloseTo(500 + moment / (5000 + 600 + 50), 9);
  });

  test('more than that is refused in a sentence, not left to run', () => {
    const own = rowOf(13);
    const leads = own.parts.slice(2).map(({ id }, k) => ({
      id: `lead ${k}`,
      name: id,
      from: 'p0',
      to: id,
      massGPerM: 10,
      waypointsMm: [],
    }));
    expect(() => loadEnvelopeOf({ ...own, leads }, LEVEL)).toThrow(
      /“p0”, .* make 8192 load states together; at most 4096/,
    );
    expect(() => flyingStates(own)).toThrow(/8192 load states/);
    expect(flyingStates(own, new Set(['p3', 'p4']))).toHaveLength(4);
  });

  test('eight tanks on switches: the cost stays bounded and the doubt is told', () => {
    const read = readAircraft(dunlinJson());
    if (!read.ok) throw new Error(read.faults[0]?.sentence);
    const [tank] = read.aircraft.tanks;
    const tanks = Array.from({ length: 8 }, (_, k) => ({
      ...tank!,
      id: `t${k}`,
      name: `T${k}`,
      feeds: 'outlet',
      positionMm: [300 + 40 * k, 0, 0] as const,
    }));
    const own = {
      ...read.aircraft,
      tanks,
      leads: [],
      switches: tanks.map(({ id }) => ({
        id: `s${id}`,
        name: id,
        positions: [
          { id: 'full', name: 'full' },
          { id: 'empty', name: 'empty', empty: [id] },
        ],
      })),
    };
    const { foremost, aftmost } = loadEnvelopeOf(own, LEVEL)!;
    for (const end of [foremost, aftmost]) expect(end.withinMm).not.toBeNull();
    expect(aftmost.cgMm[0]).toBeGreaterThan(foremost.cgMm[0]);
  });
});

describe('which load states fly', () => {
  const own = {
    ...rowOf(3),
    switches: [offSwitch('canopy', ['p0'], true), offSwitch('camera', ['p1']), offSwitch('pack', ['p2'])],
  };

  test('those without a position that is only for the stand', () => {
    expect(flyingStates(own)).toHaveLength(4);
    expect(flyingStates(own).every((positions) => isFlying(own, positions))).toBe(true);
    expect(standStates(own)).toEqual([
      { 'switch canopy': 'off', 'switch camera': 'on', 'switch pack': 'on' },
    ]);
    expect(standStates(own).some((positions) => isFlying(own, positions))).toBe(false);
    // A switch that is not named is in its first position.
    expect(isFlying(own, {})).toBe(true);
  });
});
