import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import {
  addPart,
  breakPair,
  itemById,
  mirrorPart,
  placeItem,
  removeItem,
  updatePart,
} from '../../../src/model/document/edit';
import { removeBay } from '../../../src/model/document/fitEdits';
import { feed, setPower } from '../../../src/model/document/powerEdits';
import { settled } from '../../../src/model/document/settle';
import { addSwitch } from '../../../src/model/document/switchEdits';
import { makePair, pairableWith } from '../../../src/model/document/twins';
import type { Aircraft } from '../../../src/model/document/types';
import {
  addVariant,
  asShared,
  putBack,
  removeVariant,
  renameVariant,
} from '../../../src/model/document/variantEdits';
import {
  chooseVariant,
  chosenVariant,
  type EditScope,
  eachVariant,
  sharedAircraft,
  variantName,
  variantsOf,
} from '../../../src/model/document/variants';
import { writeAircraft } from '../../../src/model/document/write';
import { parseAircraft } from '../../../src/model/reading/read';
import { chanceOf } from '../../fuzz/chance';
import { sources } from '../../fuzz/mutants';
import { seed } from '../../seed';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

/** Bob weight 100 g at station 0, pack 200 g at 300, camera 100 g at 800; the block weighs nothing. */
const plain = aircraftOf(
  [boxBlock('frame', [500, 0, 0], { by: 'weighed', massG: 0 })],
  [boxPart('bob', 100, [0, 0, 0]), boxPart('pack', 200, [300, 0, 0]), boxPart('camera', 100, [800, 0, 0])],
);

const edited = (aircraft: Aircraft, scope: EditScope, edit: (aircraft: Aircraft) => Aircraft) =>
  settled(aircraft, edit(aircraft), scope);
const stationOf = (aircraft: Aircraft) => balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }).cgMm?.[0];
const faultsOf = (aircraft: Aircraft) => {
  const read = parseAircraft(writeAircraft(aircraft));
  return read.ok ? [] : read.faults.map(({ sentence }) => sentence);
};
const named = (aircraft: Aircraft, name: string) =>
  chooseVariant(aircraft, variantsOf(aircraft).find((each) => each.name === name)?.id ?? '');

/** The pack aft and heavier, without the camera. */
const withAft = edited(
  edited(addVariant(plain, 'Aft pack'), 'this', (aircraft) =>
    updatePart(aircraft, 'pack', { positionMm: [600, 0, 0], massG: 300 }),
  ),
  'this',
  (aircraft) => removeItem(aircraft, 'camera'),
);

const pack3 = { pack: { chemistry: 'lipo', cells: 3, capacityMah: 2200 } } as const;
const use3 = { kind: 'other', minV: 5, maxV: 15, meanA: 1, peakA: 2 } as const;

