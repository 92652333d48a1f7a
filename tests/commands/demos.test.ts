import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { movedText } from '../../src/commands/moved';
import { NAMES } from '../demo/demoAircraft';

const textOf = (name: string) =>
  readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), 'utf8');

test.each(NAMES)('%s is of today’s version, to the letter', (name) => {
  expect(movedText(textOf(name))).toBe(textOf(name));
});

test('a file that is no aircraft is left alone, with what is wrong with it', () => {
  const spoilt = textOf(NAMES[0]).replace(/"version": \d+/, '"version": 0');
  expect(() => movedText(spoilt)).toThrow(/version/);
});
