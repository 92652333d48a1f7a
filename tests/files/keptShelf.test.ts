import { describe, expect, test } from 'vitest';
import { createKeptShelf } from '../../src/files/keptShelf';
import { packOf } from '../../src/model/airframe/shelfMakers';
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
});
