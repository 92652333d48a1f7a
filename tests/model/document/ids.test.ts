import { describe, expect, test } from 'vitest';
import { duplicatePart, updatePart } from '../../../src/model/document/edit';
import { freeId, takenIds } from '../../../src/model/document/ids';
import { addSwitch } from '../../../src/model/document/switchEdits';
import type { Aircraft } from '../../../src/model/document/types';
import { editFault } from '../../../src/model/reading/editFault';
import { aircraftOf, boxPart } from '../aircraft';

const bay = {
  ...{ id: 'front-bay', name: 'Front bay', lengthMm: 100, widthMm: 50, heightMm: 50 },
  ...{ positionMm: [100, 0, 0] as const, yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
};
const aircraft: Aircraft = {
  ...aircraftOf([], [boxPart('pack', 100, [0, 0, 0])]),
  bays: [bay],
  hatches: [{ id: 'hatch', name: 'Hatch', centreMm: [0, 0, 0], lengthMm: 9, widthMm: 9, normal: [0, 0, 1] }],
  leads: [{ id: 'lead', name: 'Lead', from: 'pack', to: 'pack', massGPerM: 1, waypointsMm: [] }],
  ballastFree: [{ id: 'hot', name: 'Hot', positionMm: [0, 0, 0], lengthMm: 9, widthMm: 9, heightMm: 9 }],
  ballastSpots: [{ id: 'spot', name: 'Spot', positionMm: [0, 0, 0], stepG: 1, mostG: 9 }],
};

describe('one set of ids', () => {
  test('a part that took the name of anything else in the file can be duplicated', () => {
    const switched = addSwitch(aircraft, 'Drop', 'aboard', ['pack']);
    for (const name of [
      'Front bay',
      'Hatch',
      'Lead',
      'Spot',
      'Drop',
      'Nose',
      'Outlet',
      'Undercarriage',
      'Radio',
    ]) {
      const renamed = updatePart(switched, 'pack', { name });
      const copy = duplicatePart(renamed, 'pack', [10, 0, 0])!;
      expect(editFault(renamed, copy.aircraft), name).toBeNull();
      expect(takenIds(renamed).has(copy.id), name).toBe(false);
    }
  });

  test('an id is made of any name, and never so long that it is refused', () => {
    for (const name of ['constructor', '__proto__', 'מקלט', '', '-'.repeat(9), 'Ab '.repeat(60)]) {
      const id = freeId(aircraft, name);
      expect(id).toMatch(/^[a-z0-9][a-z0-9-]{0,70}$/);
      expect(takenIds(aircraft).has(id)).toBe(false);
    }
  });
});

describe('an edit that cannot be says why', () => {
  test('a reference point in use, a mass that nobody weighs, a name that cannot be shown', () => {
    const stated: Aircraft = {
      ...aircraft,
      targetBand: { by: 'station', forwardMm: 0, aftMm: 9, statedFrom: 'nose' },
    };
    expect(editFault(stated, { ...stated, referencePoints: [] })).toBe('There is no reference point "nose".');
    expect(editFault(aircraft, updatePart(aircraft, 'pack', { massG: 1e308 }))).toBe(
      'Expected at most 1 000 000 g, got 1e+308.',
    );
    expect(editFault(aircraft, updatePart(aircraft, 'pack', { name: '\u202eg 874' }))).toMatch(
      /^Expected a name .*got "\\u202eg 874"\.$/,
    );
  });

  test('one that leaves an old fault as it was is none of its own', () => {
    const old: Aircraft = { ...aircraft, gridMm: -1 };
    expect(editFault(old, updatePart(old, 'pack', { massG: 5 }))).toBeNull();
  });
});
