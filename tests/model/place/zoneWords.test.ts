import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { updatePart } from '../../../src/model/document/edit';
import { itemZone } from '../../../src/model/place/itemZone';
import { bestFreeStation, freeAboard } from '../../../src/model/place/offeredStation';
import { relaxed } from '../../../src/model/place/relaxed';
import { standWords, stationWords } from '../../../src/model/words/zoneWords';
import { redshank } from './bench';

const aboard = { noseMm: 0, tailMm: 1500 };
const say = {
  units: 'metric' as const,
  fromMm: 0,
  length: (mm: number) => `${mm.toFixed(1)} mm`,
  station: (mm: number) => `${Math.round(mm)} mm`,
  mass: (g: number) => `${Math.round(g)} g`,
};

describe('where an item may sit', () => {
  test('the best free station is free, and no other free whole station has more margin', () => {
    const aircraft = redshank(560);
    for (const { id } of aircraft.parts) {
      const zone = itemZone(aircraft, id, LEVEL)!;
      const free = freeAboard(zone, aboard);
      const best = bestFreeStation(zone, aboard);
      if (free.length === 0) {
        expect(best).toBeNull();
        continue;
      }
      expect(free.some(({ fromMm, toMm }) => best! >= fromMm && best! <= toMm)).toBe(true);
      for (const { fromMm, toMm } of free) {
        for (let mm = Math.ceil(fromMm); mm <= toMm; mm++) {
          expect(zone.marginAt(mm, 0).marginMm).toBeLessThanOrEqual(zone.marginAt(best!, 0).marginMm + 1e-9);
        }
      }
    }
  });

  test('an empty zone says by how much it fails: what the best place lacks', () => {
    // A band so narrow that a load taken off puts the CG out of it wherever the pack is.
    const aircraft = {
      ...redshank(600),
      targetBand: { by: 'station', forwardMm: 599, aftMm: 600 } as const,
      switches: [
        {
          id: 'camera',
          name: 'Camera',
          positions: [
            { id: 'on', name: 'on' },
            { id: 'off', name: 'off', without: ['camera'] },
          ],
        },
      ],
    };
    const zone = itemZone(aircraft, 'pack', LEVEL)!;
    expect(zone.station.allowed).toBeNull();
    const words = stationWords(zone, aboard, say);
    expect(words).toContain(`Nowhere: fails by ${zone.failsByMm.toFixed(1)} mm.`);
    expect(words).toContain('camera off');
  });
});

describe('what is so only on the balancing stand', () => {
  const standing = (onStand: boolean) => ({
    ...redshank(560),
    switches: [
      {
        id: 'pack',
        name: 'Pack',
        positions: [
          { id: 'in', name: 'in' },
          { id: 'out', name: 'out', without: ['pack', 'camera'], ...(onStand && { onStand }) },
        ],
      },
    ],
  });

  test('is told where it is outside, by as much as the balance says, and holds nothing up', () => {
    const aircraft = standing(true);
    const zone = itemZone(aircraft, 'pump', LEVEL)!;
    const out = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, positions: { pack: 'out' } });
    const aheadMm = 540 - out.cgMm![0];
    const aftMm = out.cgMm![0] - 560;
    const worstMm = Math.max(aheadMm, aftMm);
    const limit = aftMm > aheadMm ? 'behind the aft limit' : 'ahead of the forward limit';
    const words = standWords(zone, [300, 0], say);
    expect(worstMm).toBeGreaterThan(1);
    expect(words).toBe(
      `On the stand, with the pack out, the CG is ${worstMm.toFixed(1)} mm ${limit}. It does not fly so.`,
    );
    const without = itemZone(redshank(560), 'pump', LEVEL)!;
    expect(zone.station.allowed).toEqual(without.station.allowed);
    expect(standWords(without, [300, 0], say)).toBe('');
  });

  test('is silent where that state flies: then the zone is held to it', () => {
    const zone = itemZone(standing(false), 'pump', LEVEL)!;
    expect(standWords(zone, [300, 0], say)).toBe('');
    expect(zone.marginAt(300, 0).marginMm).toBeLessThan(0);
  });
});

describe('letting go', () => {
  test('a limit gives way by as much as is asked, to the millimetre upward, and only that one', () => {
    const lift = { id: 'aft limit', name: 'aft limit', what: 'limit', limits: ['aft'] } as const;
    const { targetBand } = relaxed(redshank(560), { lifts: [lift], breachMm: 6.42 });
    expect(targetBand).toEqual({ by: 'station', forwardMm: 540, aftMm: 567 });
  });

  test('a lock is opened', () => {
    const locked = updatePart(redshank(560), 'pack', { locked: true });
    const lift = { id: 'lock pack', name: 'pack', what: 'lock', partId: 'pack', optionIds: [] } as const;
    const after = relaxed(locked, { lifts: [lift], breachMm: 0 });
    expect(after.parts.find(({ id }) => id === 'pack')?.locked).toBe(false);
  });
});
