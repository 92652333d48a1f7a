import { expect, it } from 'vitest';
import { smallestPack } from '../../../src/model/advice/packChoice';
import { makePair } from '../../../src/model/document/twins';
import type { Aircraft, Part, PowerPack, PowerUse } from '../../../src/model/document/types';
import { otherPacks, variantsOf } from '../../../src/model/place/variants';
import { packTrial } from '../../../src/model/power/otherPacks';
import { aircraftFaults } from '../../../src/model/reading/faults';
import { aircraftOf, boxPart } from '../aircraft';

const motor: PowerUse = { kind: 'motor', minV: 1, maxV: 20, meanA: 6, peakA: 6 };

/** 6 A out of a pack of two cells; 12 min with the reserve unless said otherwise, so 1200 mAh. */
function flown(pack: Partial<PowerPack> = {}, more: Partial<Part> = {}, minutes = 10): Aircraft {
  const cells: PowerPack = { chemistry: 'lipo', cells: 2, capacityMah: 5000, ...pack };
  return {
    ...aircraftOf(
      [],
      [
        { ...boxPart('pack', 300, [100, 0, 0]), role: 'energy', power: { pack: cells }, ...more },
        { ...boxPart('motor', 100, [0, 0, 0]), power: { use: motor, fedBy: [{ from: 'pack' }] } },
      ],
    ),
    kind: 'electric',
    powerFlight: { phases: [{ name: 'Flight', durationS: minutes * 60, throttlePct: 100 }], reservePct: 20 },
  };
}

it('the smallest that does it, by the flight: 1200 mAh ÷ 80 % = 1500, so 1600', () => {
  const offer = smallestPack(flown(), 'pack')!;
  expect(offer.capacityMah).toBe(1600);
  // As much for each mAh as the one aboard: 300 g · 1600/5000.
  expect(offer.massG).toBe(96);
  expect(offer.savedG).toBe(204);
  // CG before 300·100/400 = 75 mm, after 96·100/196 = 48.98 mm.
  expect(offer.cgShiftMm?.dry).toBeCloseTo(9600 / 196 - 75, 6);
  expect(aircraftFaults(offer.aircraft)).toEqual([]);
});

it('nothing is offered where the one aboard does it and no smaller one does, of whatever odd capacity it is', () => {
  expect(smallestPack(flown({ capacityMah: 1550 }), 'pack')).toBeNull();
  expect(smallestPack(flown({ capacityMah: 1600 }), 'pack')).toBeNull();
  // 1400 mAh hold 1120: a larger one is needed.
  expect(smallestPack(flown({ capacityMah: 1400 }), 'pack')?.capacityMah).toBe(1600);
  expect(packTrial(flown({ capacityMah: 1400 }), 'pack')?.doesAsItIs).toBe(false);
});

it('by the current too: of what nobody stated, what packs like it commonly give', () => {
  // Two minutes: 240 mAh ÷ 85 % = 282. Li-ion commonly gives four times its capacity: 6 A take 1500, so 1600.
  expect(smallestPack(flown({ chemistry: 'liion' }, {}, 2), 'pack')?.capacityMah).toBe(1600);
  // With 10 A stated for 5000 mAh, 2 A for each Ah: 3000.
  expect(smallestPack(flown({ maxA: 10 }, {}, 2), 'pack')?.capacityMah).toBe(3000);
});

it('nothing for a pack that feeds nothing, or while nobody says how long it flies', () => {
  const idle = flown();
  const spare: Part = {
    ...boxPart('spare', 50, [0, 0, 0]),
    power: { pack: { chemistry: 'lipo', cells: 2, capacityMah: 850 } },
  };
  expect(packTrial({ ...idle, parts: [...idle.parts, spare] }, 'spare')).toBeNull();
  const { powerFlight: _, ...unstated } = flown();
  expect(packTrial(unstated, 'pack')).toBeNull();
});

it('a pack that nobody weighed saves nothing that could be said, and the other one is typical', () => {
  const offer = smallestPack(flown({}, { massFrom: 'unknown', massG: 0 }), 'pack')!;
  expect(offer.savedG).toBeNull();
  // 2 · 3.7 V · 1.6 Ah = 11.84 Wh at 140 Wh/kg.
  expect(offer.massG).toBe(Math.round(11_840 / 140));
});

it('both of a mirrored pair change together and stay one', () => {
  const one = flown({}, { positionMm: [100, 40, 0] });
  const other: Part = { ...one.parts[0]!, id: 'left', name: 'left', positionMm: [100, -40, 0] };
  const fedByBoth = one.parts.map((part) =>
    part.id === 'motor'
      ? { ...part, power: { use: motor, fedBy: [{ from: 'pack' }, { from: 'left' }] } }
      : part,
  );
  const pair = makePair({ ...one, parts: [...fedByBoth, other] }, 'pack', 'left');
  // Half the current each: 600 mAh ÷ 80 % = 750, so 850.
  const offer = smallestPack(pair, 'pack')!;
  expect(offer.capacityMah).toBe(850);
  expect(aircraftFaults(offer.aircraft)).toEqual([]);
  expect(offer.savedG).toBe(2 * (300 - 51));
});

it('the search for places may choose among packs that suffice, and among no others', () => {
  const aircraft = flown({ capacityMah: 1800 });
  const packs = otherPacks(aircraft, aircraft.parts[0]!);
  // Nearest to 1800 of those from 1600 on; 300 g · 1600/1800 = 267 g.
  expect(packs.map(({ capacityMah }) => capacityMah)).toEqual([1600, 2200, 2500]);
  expect(packs[0]?.massG).toBe(267);
  const variants = variantsOf(aircraft, { pack: packs.map(({ capacityMah }) => ({ capacityMah })) });
  if ('fault' in variants) throw new Error(variants.fault);
  expect(variants.map(({ name }) => name)).toEqual([
    '',
    '1600 mAh for pack',
    '2200 mAh for pack',
    '2500 mAh for pack',
  ]);
  for (const variant of variants) {
    expect(packTrial(variant.aircraft, 'pack')?.doesAsItIs).toBe(true);
    expect(aircraftFaults(variant.aircraft)).toEqual([]);
  }
});

it('a stand-in of the shelf has its own cells and nothing of what was weighed', () => {
  const weighed = flown({ milliohm: 12 }, { massFrom: 'weighed', weighedOn: '2026-05-01', plusMinusG: 1 });
  const variants = variantsOf(weighed, { pack: [{ shelfName: 'Pack 4S 3300 mAh', count: 1 }] });
  if ('fault' in variants) throw new Error(variants.fault);
  const [pack] = variants[1]!.aircraft.parts;
  expect(pack?.power?.pack).toEqual({ chemistry: 'lipo', cells: 4, capacityMah: 3300 });
  expect(pack).toMatchObject({ massFrom: 'typical', massG: 345 });
  expect(pack).not.toHaveProperty('weighedOn');
  expect(pack?.plusMinusG).not.toBe(1);
});