describe('a variant is an aircraft with differences', () => {
  test('its CG is that of what it has aboard', () => {
    // (100·0 + 300·600) / 400 by hand; and (100·0 + 200·300 + 100·800) / 400 for the aircraft as it was.
    expect(stationOf(withAft)).toBeCloseTo(450, 9);
    expect(stationOf(named(withAft, 'As built'))).toBeCloseTo(350, 9);
    expect(eachVariant(withAft).map(({ aircraft }) => stationOf(aircraft))).toEqual([
      expect.closeTo(350, 9),
      expect.closeTo(450, 9),
    ]);
  });

  test('its name goes on paper', () => {
    expect(variantName(plain)).toBe(plain.name);
    expect(variantName(withAft)).toBe(`${plain.name}, Aft pack`);
    expect(variantName(renameVariant(withAft, 'aft-pack', 'Far'))).toBe(`${plain.name}, Far`);
  });

  test('the file says only what differs', () => {
    const back = named(withAft, 'As built');
    expect(variantsOf(back)).toEqual([
      { id: 'as-built', name: 'As built' },
      {
        id: 'aft-pack',
        name: 'Aft pack',
        without: ['camera'],
        changes: [{ of: 'pack', positionMm: [600, 0, 0], massG: 300 }],
      },
    ]);
    expect(back.variants?.shared).toEqual([]);
    const { variants: _, ...asItWas } = back;
    expect(writeAircraft(asItWas)).toBe(writeAircraft(plain));
  });

  test('an edit for all reaches every variant, but for what one has otherwise already', () => {
    const moved = edited(withAft, 'all', (aircraft) => placeItem(aircraft, 'bob', [50, 0, 0]));
    const further = edited(moved, 'all', (aircraft) => placeItem(aircraft, 'pack', [700, 0, 0]));
    const built = named(further, 'As built');
    expect(itemById(built, 'bob')?.positionMm).toEqual([50, 0, 0]);
    expect(itemById(built, 'pack')?.positionMm).toEqual([300, 0, 0]);
    expect(itemById(named(built, 'Aft pack'), 'pack')?.positionMm).toEqual([700, 0, 0]);
  });

  test('an edit for this one leaves the others as they are, but for what they cannot differ in', () => {
    const next = edited(withAft, 'this', (aircraft) => ({
      ...updatePart(aircraft, 'bob', { massG: 150, name: 'Lead' }),
      notes: 'Heavier',
    }));
    const built = named(next, 'As built');
    expect(itemById(built, 'bob')).toMatchObject({ massG: 100, name: 'Lead' });
    expect(built.notes).toBe('Heavier');
  });

  test('what is added for this one is in no other; what is added for all is in each', () => {
    for (const [scope, count] of [
      ['this', 3],
      ['all', 4],
    ] as const) {
      const next = edited(
        withAft,
        scope,
        (aircraft) => addPart(aircraft, boxPart('x', 10, [0, 0, 0])).aircraft,
      );
      expect(named(next, 'As built').parts).toHaveLength(count);
      expect(named(named(next, 'As built'), 'Aft pack').parts).toHaveLength(3);
      expect(faultsOf(next)).toEqual([]);
    }
  });

  test('what is taken out for all takes its differences along; for this one it can be put back', () => {
    const gone = edited(withAft, 'all', (aircraft) => removeItem(aircraft, 'pack'));
    expect(named(gone, 'As built').parts.map(({ id }) => id)).toEqual(['bob', 'camera']);
    expect(writeAircraft(named(gone, 'As built'))).not.toContain('"pack"');
    const built = edited(named(withAft, 'As built'), 'all', (aircraft) => removeItem(aircraft, 'pack'));
    expect(writeAircraft(built)).not.toContain('"pack"');
    expect(faultsOf(built)).toEqual([]);
    const back = putBack(withAft, 'camera');
    expect(back.parts.map(({ id }) => id)).toEqual(['bob', 'pack', 'camera']);
    expect(itemById(back, 'pack')?.positionMm).toEqual([600, 0, 0]);
    expect(itemById(asShared(withAft, 'pack'), 'pack')).toEqual(itemById(plain, 'pack'));
  });

  test('leads and switches of what is left out are there for those that have it', () => {
    const wired: Aircraft = {
      ...addSwitch(plain, 'Camera', 'aboard', ['camera']),
      leads: [{ id: 'lead', name: 'Lead', from: 'pack', to: 'camera', massGPerM: 10, waypointsMm: [] }],
      keepApart: [{ between: 'camera', and: 'pack', atLeastMm: 10, why: 'Heat' }],
    };
    const without = edited(addVariant(wired, 'Bare'), 'this', (aircraft) => removeItem(aircraft, 'camera'));
    expect([without.leads, without.switches, without.keepApart]).toEqual([[], [], []]);
    expect(faultsOf(without)).toEqual([]);
    const { variants: _, ...built } = named(without, 'As built');
    expect(writeAircraft(built)).toBe(writeAircraft(wired));
    // A lead that is gone for all does not come back with the camera.
    const cut = edited(named(without, 'As built'), 'all', (aircraft) => removeItem(aircraft, 'pack'));
    expect(named(named(cut, 'Bare'), 'As built').leads).toEqual([]);
  });

  /** The pack feeds bob. */
  const fed = feed(setPower(plain, 'pack', pack3), 'bob', { from: 'pack' });
  const withBare = addVariant(fed, 'Bare');
  const feedersOf = (aircraft: Aircraft) => aircraft.parts.find(({ id }) => id === 'bob')?.power?.fedBy;

  test('what is put back feeds again what it fed', () => {
    const without = edited(withBare, 'this', (aircraft) => removeItem(aircraft, 'pack'));
    expect(feedersOf(without)).toEqual([]);
    expect(feedersOf(putBack(without, 'pack'))).toEqual([{ from: 'pack' }]);
    // Nothing of bob is otherwise: only the pack is left out.
    expect(variantsOf(named(without, 'As built'))[1]).toEqual({
      id: 'bare',
      name: 'Bare',
      without: ['pack'],
    });
  });

  test('what is out of the wiring for this one is wired in the others, and the file says so', () => {
    const unwired = edited(withBare, 'this', (aircraft) => setPower(aircraft, 'bob', null));
    expect(faultsOf(unwired)).toEqual([]);
    const built = named(unwired, 'As built');
    expect(feedersOf(built)).toEqual([{ from: 'pack' }]);
    expect(faultsOf(built)).toEqual([]);
    expect(writeAircraft(named(built, 'Bare'))).toBe(writeAircraft(unwired));
    expect(itemById(named(built, 'Bare'), 'bob')).not.toHaveProperty('power');
  });

  test('a feeder may go for all though another variant has what it fed wired otherwise', () => {
    const other = edited(withBare, 'this', (aircraft) =>
      setPower(aircraft, 'bob', { use: use3, fedBy: [{ from: 'pack' }] }),
    );
    const gone = edited(named(other, 'As built'), 'all', (aircraft) => removeItem(aircraft, 'pack'));
    expect(faultsOf(gone)).toEqual([]);
    expect(itemById(named(gone, 'Bare'), 'bob')).toMatchObject({ power: { use: use3, fedBy: [] } });
  });

  test('what has become as all share it is no difference any more', () => {
    const built = named(withAft, 'As built');
    const alike = edited(built, 'all', (aircraft) =>
      updatePart(aircraft, 'pack', { positionMm: [600, 0, 0], massG: 300 }),
    );
    expect(variantsOf(alike)[1]).toEqual({ id: 'aft-pack', name: 'Aft pack', without: ['camera'] });
    expect(writeAircraft(named(named(alike, 'Aft pack'), 'As built'))).toBe(writeAircraft(alike));
  });

  test('a bay that is taken away is gone from what a variant leaves out', () => {
    const room = {
      id: 'room',
      name: 'Room',
      lengthMm: 50,
      widthMm: 50,
      heightMm: 50,
      positionMm: [0, 0, 0],
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
    } as const;
    const inRoom = {
      ...updatePart(plain, 'camera', { bayId: 'room' }),
      bays: [room],
    };
    const without = edited(addVariant(inRoom, 'Bare'), 'this', (aircraft) => removeItem(aircraft, 'camera'));
    expect(faultsOf(edited(without, 'this', (aircraft) => removeBay(aircraft, 'room')))).toEqual([]);
  });

  test('with one left there are none; what none has aboard is gone', () => {
    expect(writeAircraft(removeVariant(withAft, 'aft-pack'))).toBe(writeAircraft(plain));
    const three = edited(
      addVariant(withAft, 'Third'),
      'this',
      (aircraft) => addPart(aircraft, boxPart('sling', 5, [0, 0, 0])).aircraft,
    );
    const two = removeVariant(three, 'third');
    expect(writeAircraft(two)).not.toContain('sling');
    expect(faultsOf(two)).toEqual([]);
  });

  test('a new thing takes no id of what is left out', () => {
    const next = addPart(withAft, boxPart('camera', 10, [0, 0, 0]));
    expect(next.id).toBe('camera-2');
  });
});

