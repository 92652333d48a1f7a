import { toJsonSchema } from '@valibot/to-json-schema';
import { aircraft, VERSION } from '../model/document/schema/aircraft';
import { change } from '../model/lessons/schema/change';
import { LESSON_VERSION, lesson } from '../model/lessons/schema/lesson';
import { quantity, shownQuantity } from '../model/lessons/schema/quantity';
import { step } from '../model/lessons/schema/step';

/**
 * The JSON Schema (draft 2020-12) of the aircraft file, as text, made from the schema that reads the files.
 * What only the bench checks, such as references between items, is not in it.
 */
export function publishedSchema(): string {
  const { $schema, ...schema } = toJsonSchema(aircraft, { target: 'draft-2020-12', errorMode: 'ignore' });
  const titled = {
    $schema,
    $id: `urn:counterpoise:aircraft:${VERSION}`,
    title: 'Counterpoise aircraft',
    ...schema,
  };
  return `${JSON.stringify(titled, null, 2)}\n`;
}

/**
 * The JSON Schema of a lesson's file, likewise. The aircraft in it is that of the aircraft's own schema, which is looked for
 * beside this one.
 */
export function publishedLessonSchema(): string {
  const { $schema, ...schema } = toJsonSchema(lesson, {
    target: 'draft-2020-12',
    errorMode: 'ignore',
    definitions: { change, quantity, shownQuantity, step },
  });
  const titled = {
    $schema,
    $id: `urn:counterpoise:lesson:${LESSON_VERSION}`,
    title: 'Counterpoise lesson',
    ...schema,
  };
  const withAircraft = (key: string, value: unknown) =>
    key === 'aircraft' ? { $ref: `urn:counterpoise:aircraft:${VERSION}` } : value;
  return `${JSON.stringify(titled, withAircraft, 2)}\n`;
}
