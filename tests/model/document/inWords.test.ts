import { expect, test } from 'vitest';
import { listed, midSentence } from '../../../src/model/document/inWords';

test('amid a sentence a name loses its capital, an abbreviation does not', () => {
  expect(midSentence('Wing root')).toBe('wing root');
  expect(midSentence('Öse am Spant')).toBe('öse am Spant');
  expect(midSentence('A second pack')).toBe('a second pack');
  for (const name of ['CG mark', 'T-tail joint', 'F3 former', '2 cells', ''])
    expect(midSentence(name)).toBe(name);
});

test('a list has one “and”, before its last', () => {
  expect(listed([])).toBe('');
  expect(listed(['nose'])).toBe('nose');
  expect(listed(['nose', 'tail'])).toBe('nose and tail');
  expect(listed(['nose', 'wing', 'tail'])).toBe('nose, wing and tail');
});
