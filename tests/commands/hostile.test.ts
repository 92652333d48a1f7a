import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { balanceCommand } from '../../src/commands/balanceCommand';
import { writeAircraft } from '../../src/model/document/write';
import { aircraftOf, boxPart, dunlinText } from '../model/aircraft';

const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
const kept = (name: string, bytes: string | Uint8Array) => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};
const dunlin = kept('dunlin.json', dunlinText);
mkdirSync(join(folder, 'folder'));
symlinkSync(join(folder, 'round'), join(folder, 'round'));

describe('the command line tells every failure in a sentence', () => {
  test.each([
    ['no file', [], /^Expected one file, got 0/],
    ['two files', [dunlin, dunlin], /^Expected one file, got 2/],
    ['a folder', [join(folder, 'folder')], /it is a folder/],
    ['no such file', [join(folder, 'none')], /there is no such file/],
    ['a file as a folder', [join(dunlin, 'x')], /there is no such file/],
    ['links in a circle', [join(folder, 'round')], /round in a circle/],
    ['a name that is too long', ['x'.repeat(5000)], /its name is too long/],
    ['a name that is none', ['a\u0000b'], /it is no name of a file/],
    ['a device without end', ['/dev/zero'], /too large: expected at most 8 MB/],
    ['an unknown option', [dunlin, '--fule', '1'], /^Unknown option '--fule'/],
    ['an option without its value', [dunlin, '--fuel'], /^Option '--fuel <value>' argument missing\./],
    ['an option twice', [dunlin, '--fuel', '1', '--fuel', '0'], /^--fuel is given twice/],
    [
      'units of every object',
      [dunlin, '--units', 'constructor'],
      /^--units: expected metric or inch, got "constr/,
    ],
    [
      'units of every object',
      [dunlin, '--units', '__proto__'],
      /^--units: expected metric or inch, got "__pro/,
    ],
    [
      'units of every object',
      [dunlin, '--units', 'toString'],
      /^--units: expected metric or inch, got "toStr/,
    ],
    ['broken JSON', [kept('broken.json', '{')], /has a fault:\n {2}This is not JSON: at line 1/],
    ['nothing', [kept('nothing.json', '')], /The file is empty/],
    ['Latin-1', [kept('latin.json', new Uint8Array([0x7b, 0x22, 0xe9, 0x22]))], /looks like Latin-1/],
    [
      'parts that are none',
      [kept('null.json', dunlinText.replace('"parts": [', '"parts": [null,'))],
      /parts\[0\]: expected an object, got null/,
    ],
    ['nesting without end', [kept('deep.json', '['.repeat(200_000))], /nested too deep/],
  ])('%s', (_, args, sentence) => {
    const { status, out, err } = balanceCommand(args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/^ {2,}at /m);
  });

  test('a name from right to left does not turn the figures beside it round', () => {
    const part = { ...boxPart('receiver', 478, [100, 0, 0]), name: 'מקלט' };
    const file = kept('hebrew.json', writeAircraft(aircraftOf([], [part])));
    expect(balanceCommand([file]).out).toContain('\u2068מקלט\u2069');
  });
});
