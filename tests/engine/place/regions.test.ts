import { describe, expect, test } from 'vitest';
import { optionAt } from '../../../src/engine/place/optionAt';
import {
  canPrecede,
  centreRange,
  fitsRegion,
  gapAlong,
  gapBetween,
  mayMeet,
  mayStandDiagonally,
  type Occupant,
  straightGap,
  surelyAlongAxis,
  widest,
} from '../../../src/engine/place/regions';
import type { KeepApart, PlaceBox, PlaceOption, PlaceProblem } from '../../../src/engine/place/types';
import { randomFrom } from '../../randomFrom';

const box = (x: readonly [number, number], y = [0, 20], z = [0, 30]): PlaceBox => ({
  minMm: [x[0], y[0]!, z[0]!],
  maxMm: [x[1], y[1]!, z[1]!],
});
const within = (region: PlaceBox, x: number, y = 20, z = 30): Occupant => ({ region, sizeMm: [x, y, z] });

describe('where the middle of a box may be', () => {
  test('half its size inside the region; to rounding it is held in the middle', () => {
    const at = (length: number) => centreRange(within(box([100, 200]), length), 0);
    expect(at(40)).toEqual({ lowMm: 120, highMm: 180 });
    expect(at(100)).toEqual({ lowMm: 150, highMm: 150 });
    expect(at(100 + 1e-7)).toEqual({ lowMm: 150, highMm: 150 });
    expect(fitsRegion(within(box([100, 200]), 100 + 1e-7))).toBe(true);
    expect(fitsRegion(within(box([100, 200]), 100.01))).toBe(false);
    expect(fitsRegion(within(box([100, 200]), 40, 21))).toBe(false);
    expect(fitsRegion(within(box([100, 200]), 40, 20, 31))).toBe(false);
  });

  test('the option that a part stands in is one of which it keeps every side', () => {
    const option = (id: string, region: PlaceBox, turned = false): PlaceOption =>
      ({
        ...within(region, 40),
        id,
        name: id,
        ...(turned && { turnedTo: { yawDeg: 90, pitchDeg: 0, rollDeg: 0 } }),
      }) as PlaceOption;
    const options = [
      option('turned', box([0, 400]), true),
      option('front', box([0, 100])),
      option('rear', box([100, 200])),
    ];
    const at = (x: number, y = 10, z = 15) => optionAt(options, [x, y, z])?.id;
    expect([at(20), at(80), at(120), at(180)]).toEqual(['front', 'front', 'rear', 'rear']);
    expect([at(19.9), at(80.1), at(119.9), at(180.1)]).toEqual([undefined, undefined, undefined, undefined]);
    expect([at(50, 10.1), at(50, 10, 14.9)]).toEqual([undefined, undefined]);
    // The last millionth is rounding.
    expect(at(20 - 1e-7)).toBe('front');
  });
});

