import { describe, expect, test } from 'vitest';
import { dropAside, listAside, putAside } from '../../src/files/aside';
import { createAutosave } from '../../src/files/autosave';
import { opened, startUp } from '../../src/files/startUp';
import { blankAircraft } from '../../src/model/document/blank';
import { writeAircraft } from '../../src/model/document/write';
import { mapStorage } from './mapStorage';

const knot = { ...blankAircraft(), name: 'Knot' };
const slots = ['counterpoise.autosave.a', 'counterpoise.autosave.b'] as const;
const start = (storage: ReturnType<typeof mapStorage>, tab = mapStorage()) =>
  startUp(createAutosave(storage), storage, tab);

describe('starting with what the browser kept', () => {
  test('nothing kept: nothing on the bench, and keeping may begin', () => {
    expect(start(mapStorage())).toEqual({ aircraft: null, stopped: false, mayKeep: true });
  });

  test.each([
    ['damaged', '{"format": "counterpoise airc'],
    ['of a later version', writeAircraft(knot).replace(/"version": \d+/, '"version": 999')],
  ])('a text that is %s is put aside whole before anything overwrites it', (_what, text) => {
    const storage = mapStorage();
    for (const slot of slots) storage.map.set(slot, text);
    expect(start(storage)).toEqual({ aircraft: null, stopped: false, mayKeep: true });
    const autosave = createAutosave(storage);
    for (const name of ['Ruff', 'Snipe', 'Dunlin']) autosave.save({ ...knot, name });
    expect(listAside(storage)).toEqual([expect.objectContaining({ text })]);
  });

  test('a text that cannot be put aside stops keeping rather than be lost', () => {
    const text = 'x'.repeat(400);
    const storage = mapStorage(900);
    for (const slot of slots) storage.map.set(slot, text);
    expect(start(storage).mayKeep).toBe(false);
    expect(slots.map((slot) => storage.map.get(slot))).toEqual([text, text]);
  });

  test('the copy before a damaged one is opened, and the damaged one put aside', () => {
    const storage = mapStorage();
    const autosave = createAutosave(storage);
    autosave.save(knot);
    autosave.save({ ...knot, name: 'Ruff' });
    const latest = storage.map.get('counterpoise.autosave.latest') ?? '';
    storage.map.set(latest, '{');
    expect(start(storage).aircraft?.name).toBe('Knot');
    expect(listAside(storage).map(({ text }) => text)).toEqual(['{']);
  });

  test('an opening that never ended leaves the bench empty and the aircraft aside; one that did does not', () => {
    const storage = mapStorage();
    const tab = mapStorage();
    createAutosave(storage).save(knot);
    expect(start(storage, tab).aircraft).toEqual(knot);
    opened(tab);
    expect(start(storage, tab).aircraft).toEqual(knot);
    const again = start(storage, tab);
    expect([again.aircraft, again.stopped]).toEqual([null, true]);
    expect(listAside(storage).map(({ text }) => text)).toEqual([writeAircraft(knot)]);
  });
});

describe('texts put aside', () => {
  test('each once, oldest first, until it is discarded', () => {
    const storage = mapStorage();
    for (const text of ['a', 'b', 'a']) expect(putAside(storage, text, 'Why.')).toBe(true);
    expect(listAside(storage).map(({ text }) => text)).toEqual(['a', 'b']);
    dropAside(storage, listAside(storage)[0]?.id ?? '');
    expect(listAside(storage).map(({ text }) => text)).toEqual(['b']);
  });

  test('the tenth is refused, and none of the nine lost', () => {
    const storage = mapStorage();
    const texts = [...'abcdefghi'];
    for (const text of texts) putAside(storage, text, 'Why.');
    expect(putAside(storage, 'j', 'Why.')).toBe(false);
    expect(listAside(storage).map(({ text }) => text)).toEqual(texts);
  });
});
