import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { publishedLessonSchema, publishedSchema } from './publishedSchema';

// npm run schema: writes the published JSON Schemas of the aircraft file and of a lesson.
if (process.argv.length > 2) {
  console.error(`Expected no arguments, got ${process.argv.length - 2}.`);
  process.exit(2);
}
const target = (name: string) => fileURLToPath(new URL(`../../assets/${name}`, import.meta.url));
mkdirSync(fileURLToPath(new URL('../../assets', import.meta.url)), { recursive: true });
writeFileSync(target('aircraft.schema.json'), publishedSchema());
writeFileSync(target('lesson.schema.json'), publishedLessonSchema());
