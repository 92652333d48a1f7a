import { toJsonSchema } from '@valibot/to-json-schema';
import { aircraft, VERSION } from '../model/document/schema/aircraft';

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
