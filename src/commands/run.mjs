import { existsSync } from 'node:fs';
import { ensureInstalled } from './install.mjs';
import { inProject } from './paths.mjs';

// Runs src/commands/NAME.ts: node src/commands/run.mjs NAME [arguments].
// npm changes to the project's folder first; going back makes relative paths mean what the caller means.
const [, script = '', name = '', ...args] = process.argv;
if (!/^[a-z]+$/i.test(name) || !existsSync(inProject(`src/commands/${name}.ts`))) {
  console.error(
    `There is no command "${name}". Use npm run balance, bench, demos, fuzz, lessons, licences, mutate, schema or screens.`,
  );
  process.exit(2);
}
ensureInstalled();
const { register } = await import('tsx/esm/api');
register({ tsconfig: inProject('tsconfig.json') });
const { npm_lifecycle_event: npmScript, INIT_CWD: callerFolder } = process.env;
if (npmScript === name && callerFolder) process.chdir(callerFolder);
process.argv = [process.execPath, script, ...args];
await import(`./${name}.ts`);
