import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { ensureInstalled } from './install.mjs';
import { inProject, projectRoot } from './paths.mjs';
import { reportFirstLoad } from './size.mjs';

const sources = ['src', 'assets', 'demo-data', 'vite.config.ts', 'package-lock.json'];
/** Where the built bench lies. */
export const buildFolder = inProject('.dist');

/** Builds the bench into .dist, as people get it whatever NODE_ENV says here. Returns whether it went well. */
export function buildBench() {
  const { status } = spawnSync(
    process.execPath,
    [inProject('node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'],
    { cwd: projectRoot, stdio: 'inherit', env: { ...process.env, NODE_ENV: 'production' } },
  );
  return status === 0;
}

/** Whether .dist is missing or older than anything it is built from. */
export async function buildIsStale() {
  const builtAt = changedAt(`${buildFolder}/.vite/manifest.json`);
  for (const source of sources) {
    if (changedAt(inProject(source)) > builtAt) return true;
    const inside = await readdir(inProject(source), { recursive: true }).catch(() => []);
    if (inside.some((name) => changedAt(inProject(source, name)) > builtAt)) return true;
  }
  return false;
}

/** Milliseconds since 1970; a missing file is infinitely old. */
function changedAt(/** @type {string} */ path) {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Number.NEGATIVE_INFINITY;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  ensureInstalled();
  if (!buildBench() || !reportFirstLoad(buildFolder)) process.exitCode = 1;
}
