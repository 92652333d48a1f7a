import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { movedText } from './moved';
import { inProject } from './paths.mjs';

// npm run demos: moves the demo aircraft to today's version of the file. Says which ones changed.
if (process.argv.length > 2) {
  console.error(`Expected no arguments, got ${process.argv.length - 2}.`);
  process.exit(2);
}
for (const name of readdirSync(inProject('demo-data')).filter((file) => file.endsWith('.json'))) {
  const path = inProject('demo-data', name);
  const text = readFileSync(path, 'utf8');
  const moved = movedText(text);
  if (moved !== text) writeFileSync(path, moved);
  console.log(`${name}: ${moved === text ? 'is as it should be' : 'moved'}`);
}
