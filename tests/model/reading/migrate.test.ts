import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { VERSION } from '../../../src/model/document/schema/aircraft';
import { migrate } from '../../../src/model/reading/migrations/migrate';
import { type Document, type Migration, migrations } from '../../../src/model/reading/migrations/steps';
import { parseAircraft } from '../../../src/model/reading/read';

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    for (const member of Object.values(value)) frozen(member);
    Object.freeze(value);
  }
  return value;
}

const fileOf = (version: number) =>
  readFileSync(new URL(`./files/v${version}.json`, import.meta.url), 'utf8');

describe('the real migrations', () => {
  test('there is one step from every version before today’s, in order', () => {
    const before = Array.from({ length: VERSION - 1 }, (_, i) => i + 1);
    expect(migrations.map(({ from }) => from)).toEqual(before);
  });

  test('a file of every version is kept', () => {
    const kept = readdirSync(new URL('./files/', import.meta.url));
    for (let version = 1; version <= VERSION; version += 1) expect(kept).toContain(`v${version}.json`);
  });

  test('every kept file can be read today, and is not changed by it', () => {
    for (let version = 1; version <= VERSION; version += 1) {
      const json = frozen(JSON.parse(fileOf(version)));
      expect(json.version).toBe(version);
      expect(migrate(json)).toMatchObject({ ok: true, json: { version: VERSION } });
      expect(parseAircraft(fileOf(version)).ok).toBe(true);
    }
  });
});

describe('from version 1: the source of masses and sizes', () => {
  const toVersion2 = (json: unknown) => migrate(json, migrations, 2);
  const moved = (part: object) => {
    const { parts, ...rest } = JSON.parse(fileOf(1));
    const migrated = toVersion2(frozen({ ...rest, parts: [{ ...parts[1], ...part }] }));
    if (!migrated.ok) throw new Error(migrated.fault.sentence);
    return (migrated.json as { parts: Record<string, unknown>[] }).parts[0];
  };

  test('what was typical is so still, mass and sizes, and its own keys stay', () => {
    const part = moved({});
    expect(part).toMatchObject({ massFrom: 'typical', sizeFrom: 'typical', colour: 'grey' });
    expect(part).not.toHaveProperty('typical');
  });

  test('what has a day on the scales is weighed; of all else nothing is said', () => {
    expect(moved({ typical: false, weighedOn: '2024-03-09' })).toMatchObject({ massFrom: 'weighed' });
    const silent = moved({ typical: false });
    for (const key of ['typical', 'massFrom', 'sizeFrom']) expect(silent).not.toHaveProperty(key);
  });

  test('a mark that says neither stays for the reader to see, and a list that is none is left to it', () => {
    expect(moved({ typical: 'rather' })).toMatchObject({ typical: 'rather' });
    expect(toVersion2({ version: 1, parts: 'none' })).toEqual({
      ok: true,
      json: { version: 2, parts: 'none' },
    });
  });
});

describe('a chain of steps', () => {
  const steps: readonly Migration[] = [
    { from: 1, change: 'span becomes spanMm', step: ({ span, ...rest }) => ({ ...rest, spanMm: span }) },
    { from: 2, change: 'adds notes', step: (document) => ({ ...document, notes: '' }) },
  ];
  const run = (json: unknown, chain = steps) => migrate(frozen(json), chain, 3);

  test('runs in order from the file’s version on, and keeps what it does not know', () => {
    expect(run({ version: 1, span: 9, colour: 'red' })).toEqual({
      ok: true,
      json: { version: 3, spanMm: 9, notes: '', colour: 'red' },
    });
    expect(run({ version: 2, span: 9 })).toEqual({ ok: true, json: { version: 3, span: 9, notes: '' } });
  });

  test('today’s version is passed through as it is', () => {
    const json = { version: 3, anything: [1] };
    const migrated = migrate(json, steps, 3);
    expect(migrated.ok && migrated.json).toBe(json);
  });

  test('a step that writes into its input is found out', () => {
    const careless: Migration = {
      from: 1,
      change: 'writes into its input',
      step: (document) => Object.assign(document as Record<string, unknown>, { notes: '' }) as Document,
    };
    expect(() => migrate(frozen({ version: 1 }), [careless], 2)).toThrow(TypeError);
  });

  test('a missing step is found out', () => {
    expect(() => run({ version: 1 }, steps.slice(1))).toThrow('no migration from version 1 to 2');
  });

  test.each([
    [4, /version: the file was saved by a later version of the bench \(4\); this one reads version 1 to 3/],
    [0, /version: expected a version, 1 to 3, got 0/],
    [1.5, /got 1\.5/],
    ['1', /got "1"/],
    [undefined, /got nothing/],
  ])('version %j is refused', (version, sentence) => {
    const migrated = run({ version });
    expect(migrated.ok ? '' : migrated.fault.sentence).toMatch(sentence);
  });
});
