import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { publishedSchema } from './publishedSchema';

// npm run schema: writes the published JSON Schema of the aircraft file.
const target = fileURLToPath(new URL('../../assets/aircraft.schema.json', import.meta.url));
mkdirSync(fileURLToPath(new URL('../../assets', import.meta.url)), { recursive: true });
writeFileSync(target, publishedSchema());
