import { describe, expect, test } from 'vitest';
import { fuelDensity } from '../../../src/model/airframe/tanks';
import { removeItem } from '../../../src/model/document/edit';
import { addSwitch, removeSwitch } from '../../../src/model/document/switchEdits';
import { readAircraft } from '../../../src/model/reading/read';
import { dunlinJson } from '../aircraft';

/** The sentences of the faults after a change to the kept file. */
// biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
function faults(change: (json: any) => void): string[] {
  const json = dunlinJson();
  change(json);
  const read = readAircraft(json);
  return read.ok ? [] : read.faults.map(({ sentence }) => sentence);
}

const switchOf = (id: string, ...without: string[]) => ({
  id,
  name: id,
  positions: [
    { id: 'on', name: 'on' },
    { id: 'off', name: 'off', without },
  ],
});

describe('switches', () => {
  const part = dunlinJson().parts[0].id as string;

  test('a sound one reads', () => {
    expect(
      faults((json) => {
        json.switches = [switchOf('pack', part)];
      }),
    ).toEqual([]);
  });

  test.each([
    ['a thing that is not there', [switchOf('a', 'nobody')], /there is no "nobody" that can be left out/],
    ['one thing in two switches', [switchOf('a', part), switchOf('b', part)], /is switched by "a" already/],
    ['one id twice', [switchOf('a', part), switchOf('a')], /the id "a" already stands for "a"/],
    ['the legs’ own id', [switchOf('undercarriage', part)], /already stands for the retracting legs/],
    [
      'a single position',
      [{ id: 'a', name: 'a', positions: [{ id: 'on', name: 'on' }] }],
      /at least 2 positions/,
    ],
  ])('%s is refused', (_, switches, sentence) => {
    const found = faults((json) => {
      json.switches = switches;
    });
    expect(found.join('\n')).toMatch(sentence);
  });

  test('emptying something that is no tank is refused', () => {
    const found = faults((json) => {
      json.switches = [
        {
          id: 'a',
          name: 'a',
          positions: [
            { id: 'x', name: 'x' },
            { id: 'y', name: 'y', empty: [part] },
          ],
        },
      ];
    });
    expect(found.join('\n')).toMatch(/that can be emptied/);
  });

  test('an edit adds one that reads, and it goes with the thing it was about', () => {
    const read = readAircraft(dunlinJson());
    if (!read.ok) throw new Error(read.faults[0]?.sentence);
    const added = addSwitch(read.aircraft, 'Undercarriage', 'aboard', [part]);
    expect(readAircraft(added).ok).toBe(true);
    expect(added.switches).toHaveLength(1);
    expect(removeItem(added, part).switches).toEqual([]);
    expect(removeSwitch(added, added.switches![0]!.id).switches).toEqual([]);
  });
});

describe('retracting legs', () => {
  test('a hinge line without a direction is refused', () => {
    const found = faults((json) => {
      const leg = json.structure.find((element: { kind: string }) => element.kind === 'leg');
      leg.retract = { axis: [0, 0, 0], angleDeg: 90 };
    });
    expect(found.join('\n')).toMatch(/axis of retract has no direction/);
  });
});

describe('fuel', () => {
  test('kerosene of 0.800 g/ml at 15 °C weighs less when warm: ASTM D1250, table 54B', () => {
    const fuel = { ...dunlinJson().fuel, kind: 'kerosene', densityGPerMl: 0.8 };
    // α = 594.5418/800² per K; at 25 °C, exp(−α·10·(1 + 0.8·α·10)).
    const alpha = 594.5418 / 800 ** 2;
    const expected = 0.8 * Math.exp(-alpha * 10 * (1 + 0.8 * alpha * 10));
    expect(fuelDensity({ ...fuel, temperatureC: 25 })).toBeCloseTo(expected, 12);
    expect(fuelDensity(fuel)).toBe(0.8);
  });

  test('a temperature for petrol, or for a density that is no kerosene, is refused', () => {
    expect(
      faults((json) => {
        json.fuel.temperatureC = 20;
      }).join(),
    ).toMatch(/only kerosene/);
    const heavy = faults((json) => {
      Object.assign(json.fuel, { kind: 'kerosene', densityGPerMl: 0.9, temperatureC: 20 });
    });
    expect(heavy.join()).toMatch(/0\.7705 to 0\.8385/);
  });

  test('a table whose throttles do not rise between idle and full is refused', () => {
    const table = (...throttles: number[]) =>
      faults((json) => {
        json.fuel.flow.table = throttles.map((throttlePct) => ({ throttlePct, mlPerMin: 10 }));
      });
    expect(table(30, 60)).toEqual([]);
    expect(table(60, 30).join()).toMatch(/more than 60 and less than 100 %, got 30 %/);
    expect(table(0).join()).toMatch(/more than 0/);
    expect(table(100).join()).toMatch(/less than 100/);
  });
});

describe('limits that are stated for one load state', () => {
  const part = dunlinJson().parts[0].id as string;
  const stated = (switches: readonly { readonly switchId: string; readonly positionId: string }[]) =>
    faults((json) => {
      json.switches = [switchOf('pack', part)];
      json.targetBand = { by: 'station', forwardMm: 500, aftMm: 560, statedFor: { fuelPct: 0, switches } };
    });

  test('read where every switch and position is there', () => {
    expect(stated([{ switchId: 'pack', positionId: 'off' }])).toEqual([]);
    expect(stated([])).toEqual([]);
  });

  test.each([
    [[{ switchId: 'hook', positionId: 'off' }], /stated for a switch "hook" that is not there/],
    [[{ switchId: 'pack', positionId: 'half' }], /"pack" has no position "half"/],
    [
      [
        { switchId: 'pack', positionId: 'on' },
        { switchId: 'pack', positionId: 'off' },
      ],
      /stated for "pack" in two positions at once/,
    ],
    [[{ switchId: 'undercarriage', positionId: 'up' }], /"undercarriage" that is not there/],
  ])('%j is refused', (switches, sentence) => {
    expect(stated(switches).join('\n')).toMatch(sentence);
  });

  test('forget a switch that is taken away, and one that goes with the last thing it was about', () => {
    const json = dunlinJson();
    json.switches = [switchOf('pack', part)];
    json.targetBand = {
      by: 'station',
      forwardMm: 500,
      aftMm: 560,
      statedFor: { fuelPct: 0, switches: [{ switchId: 'pack', positionId: 'off' }] },
    };
    const read = readAircraft(json);
    if (!read.ok) throw new Error(read.faults[0]?.sentence);
    for (const after of [removeSwitch(read.aircraft, 'pack'), removeItem(read.aircraft, part)]) {
      expect(after.targetBand?.statedFor).toEqual({ fuelPct: 0, switches: [] });
      expect(readAircraft(after).ok).toBe(true);
    }
  });
});
