import { expect, test } from 'vitest';
import { removeItem, updatePart } from '../../src/model/document/edit';
import { sharedWith } from '../../src/workers/sharedWith';
import { demo, NAMES } from '../demo/demoAircraft';

test.each(NAMES)('%s sent again is the very same, and with one part changed shares all else', (name) => {
  const aircraft = demo(name);
  expect(sharedWith(aircraft, structuredClone(aircraft))).toBe(aircraft);
  const edited = updatePart(aircraft, aircraft.parts[2]!.id, { massG: 1 });
  const received = sharedWith(aircraft, structuredClone(edited));
  expect(received).toEqual(edited);
  expect(received.structure).toBe(aircraft.structure);
  received.parts.forEach((part, index) => {
    if (index === 2) expect(part).not.toBe(aircraft.parts[index]);
    else expect(part).toBe(aircraft.parts[index]);
  });
});

test('with the first part gone the others are still known by their ids', () => {
  const aircraft = demo('sandmartin');
  const shorter = removeItem(aircraft, aircraft.parts[0]!.id);
  const received = sharedWith(aircraft, structuredClone(shorter));
  expect(received).toEqual(shorter);
  expect(received.parts[0]).toBe(aircraft.parts[1]);
});
