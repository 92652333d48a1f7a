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

describe('where no place will do', () => {
  const nowhere = (blame: readonly { name: string }[], bestMarginMm = -4) =>
    stationWords(
      {
        ...zone({ fromMm: 0, toMm: 1 }),
        station: { allowed: null, bestMarginMm, bestMm: 300 },
        blame,
      } as unknown as ItemZone,
      aboard,
      say,
    ).replace(/\u202f/g, ' ');

  test('it says by how much the best of them fails, and which load states are in the way', () => {
    expect(nowhere([])).toBe('Nowhere: fails by 4.0 mm.');
    expect(nowhere([{ name: 'with full tanks' }])).toBe('Nowhere: fails by 4.0 mm. To blame: full tanks.');
    // One that is in the way at both ends is named once.
    expect(nowhere([{ name: 'with full tanks' }, { name: 'with full tanks' }])).toBe(
      'Nowhere: fails by 4.0 mm. To blame: full tanks.',
    );
    expect(nowhere([{ name: 'with full tanks' }, { name: 'dry with wheels up' }])).toBe(
      'Nowhere: fails by 4.0 mm. No place suits both full tanks and dry with wheels up.',
    );
  });

  test('across the wings it is the same, after “Sideways”', () => {
    const across = { buttline: { allowed: null, bestMarginMm: -2 }, blame: [{ name: 'with full tanks' }] };
    expect(buttlineWords(across as unknown as ItemZone, say).replace(/\u202f/g, ' ')).toBe(
      'Sideways nowhere: fails by 2.0 mm. To blame: full tanks.',
    );
  });
});

describe('across the wings', () => {
  const words = (allowed: Stretch | null) =>
    buttlineWords({ buttline: allowed && { allowed } } as unknown as ItemZone, say).replace(/\u202f/g, ' ');
  const far = Number.POSITIVE_INFINITY;
  test('nothing is said where nothing holds it, and the middle has no side', () => {
    expect(words(null)).toBe('');
    expect(words({ fromMm: -far, toMm: far })).toBe('');
    expect(words({ fromMm: 0, toMm: 30 })).toBe('Sideways from the middle to 30.0 mm right.');
    expect(words({ fromMm: -30, toMm: -12 })).toBe('Sideways from 30.0 mm left to 12.0 mm left.');
  });
});

describe('the ends of a stretch', () => {
  test('one that reaches the nose or the tail to the millimetre reaches past it', () => {
    expect(words({ fromMm: 0, toMm: 500 })).toMatch(/^Anywhere ahead of 500 mm/);
    expect(words({ fromMm: 300, toMm: 1500 })).toMatch(/^Anywhere aft of 300 mm/);
    expect(words({ fromMm: 1, toMm: 1499 })).toMatch(/^Anywhere from 1 mm to 1499 mm/);
  });

  test('room that is short of it by less than a millimetre is all of it', () => {
    const allowed = { fromMm: 300, toMm: 500 };
    expect(words(allowed, [{ fromMm: 300.9, toMm: 499.1 }])).not.toMatch(/room/);
    expect(words(allowed, [{ fromMm: 301.1, toMm: 500 }])).toMatch(
      /It has room for itself from 301 mm to 500 mm\.$/,
    );
    expect(words(allowed, [{ fromMm: 300, toMm: 498.9 }])).toMatch(
      /It has room for itself from 300 mm to 499 mm\.$/,
    );
  });

  test('on the stand: on the limit is not outside it', () => {
    const onStand = (marginMm: number) =>
      standWords(
        { standAt: () => ({ marginMm, limit: 'aft', case: { name: 'x' } }) } as unknown as ItemZone,
        [0, 0],
        say,
      );
    expect(onStand(0)).toBe('');
    expect(onStand(-1e-12)).toBe('');
    expect(onStand(-0.1)).toMatch(/behind the aft limit/);
    expect(standWords({ standAt: () => null } as unknown as ItemZone, [0, 0], say)).toBe('');
  });
});
