import { describe, expect, test } from 'vitest';
import { createAutosave } from '../../src/files/autosave';
import { blankAircraft } from '../../src/model/document/blank';
import type { Aircraft } from '../../src/model/document/types';
import { writeAircraft } from '../../src/model/document/write';
import { mapStorage } from './mapStorage';

const named = (name: string): Aircraft => ({ ...blankAircraft(), name });
const slots = ['counterpoise.autosave.a', 'counterpoise.autosave.b'];

const restoredName = (storage: ReturnType<typeof mapStorage>) => {
  const restored = createAutosave(storage).restore();
  return restored.kind === 'restored' ? restored.aircraft.name : restored.kind;
};

describe('autosave', () => {
  test('nothing kept, nothing restored', () => {
    expect(createAutosave(mapStorage()).restore()).toEqual({ kind: 'nothing' });
  });

  test('the latest of many saves comes back, whole', () => {
    const storage = mapStorage();
    const autosave = createAutosave(storage);
    for (const name of ['Knot', 'Ruff', 'Sanderling']) {
      expect(autosave.save(named(name))).toEqual({ ok: true });
      expect(restoredName(storage)).toBe(name);
    }
    expect(createAutosave(storage).restore()).toEqual({
      kind: 'restored',
      aircraft: named('Sanderling'),
      damaged: null,
    });
  });

  test('an unknown key is kept', () => {
    const storage = mapStorage();
    createAutosave(storage).save({ ...named('Knot'), paint: 'grey' } as Aircraft);
    expect(createAutosave(storage).restore()).toMatchObject({ aircraft: { paint: 'grey' } });
  });

  test('a full store says so, and the last good copy stays', () => {
    const storage = mapStorage(2 * writeAircraft(named('Knot')).length + 60);
    const autosave = createAutosave(storage);
    autosave.save(named('Knot'));
    autosave.save(named('Ruff'));
    const big = { ...named('Albatross'), notes: 'x'.repeat(10_000) };
    const saved = autosave.save(big);
    expect(saved).toMatchObject({ ok: false, sentence: expect.stringMatching(/no room.*last copy is safe/) });
    expect(restoredName(storage)).toBe('Ruff');
    expect(autosave.save(named('Snipe'))).toEqual({ ok: true });
    expect(restoredName(storage)).toBe('Snipe');
  });

  test('a damaged latest copy gives the one before, and is the one overwritten next', () => {
    const storage = mapStorage();
    const autosave = createAutosave(storage);
    autosave.save(named('Knot'));
    autosave.save(named('Ruff'));
    const latest = storage.map.get('counterpoise.autosave.latest')!;
    storage.map.set(latest, '{"format": "counterpoise airc');
    expect(createAutosave(storage).restore()).toMatchObject({
      kind: 'restored',
      damaged: { text: '{"format": "counterpoise airc' },
      aircraft: { name: 'Knot' },
    });
    autosave.save(named('Snipe'));
    expect(restoredName(storage)).toBe('Snipe');
    expect(slots.map((slot) => storage.map.get(slot)).some((text) => text?.includes('"Knot"'))).toBe(true);
  });

  test('two damaged copies are reported and left alone', () => {
    const storage = mapStorage();
    for (const slot of slots) storage.map.set(slot, '{}');
    const restored = createAutosave(storage).restore();
    expect(restored.kind).toBe('damaged');
    expect(restored.kind === 'damaged' && restored.faults.length).toBeGreaterThan(0);
    expect(slots.map((slot) => storage.map.get(slot))).toEqual(['{}', '{}']);
  });

  test('a marker that went missing or astray costs nothing', () => {
    const storage = mapStorage();
    createAutosave(storage).save(named('Knot'));
    storage.map.set('counterpoise.autosave.latest', 'elsewhere');
    expect(restoredName(storage)).toBe('Knot');
    storage.map.delete('counterpoise.autosave.latest');
    expect(restoredName(storage)).toBe('Knot');
  });

  test('storage that is switched off is a sentence, not an exception', () => {
    const off = () => {
      throw new DOMException('Access is denied.', 'SecurityError');
    };
    const autosave = createAutosave({ getItem: off, setItem: off, removeItem: off, keys: off });
    expect(autosave.save(named('Knot'))).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('denied'),
    });
    expect(autosave.restore()).toMatchObject({ kind: 'unavailable' });
  });
});
