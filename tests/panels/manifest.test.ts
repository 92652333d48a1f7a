import { describe, expect, test } from 'vitest';
import { shelf } from '../../src/model/airframe/shelf';
import { blankAircraft } from '../../src/model/document/blank';
import { readAircraft } from '../../src/model/reading/read';
import { manifestRows } from '../../src/model/words/manifestRows';
import { duplicate, mirrored, toggleLock } from '../../src/panels/manifest/actions';
import { addFromShelf, addThing, newThings } from '../../src/panels/manifest/newThings';
import { momentAbout, orderRows } from '../../src/panels/manifest/order';
import { part, waterTank } from './builders';

const aircraft = {
  ...blankAircraft(),
  parts: [
    part('servo-10', 30, [800, 0, 0], 'control'),
    part('camera', 400, [100, 0, 0], 'payload'),
    part('servo-9', 30, [300, 0, 0], 'control'),
  ],
};
const ids = (key: 'name' | 'mass' | 'station' | 'moment', falling = false, words = '') =>
  orderRows(manifestRows(aircraft), { key, falling }, words, 200).map(({ id }) => id);

describe('order and filter', () => {
  test('names count like people do', () => {
    expect(ids('name')).toEqual(['camera', 'servo-9', 'servo-10']);
  });
  test('by station, mass and moment about a CG at 200 mm', () => {
    expect(ids('station')).toEqual(['camera', 'servo-9', 'servo-10']);
    expect(ids('mass', true)[0]).toBe('camera');
    // 400 × −100, 30 × 100, 30 × 600 g·mm
    expect(ids('moment')).toEqual(['camera', 'servo-9', 'servo-10']);
    expect(ids('moment', true)).toEqual(['servo-10', 'servo-9', 'camera']);
  });
  test('every word must be in the name or the role', () => {
    expect(ids('name', false, 'CONTROL 10')).toEqual(['servo-10']);
    expect(ids('name', false, 'camera control')).toEqual([]);
  });
  test('what pulls the nose down is negative', () => {
    expect(momentAbout(400, 100, 200)).toBe(-40_000);
    expect(momentAbout(400, undefined, 200)).toBe(0);
  });
});

describe('actions', () => {
  test('a lock goes on and off again', () => {
    const locked = toggleLock(aircraft, 'camera');
    expect(locked.parts[1]?.locked).toBe(true);
    expect(toggleLock(locked, 'camera').parts[1]?.locked).toBe(false);
    expect(toggleLock(aircraft, 'nothing')).toBe(aircraft);
  });
  test('a copy touches the first one, aft of it, under an id of its own', () => {
    const copied = duplicate(aircraft, 'camera');
    const copy = copied?.aircraft.parts.find(({ id }) => id === copied.id);
    expect(copied?.id).not.toBe('camera');
    expect(copy?.positionMm).toEqual([140, 0, 0]);
    expect(duplicate(aircraft, 'nothing')).toBeNull();
  });
  test('a mirrored tank stands across the plane of symmetry; on the plane there is none', () => {
    const tanks = waterTank(20);
    const twin = mirrored(tanks, 'tank');
    expect(twin?.aircraft.tanks[1]).toMatchObject({ positionMm: [500, -60, 0], mirrored: true });
    expect(mirrored(aircraft, 'camera')).toBeNull();
  });
});

describe('new things', () => {
  test.each(newThings.map(({ kind }) => kind))('a new %s makes a sound document', (kind) => {
    const added = addThing(blankAircraft(), kind, 200);
    const read = readAircraft(added.aircraft);
    expect(read.ok ? [] : read.faults).toEqual([]);
    expect([...added.aircraft.structure, ...added.aircraft.tanks].map(({ id }) => id)).toEqual([added.id]);
  });
  test('two of a kind get different ids', () => {
    const first = addThing(blankAircraft(), 'boom', 0);
    expect(addThing(first.aircraft, 'boom', 0).id).not.toBe(first.id);
  });
  test('everything on the shelf can be set down', () => {
    for (const one of shelf) {
      const read = readAircraft(addFromShelf(blankAircraft(), one, [100, 0, 0]).aircraft);
      expect(read.ok ? [] : read.faults, one.name).toEqual([]);
    }
  });
});
