import { describe, expect, test } from 'vitest';
import type { Aircraft, Fuel } from '../../../src/model/document/types';
import { momentWords } from '../../../src/model/words/momentWords';
import { demo } from '../../demo/demoAircraft';
import { aircraftOf, boxPart } from '../aircraft';

const plain = aircraftOf([], [boxPart('pack', 100, [0, 0, 0])]);
const [tank] = demo('sandmartin').tanks;
const petrol = demo('sandmartin').fuel as Fuel;
const fuelled: Aircraft = { ...plain, fuel: petrol, tanks: [tank!] };
const at = (aircraft: Aircraft, fuelFraction: number, positions = {}) =>
  momentWords(aircraft, { fuelFraction, positions });

describe('how much is left', () => {
  test.each([
    [1, 'tanks full'],
    [0.995, 'tanks full'],
    [0.994, '99 % fuel'],
    [0.414, '41 % fuel'],
    [0.416, '42 % fuel'],
    // What is left is left: never 0 %, until there is next to none.
    [0.005, '1 % fuel'],
    [0.004, 'tanks dry'],
    [0, 'tanks dry'],
  ])('%d of it', (fraction, words) => {
    expect(at(fuelled, fraction)).toBe(words);
  });

  test('what is dropped is water; nothing is said where there is no fuel, or no tank for it', () => {
    expect(at({ ...fuelled, fuel: { ...petrol, use: 'dump' } }, 0.3)).toBe('30 % water');
    expect(at(plain, 0.3)).toBe('');
    expect(at({ ...plain, fuel: petrol }, 0.3)).toBe('');
    expect(at({ ...plain, fuel: null, tanks: fuelled.tanks }, 0.3)).toBe('');
  });
});

describe('how the switches stand', () => {
  const switched: Aircraft = {
    ...fuelled,
    switches: [
      {
        id: 'camera-aboard',
        name: 'Camera',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['pack'] },
        ],
      },
    ],
  };
  test('one in its first position is not worth a word', () => {
    expect(at(switched, 1)).toBe('tanks full');
    expect(at(switched, 1, { 'camera-aboard': 'on' })).toBe('tanks full');
    expect(at(switched, 0, { 'camera-aboard': 'off' })).toBe('tanks dry, camera off');
  });

  test('legs that retract are always said, by their wheels', () => {
    const legs = demo('fieldfare');
    expect(at(legs, 1)).toMatch(/^tanks full, wheels down/);
    expect(at(legs, 1, { undercarriage: 'up' })).toMatch(/^tanks full, wheels up/);
  });
});
