import { describe, expect, test } from 'vitest';
import { sayIn } from '../../../src/commands/say';
import type { ItemZone } from '../../../src/model/place/itemZone';
import { buttlineWords, standWords, stationWords } from '../../../src/model/words/zoneWords';

const say = sayIn('metric', null);
const aboard = { noseMm: 0, tailMm: 1500 };
type Stretch = { readonly fromMm: number; readonly toMm: number };

/** A zone that is allowed here, and has room there. */
const zone = (allowed: Stretch, free: readonly Stretch[] = [allowed]): ItemZone => ({
  ...({} as ItemZone),
  station: {
    ...({} as ItemZone['station']),
    allowed,
    bestMm: (allowed.fromMm + allowed.toMm) / 2,
    bestMarginMm: 5,
  },
  freeStations: free,
  blame: [],
});
const words = (...given: Parameters<typeof zone>) =>
  stationWords(zone(...given), aboard, say).replace(/\u202f/g, ' ');

describe('where an item may sit, in words', () => {
  test.each([
    [{ fromMm: 300, toMm: 500 }, 'Anywhere from 300 mm to 500 mm'],
    [{ fromMm: -200, toMm: 500 }, 'Anywhere ahead of 500 mm'],
    [{ fromMm: 300, toMm: 1800 }, 'Anywhere aft of 300 mm'],
    [{ fromMm: -200, toMm: 1800 }, 'Anywhere aboard'],
  ])('%o', (allowed, where) => {
    const free = [{ fromMm: Math.max(0, allowed.fromMm), toMm: Math.min(1500, allowed.toMm) }];
    expect(words(allowed, free)).toBe(`${where} keeps every load state in the band.`);
  });

  test('a zone that lies off the aircraft says on which side', () => {
    expect(words({ fromMm: -300, toMm: -10 })).toMatch(/ahead of the nose/);
    expect(words({ fromMm: 1510, toMm: 1700 })).toMatch(/behind the tail/);
    // Its end on the tail itself is still aboard.
    expect(words({ fromMm: 1500, toMm: 1700 })).not.toMatch(/Nowhere/);
  });

  test('room in a part of it only is said, and no room at all', () => {
    const allowed = { fromMm: 300, toMm: 500 };
    expect(words(allowed, [])).toBe(
      'Anywhere from 300 mm to 500 mm keeps every load state in the band, but it has no room there.',
    );
    const two = [
      { fromMm: 300, toMm: 350 },
      { fromMm: 420, toMm: 500 },
    ];
    expect(words(allowed, two)).toMatch(
      /It has room for itself from 300 mm to 350 mm and from 420 mm to 500 mm\.$/,
    );
  });
});

test('across, left and right are named by their sign', () => {
  const across = { ...zone({ fromMm: 0, toMm: 1 }), buttline: { allowed: { fromMm: -12, toMm: 30 } } };
  const said = buttlineWords(across as unknown as ItemZone, say).replace(/\u202f/g, ' ');
  expect(said).toMatch(/^Sideways from 12(\.0)? mm left to 30(\.0)? mm right\.$/);
});

test('outside on the balancing stand alone: how far, past which limit, and that it does not fly so', () => {
  const onStand = (marginMm: number, limit: 'aft' | 'forward') =>
    standWords(
      {
        ...zone({ fromMm: 0, toMm: 1 }),
        standAt: () => ({ marginMm, limit, case: { name: 'with the canopy off' } }),
      } as unknown as ItemZone,
      [300, 0],
      say,
    ).replace(/\u202f/g, ' ');
  expect(onStand(-4, 'aft')).toBe(
    'On the stand, with the canopy off, the CG is 4.0 mm behind the aft limit. It does not fly so.',
  );
  expect(onStand(-4, 'forward')).toContain('4.0 mm ahead of the forward limit');
  expect(onStand(2, 'aft')).toBe('');
});