describe('how far two boxes are apart', () => {
  test('along an axis by the gap or, overlapping, its negative; straight by Pythagoras', () => {
    const [a, b] = [box([0, 100]), box([130, 160], [60, 80])];
    expect([gapAlong(a, b, 0), gapAlong(b, a, 0)]).toEqual([30, 30]);
    expect([gapAlong(a, b, 1), gapAlong(a, b, 2)]).toEqual([40, -30]);
    expect(straightGap(a, b)).toBe(50);
    expect(straightGap(a, box([50, 90]))).toBe(0);
  });

  test('two may meet where some of their places come closer than the gap: by trying places', () => {
    const random = randomFrom(51);
    const whole = (most: number) => Math.floor(most * random());
    for (let trial = 0; trial < 400; trial += 1) {
      const occupant = (): Occupant => {
        const [x, y, z] = [whole(60), whole(20), whole(20)];
        const size = [1 + whole(12), 1 + whole(12), 1 + whole(12)] as const;
        const room = [whole(20), whole(10), whole(10)] as const;
        return {
          region: {
            minMm: [x, y, z],
            maxMm: [x + size[0] + room[0], y + size[1] + room[1], z + size[2] + room[2]],
          },
          sizeMm: size,
        };
      };
      const [a, b] = [occupant(), occupant()];
      const gapMm = whole(6);
      // The two places that are closest along each axis: as far towards each other as their regions let them.
      const closer = [0, 1, 2].every(
        (axis) =>
          Math.max(a.region.minMm[axis]!, b.region.minMm[axis]!) -
            Math.min(a.region.maxMm[axis]!, b.region.maxMm[axis]!) <
          gapMm,
      );
      expect(mayMeet(a, b, gapMm)).toBe(closer);
      // One before the other: with the one at the front of its region and the other at the rear of its.
      for (const axis of [0, 1, 2] as const) {
        const apart =
          b.region.maxMm[axis] - b.sizeMm[axis] - (a.region.minMm[axis] + a.sizeMm[axis]) >= gapMm;
        expect(canPrecede(a, b, gapMm, axis)).toBe(apart);
      }
      const ways = ([0, 1, 2] as const).filter(
        (axis) => canPrecede(a, b, 0, axis) || canPrecede(b, a, 0, axis),
      );
      expect(mayStandDiagonally(a, b)).toBe(ways.length > 1);
    }
  });
});

describe('what two must keep', () => {
  const rule = (gapMm: number, by?: 'axis' | 'straight'): KeepApart => ({
    id: '',
    a: 'pack',
    b: 'receiver',
    gapMm,
    ...(by && { by }),
  });
  const gapOf = (...apart: KeepApart[]) =>
    gapBetween({ clearanceMm: 3, apart } as unknown as PlaceProblem)('receiver', 'pack');

  test('the clearance, unless a rule says otherwise; either may be named first', () => {
    expect(gapOf()).toEqual({ axisMm: 3, straightMm: 0 });
    expect(gapOf(rule(40))).toEqual({ axisMm: 40, straightMm: 0 });
    expect(gapOf({ ...rule(40), a: 'receiver', b: 'pack' })).toEqual({ axisMm: 40, straightMm: 0 });
    expect(gapOf({ ...rule(40), b: 'servo' })).toEqual({ axisMm: 3, straightMm: 0 });
  });

  test('of several rules along an axis the most, but one that lets them be closer than the clearance goes before what came before it', () => {
    expect(gapOf(rule(40), rule(25)).axisMm).toBe(40);
    expect(gapOf(rule(25), rule(40)).axisMm).toBe(40);
    expect(gapOf(rule(40), rule(-8)).axisMm).toBe(-8);
    expect(gapOf(rule(1), rule(40)).axisMm).toBe(40);
  });

  test('a straight distance stands beside it, the most of all of them', () => {
    expect(gapOf(rule(60, 'straight'), rule(50, 'straight'))).toEqual({ axisMm: 3, straightMm: 60 });
    expect(gapOf(rule(60, 'straight'), rule(20))).toEqual({ axisMm: 20, straightMm: 60 });
    expect(gapOf(rule(20), rule(60, 'straight'))).toEqual({ axisMm: 20, straightMm: 60 });
    expect(widest({ axisMm: 20, straightMm: 60 })).toBe(60);
    expect(widest({ axisMm: 20, straightMm: 6 })).toBe(20);
  });

  test('corner to corner, a straight distance is kept along some axis by its √3rd part', () => {
    expect(surelyAlongAxis({ axisMm: 3, straightMm: 60 }, false)).toBe(60);
    expect(surelyAlongAxis({ axisMm: 3, straightMm: 60 }, true)).toBeCloseTo(60 / Math.sqrt(3), 12);
    expect(surelyAlongAxis({ axisMm: 40, straightMm: 60 }, true)).toBe(40);
    expect(surelyAlongAxis({ axisMm: -8, straightMm: 0 }, true)).toBe(-8);
  });
});
