import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { publishedSchema } from '../../src/commands/publishedSchema';

test('assets/aircraft.schema.json is what `npm run schema` would write today', () => {
  const kept = readFileSync(new URL('../../assets/aircraft.schema.json', import.meta.url), 'utf8');
  expect(JSON.parse(kept)).toEqual(JSON.parse(publishedSchema()));
});

test('it has an id that no network is needed for, and lets unknown keys be', () => {
  const schema = JSON.parse(publishedSchema());
  expect(schema.$id).toMatch(/^urn:/);
  expect(JSON.stringify(schema)).not.toMatch(/"additionalProperties":\s*false/);
});