describe('by chance', () => {
  const chance = chanceOf(seed);
  const demos = sources.flatMap((text) => {
    const read = parseAircraft(text);
    return read.ok ? [read.aircraft] : [];
  });
  const ids = (aircraft: Aircraft) =>
    [...aircraft.parts, ...aircraft.tanks, ...aircraft.structure].map(({ id }) => id);

  /** A pair made, broken or come upon. */
  function twinned(aircraft: Aircraft, id: string, which: number): Aircraft {
    if (which < 1) return mirrorPart(aircraft, id)?.aircraft ?? aircraft;
    if (which < 2) return breakPair(aircraft, id);
    const other = pairableWith(aircraft, id);
    return other ? makePair(aircraft, id, other.id) : aircraft;
  }

  /** A part out of the wiring, or fed by another. */
  function rewired(aircraft: Aircraft, id: string): Aircraft {
    if (!aircraft.parts.some((part) => part.id === id)) return aircraft;
    if (chance.next() < 0.4) return setPower(aircraft, id, null);
    return feed(aircraft, id, { from: chance.pick(aircraft.parts).id });
  }

  function randomEdit(aircraft: Aircraft): Aircraft {
    const { below, pick, next } = chance;
    const id = pick(ids(aircraft));
    const twin = twinned(aircraft, id, next() * 3);
    switch (below(8)) {
      case 7:
        return rewired(aircraft, id);
      case 5:
        return twin;
      case 6:
        return 'massG' in (itemById(aircraft, id) ?? {})
          ? updatePart(aircraft, id, { massG: below(300), massFrom: 'weighed', weighedOn: '2026-01-02' })
          : aircraft;
      case 0:
        return removeItem(aircraft, id);
      case 1:
        return addPart(aircraft, boxPart('extra', 1 + below(50), [below(500), 0, 0])).aircraft;
      case 2:
        return updatePart(aircraft, id, { massG: below(300), name: `Thing ${below(9)}` });
      case 3:
        return { ...aircraft, notes: `Note ${below(1000)}` };
      default:
        return placeItem(aircraft, id, [below(1000), next() * 10, 0]);
    }
  }

  test('choosing variants all round gives the same file to the byte, and every file reads', () => {
    for (let run = 0; run < 9; run += 1) {
      let aircraft = chance.pick(demos);
      for (let step = 0; step < 14; step += 1) {
        const scope: EditScope = chance.next() < 0.6 ? 'this' : 'all';
        if (chance.next() < 0.2) aircraft = addVariant(aircraft, `V${step}`);
        else if (aircraft.variants && chance.next() < 0.3)
          aircraft = chooseVariant(aircraft, chance.pick(variantsOf(aircraft)).id);
        else {
          const next = edited(aircraft, scope, randomEdit);
          // What would be no sound file is not done: `settleEdit`.
          if (faultsOf(next).length === 0) aircraft = next;
        }
        expect(faultsOf(aircraft)).toEqual([]);
      }
      const before = writeAircraft(aircraft);
      const start = chosenVariant(aircraft)?.id ?? '';
      for (const { id } of variantsOf(aircraft)) aircraft = chooseVariant(aircraft, id);
      expect(writeAircraft(chooseVariant(aircraft, start))).toBe(before);
    }
  });

  test('an edit for this one changes no other in mass or place; one for all, each that does not differ there', () => {
    for (let run = 0; run < 40; run += 1) {
      let aircraft = edited(addVariant(chance.pick(demos), 'B'), 'this', randomEdit);
      aircraft = addVariant(aircraft, 'C');
      const others = (of: Aircraft) =>
        eachVariant(of)
          .filter(({ variant }) => variant.id !== 'c')
          .map(({ aircraft: { parts, tanks } }) =>
            [...parts, ...tanks].map((item) => [item.id, item.positionMm, 'massG' in item ? item.massG : 0]),
          );
      const before = others(aircraft);
      expect(others(edited(aircraft, 'this', randomEdit))).toEqual(before);
      const id = chance.pick(sharedAircraft(aircraft).parts).id;
      const moved = edited(aircraft, 'all', (each) => placeItem(each, id, [7, 7, 7]));
      const places = eachVariant(moved).flatMap(({ aircraft: each }) => itemById(each, id)?.positionMm ?? []);
      if (itemById(aircraft, id)) expect(places.slice(-3)).toEqual([7, 7, 7]);
    }
  });
});

