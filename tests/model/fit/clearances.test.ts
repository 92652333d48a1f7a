import { describe, expect, test } from 'vitest';
import { placeItem } from '../../../src/model/document/edit';
import { clashesOf } from '../../../src/model/fit/clash';
import { clashesIn, clearances, hullFit } from '../../../src/model/fit/clearances';
import { benchOf, blockAt, box, partAt, squareHull } from './fitAircraft';

const former = blockAt('former', box(4, 116, 116), [400, 0, 0]);
const ring = blockAt(
  'ring',
  { kind: 'tube', lengthMm: 30, outerDiameterMm: 60, innerDiameterMm: 40 },
  [500, 0, 0],
);
const shell = blockAt('canopy', box(200, 100, 60), [300, 0, 40], { mass: { by: 'skin', gPerM2: 500 } });
const aircraft = benchOf(
  [squareHull, former, ring, shell],
  [
    partAt('pack', box(100, 40, 30), [200, 0, -30]),
    partAt('receiver', box(40, 30, 12), [300, 10, -30]),
    partAt('motor', { kind: 'cylinder', lengthMm: 50, diameterMm: 36 }, [500, 0, 0]),
    partAt('servo', box(30, 30, 12), [300, 200, 0]),
  ],
);

describe('clearances of a part', () => {
  const list = clearances(aircraft, 'pack');

  test('to the hull’s inner face, the parts and the structure, nearest first', () => {
    const of = (id: string) => list.find((one) => one.id === id)!;
    expect(list.map(({ distanceMm }) => distanceMm)).toEqual(
      list.map(({ distanceMm }) => distanceMm).sort((a, b) => a - b),
    );
    expect(of('hull').distanceMm).toBeCloseTo(60 - 2 - 45, 9);
    expect(of('receiver').distanceMm).toBeCloseTo(30, 9);
    expect(of('former').distanceMm).toBeCloseTo(148, 9);
    expect(of('servo').what).toBe('part');
    expect(of('former').what).toBe('structure');
    expect(list.some(({ id }) => id === 'canopy')).toBe(false);
  });

  test('a part within a tube keeps its distance to the bore', () => {
    expect(clearances(aircraft, 'motor').find(({ id }) => id === 'ring')?.distanceMm).toBeCloseTo(2, 6);
  });

  test('a part with its middle in no hull is outside and no clash', () => {
    expect(hullFit(aircraft, 'servo')).toEqual({ place: 'outside' });
    expect(clashesIn(clearances(aircraft, 'servo'))).toEqual([]);
  });

  test('a drag leaves every pair that it does not touch as it was', () => {
    const moved = placeItem(aircraft, 'servo', [310, 200, 0]);
    const pair = (of: typeof aircraft) =>
      clearances(of, 'pack').find(({ id }) => id === 'receiver')!.pointsMm;
    expect(pair(moved)).toBe(pair(aircraft));
    expect(clearances(moved, 'nobody')).toEqual([]);
  });
});

describe('clashes', () => {
  const clashing = placeItem(placeItem(aircraft, 'receiver', [265, 0, -30]), 'pack', [200, 0, -50]);

  test('of a part with another: depth, and a move that clears it', () => {
    const [clash] = clashesOf(clashing, 'receiver');
    expect(clash?.otherId).toBe('pack');
    // Along x they overlap by 5, up by 30/2 + 12/2 − 20 = 1.
    expect(clash?.depthMm).toBeCloseTo(1, 9);
    const [x, y, z] = clash!.clearByMm;
    expect(clashesOf(placeItem(clashing, 'receiver', [265 + x, y, -30 + z]), 'receiver')).toEqual([]);
  });

  test('with the hull’s wall: as far as it pokes through the inner face', () => {
    const hit = clashesIn(clearances(clashing, 'pack')).find(({ what }) => what === 'hull');
    expect(hit?.distanceMm).toBeCloseTo(58 - 65, 9);
  });
});
