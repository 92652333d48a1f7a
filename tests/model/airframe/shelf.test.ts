import { describe, expect, test } from 'vitest';
import { shapeFault } from '../../../src/engine/mass/shapeFault';
import { volumeProperties } from '../../../src/engine/mass/volumeProperties';
import { shelf } from '../../../src/model/airframe/shelf';
import { blankAircraft } from '../../../src/model/document/blank';
import { addPart } from '../../../src/model/document/edit';
import { writeAircraft } from '../../../src/model/document/write';
import { readAircraft } from '../../../src/model/reading/read';

const place = { positionMm: [0, 0, 0] } as const;

describe('the starter shelf', () => {
  test('every part is sound, is marked typical, and has a name of its own', () => {
    const full = shelf.reduce(
      (aircraft, part) => addPart(aircraft, { ...part, ...place }).aircraft,
      blankAircraft(),
    );
    const read = readAircraft(JSON.parse(writeAircraft(full)));
    expect(read.ok ? [] : read.faults).toEqual([]);
    expect(
      shelf.every(({ massFrom, notes }) => massFrom === 'typical' && notes?.includes('weigh yours')),
    ).toBe(true);
    expect(new Set(shelf.map(({ name }) => name)).size).toBe(shelf.length);
  });

  test('serves every role but the last', () => {
    const roles = new Set(shelf.map(({ role }) => role));
    expect([...roles].sort()).toEqual(
      ['ballast', 'control', 'energy', 'payload', 'powerplant', 'radio', 'undercarriage'].sort(),
    );
  });

  test.each(shelf.map((part) => [part.name, part] as const))('%s is neither air nor lead', (_, part) => {
    expect(shapeFault(part.shape)).toBeNull();
    const gPerMl = part.massG / (volumeProperties(part.shape).volumeMm3 / 1000);
    // Common practice, no source: a propeller's disc is mostly air, and nothing but ballast is as dense as steel.
    const [least, most] =
      part.role === 'ballast' ? [7, 11.4] : part.name.startsWith('Propeller') ? [0.01, 0.5] : [0.15, 6];
    expect(gPerMl).toBeGreaterThan(least);
    expect(gPerMl).toBeLessThan(most);
  });
});

test('a blank aircraft is a sound document', () => {
  const read = readAircraft(JSON.parse(writeAircraft(blankAircraft())));
  expect(read.ok ? [] : read.faults).toEqual([]);
});
