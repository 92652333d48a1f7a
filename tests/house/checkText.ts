import { readSource } from './sourceFacts';

const topLevel = new Set([
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'vite.config.ts',
  'src',
  'assets',
  'tests',
  'demo-data',
]);

// Names of namespaces and schemas, which nobody fetches, and the machine itself.
const harmlessAddresses = /^https?:\/\/(www\.w3\.org|json-schema\.org|doi\.org|localhost|127\.0\.0\.1)\b/;

// Folders that only one person's machine has. Built from parts, so that this file passes its own check.
const machineFolders = ['work', 'tmp', 'home', 'root', 'Users'];
const machinePath = new RegExp(`(?<![\\w.$})/-])/(?:${machineFolders.join('|')})/[\\w.-]`);

/** Entries in the top folder that the house does not know. Dot entries are free. */
export function strayTopEntries(paths: readonly string[]): string[] {
  const entries = new Set(paths.map((path) => path.split('/')[0] ?? ''));
  return [...entries].filter((entry) => !entry.startsWith('.') && !topLevel.has(entry));
}

/** Lines that name a folder of somebody's machine, as `path:line: text`. */
export function machinePaths(path: string, text: string): string[] {
  return matchingLines(path, text, (line) => machinePath.test(line));
}

/** Lines of a source with a web address that code could fetch; comments may cite what they like. */
export function foreignAddresses(path: string, text: string): string[] {
  const code = /\.(ts|tsx|mjs)$/.test(path) ? readSource(path, text).code : text;
  return matchingLines(path, code, (line) =>
    (line.match(/(?:https?|wss?):\/\/[^\s'"`)<>]+/g) ?? []).some(
      (address) => !harmlessAddresses.test(address),
    ),
  );
}

function matchingLines(path: string, text: string, matches: (line: string) => boolean): string[] {
  return text.split('\n').flatMap((line, i) => (matches(line) ? [`${path}:${i + 1}: ${line.trim()}`] : []));
}
