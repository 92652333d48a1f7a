import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { publishedLessonSchema, publishedSchema } from '../../src/commands/publishedSchema';

test('assets/aircraft.schema.json is what `npm run schema` would write today', () => {
  const kept = readFileSync(new URL('../../assets/aircraft.schema.json', import.meta.url), 'utf8');
  expect(JSON.parse(kept)).toEqual(JSON.parse(publishedSchema()));
});

test('assets/lesson.schema.json is what `npm run schema` would write today', () => {
  const kept = readFileSync(new URL('../../assets/lesson.schema.json', import.meta.url), 'utf8');
  expect(JSON.parse(kept)).toEqual(JSON.parse(publishedLessonSchema()));
});

test('the schema of a lesson refuses unknown keys, says what each key is, and leaves the aircraft to its own', () => {
  const schema = JSON.parse(publishedLessonSchema());
  const aircraftId = JSON.parse(publishedSchema()).$id;
  expect(schema.additionalProperties).toBe(false);
  expect(schema.properties.aircraft).toEqual({ $ref: aircraftId });
  expect(schema.properties.check.properties.aircraft).toEqual({ $ref: aircraftId });
  const objects = (value: unknown): Record<string, unknown>[] => {
    if (typeof value !== 'object' || value === null) return [];
    const entries = value as Record<string, unknown>;
    const here = entries.type === 'object' ? [entries] : [];
    return [...here, ...Object.values(entries).flatMap(objects)];
  };
  expect(objects(schema).length).toBeGreaterThan(20);
  for (const object of objects(schema)) expect(object.additionalProperties).toBe(false);
});

test('it has an id that no network is needed for, and lets unknown keys be', () => {
  const schema = JSON.parse(publishedSchema());
  expect(schema.$id).toMatch(/^urn:/);
  expect(JSON.stringify(schema)).not.toMatch(/"additionalProperties":\s*false/);
});
