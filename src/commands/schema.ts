import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { publishedSchema } from './publishedSchema';

// npm run schema: writes the published JSON Schema of the aircraft file.
if (process.argv.length > 2) {
  console.error(`Expected no arguments, got ${process.argv.length - 2}.`);
  process.exit(2);
}
const target = fileURLToPath(new URL('../../assets/aircraft.schema.json', import.meta.url));
mkdirSync(fileURLToPath(new URL('../../assets', import.meta.url)), { recursive: true });
writeFileSync(target, publishedSchema());