describe('faults of variants say where and what', () => {
  // biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
  type Spoil = (variants: any) => void;
  const broken = (change: Spoil) => {
    const json = JSON.parse(writeAircraft(named(withAft, 'As built')));
    change(json.variants);
    return faultsOf(json).join('\n');
  };
  test.each<[string, Spoil, RegExp]>([
    ['an unknown choice', (v) => (v.chosenId = 'none'), /there is no variant "none"/],
    ['an id twice', (v) => (v.list[1].id = 'as-built'), /another variant has the id "as-built"/],
    ['an unknown part left out', (v) => (v.list[1].without = ['wing']), /no "wing" that can be left out/],
    ['an unknown part changed', (v) => (v.list[1].changes[0].of = 'wing'), /there is no part or tank "wing"/],
    ['a tank’s field', (v) => (v.list[1].changes[0].startMl = 3), /"pack" is a part/],
    ['the chosen one differing', (v) => (v.list[0].without = ['bob']), /is what stands in this file/],
    ['a mass below nothing', (v) => (v.list[1].changes[0].massG = -1), /massG: expected 0 g or more/],
    ['shared in what is no list', (v) => (v.shared = {}), /shared: expected a list/],
    [
      'shared under another name',
      (v) => v.shared.push({ in: 'parts', id: 'bob', set: { name: 'Other' } }),
      /what they cannot differ in: parts "bob"/,
    ],
    [
      'shared that is unsound',
      (v) => v.shared.push({ in: 'parts', id: 'bob', set: { massG: 'heavy' } }),
      /in what the variants share: .*massG/,
    ],
    [
      'a variant that is unsound',
      (v) =>
        (v.list[1].changes[0].shape = { kind: 'tube', lengthMm: 5, outerDiameterMm: 2, innerDiameterMm: 3 }),
      /as “Aft pack”: parts\[1\] "pack"/,
    ],
  ])('%s', (_, change, sentence) => expect(broken(change)).toMatch(sentence));
});
