import { describe, expect, test } from 'vitest';
import { blankAircraft } from '../../../src/model/document/blank';
import { freeName, twinName } from '../../../src/model/document/copyNames';
import type { Aircraft } from '../../../src/model/document/types';
import { part } from '../../panels/builders';

const aboard = (...names: string[]): Aircraft => ({
  ...blankAircraft(),
  parts: names.map((name, at) => ({ ...part(`part-${at}`, 10, [0, 0, 0], 'other'), name })),
});

// Common practice: a second one is number two, and the twin of a right-hand thing is the left-hand one.
describe('a copy', () => {
  test.each([
    [['Pack'], 'Pack', 'Pack 2'],
    [['Pack', 'Pack 2'], 'Pack', 'Pack 3'],
    [['Pack', 'Pack 2'], 'Pack 2', 'Pack 3'],
    [['Pack', 'pack 2'], 'PACK', 'PACK 3'],
    [['Gyro'], 'Pack', 'Pack'],
    [['Servo 9'], 'Servo 9', 'Servo 10'],
    [['9'], '9', '9 2'],
  ])('aboard %j, of %s: %s', (names, name, wanted) => {
    expect(freeName(aboard(...names), name)).toBe(wanted);
  });
});

describe('a twin', () => {
  test.each([
    ['Aileron servo, right', false, 'Aileron servo, left'],
    ['Left flap servo', true, 'Right flap servo'],
    ['Flight pack', false, 'Flight pack, left'],
    ['Flight pack', true, 'Flight pack, right'],
    ['Bright light', true, 'Bright light, right'],
  ])('of %s, to the right %s: %s', (name, toRight, wanted) => {
    expect(twinName(aboard(name), name, toRight)).toBe(wanted);
  });
  test('keeps a name of its own where there is one already', () => {
    expect(twinName(aboard('Servo, right', 'Servo, left'), 'Servo, right', false)).toBe('Servo, left 2');
  });
});
