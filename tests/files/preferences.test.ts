import { expect, test } from 'vitest';
import { defaultPreferences, readPreferences, writePreferences } from '../../src/files/preferences';
import { FIRST_CHOICES } from '../../src/model/sheet/choices';
import { mapStorage } from './mapStorage';

test('choices come back', () => {
  const storage = mapStorage();
  expect(readPreferences(storage)).toEqual(defaultPreferences);
  const chosen = {
    units: 'inch-ounce',
    theme: 'dark',
    layers: { cg: false, stability: true, fit: false, leads: true, rooms: false, inertia: true },
    tilts: 'world',
    learned: ['drag', 'nearer'],
    sheet: { ...FIRST_CHOICES, paper: 'letter', leftOut: ['weighing', 'card'], by: 'A builder' },
  } as const;
  expect(writePreferences(storage, chosen)).toBe(true);
  expect(readPreferences(storage)).toEqual(chosen);
  // How it is balanced goes with the aircraft, not with the person.
  const balancing = { fuel: 'full', positions: { canopy: 'off' } } as const;
  writePreferences(storage, { ...chosen, sheet: { ...chosen.sheet, balancing, buttlineMm: 90 } });
  expect(readPreferences(storage)).toEqual(chosen);
});

test.each(['', '{', 'null', '3', '{"units": "furlong", "theme": 7}'])('%j reads as the defaults', (text) => {
  const storage = mapStorage();
  storage.map.set('counterpoise.preferences', text);
  expect(readPreferences(storage)).toEqual(defaultPreferences);
});

test('a full store is told by false', () => {
  expect(writePreferences(mapStorage(5), defaultPreferences)).toBe(false);
});
