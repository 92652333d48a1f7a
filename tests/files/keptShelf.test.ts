import { describe, expect, test } from 'vitest';
import { createKeptShelf } from '../../src/files/keptShelf';
import { offAircraft } from '../../src/model/airframe/offAircraft';
import { packOf } from '../../src/model/airframe/shelfMakers';
import { blankAircraft } from '../../src/model/document/blank';
import type { Part } from '../../src/model/document/types';
import { writeAircraft } from '../../src/model/document/write';
import { parseAircraft } from '../../src/model/reading/read';
import { addFromShelf } from '../../src/panels/manifest/newThings';
import { mapStorage } from './mapStorage';

const pack = packOf({ chemistry: 'lipo', cells: 3, capacityMah: 2200 });
const other = { ...pack, name: 'My old pack', massG: 171, massFrom: 'weighed' } as const;

describe('a shelf of one’s own', () => {
  test('keeps what is put on it, by its name, until it is taken off', () => {
    const storage = mapStorage();
    const shelf = createKeptShelf(storage);
    expect(shelf.read()).toEqual({ parts: [], fault: null });
    expect([shelf.keep(pack), shelf.keep(other)]).toEqual([null, null]);
    expect(shelf.keep({ ...other, massG: 169 })).toBeNull();
    // Another visit to the page.
    const again = createKeptShelf(storage);
    expect(again.read().parts).toEqual([pack, { ...other, massG: 169 }]);
    expect(again.remove(pack.name)).toBeNull();
    expect(again.read().parts.map(({ name }) => name)).toEqual(['My old pack']);
  });

  test('says so where the browser keeps nothing, and loses nothing of what was there', () => {
    const storage = mapStorage(500);
    const shelf = createKeptShelf(storage);
    expect(shelf.keep(pack)).toBeNull();
    expect(shelf.keep(other)).toMatch(/Not kept/);
    expect(shelf.read().parts).toEqual([pack]);
  });

  test.each(['{', 'null', '"a"'])('%s in the store is told, not thrown', (text) => {
    const storage = mapStorage();
    storage.setItem('counterpoise.shelf', text);
    expect(createKeptShelf(storage).read()).toMatchObject({
      parts: [],
      fault: expect.stringMatching(/cannot be read/),
    });
  });

  test('what of it is no part is counted, and the rest is there', () => {
    const storage = mapStorage();
    storage.setItem('counterpoise.shelf', JSON.stringify([pack, { name: 'half a thing' }, null]));
    expect(createKeptShelf(storage).read()).toEqual({
      parts: [pack],
      fault: '2 of 3 things cannot be read.',
    });
  });

  test('what cannot be read stays where it is when something is put on or taken off', () => {
    const storage = mapStorage();
    const later = { ...other, name: 'From a later version', shape: { kind: 'torus' } };
    storage.setItem('counterpoise.shelf', JSON.stringify([later, pack]));
    const shelf = createKeptShelf(storage);
    expect(shelf.keep(other)).toBeNull();
    expect(shelf.remove(pack.name)).toBeNull();
    expect(shelf.read()).toEqual({ parts: [other], fault: '1 of 2 things cannot be read.' });
    expect(JSON.parse(storage.getItem('counterpoise.shelf')!)).toContainEqual(later);
  });

  test('a store that cannot be read now is not written over', () => {
    const storage = mapStorage();
    expect(createKeptShelf(storage).keep(pack)).toBeNull();
    const denied = {
      ...storage,
      getItem: () => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      },
    };
    const shelf = createKeptShelf(denied);
    expect([shelf.keep(other), shelf.remove(other.name)]).toEqual([
      expect.stringMatching(/Not kept/),
      expect.stringMatching(/Not kept/),
    ]);
    expect(shelf.read().fault).toMatch(/cannot be read/);
    expect(createKeptShelf(storage).read().parts).toEqual([pack]);
    // Text that is no list is no one's shelf, and makes way.
    storage.setItem('counterpoise.shelf', '{');
    expect(createKeptShelf(storage).keep(other)).toBeNull();
    expect(createKeptShelf(storage).read()).toEqual({ parts: [other], fault: null });
  });

  test('a thing taken from one aircraft goes into any other: what fed it is not part of it', () => {
    const use = {
      kind: 'receiver',
      minV: 3.5,
      maxV: 8.4,
      meanA: 0.1,
      peakA: 0.3,
    } as const;
    const part: Part = {
      ...other,
      id: 'receiver',
      positionMm: [1, 2, 3],
      bayId: 'nose',
      twinId: 'another',
      locked: true,
      yawDeg: 90,
      power: { use, fedBy: [{ from: 'pack' }] },
    };
    const thing = offAircraft(part);
    const storage = mapStorage();
    expect(createKeptShelf(storage).keep(thing)).toBeNull();
    // One that was kept before this was so is freed when it is read.
    storage.setItem(
      'counterpoise.shelf',
      JSON.stringify([thing, { ...thing, name: 'Old', power: part.power }]),
    );
    const kept = createKeptShelf(storage).read();
    expect(kept.fault).toBeNull();
    for (const [at, each] of kept.parts.entries()) {
      const { aircraft } = addFromShelf(blankAircraft(), each, [0, 0, 0]);
      const back = parseAircraft(writeAircraft(aircraft));
      expect(back.ok || back.faults[0]?.sentence, String(at)).toBe(true);
      expect(aircraft.parts[0]).toMatchObject({ power: { use }, massFrom: 'weighed', yawDeg: 90 });
    }
  });
});
