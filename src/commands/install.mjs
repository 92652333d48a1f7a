import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { inProject, projectRoot } from './paths.mjs';

const oldestNode = [20, 19];

/** Whether a Node version such as "20.19.0" is new enough for this project. */
export function nodeIsNewEnough(/** @type {string} */ version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1]);
}

/**
 * Names the first package that the lock file asks for and node_modules does not hold in that version,
 * or null when all is there. Packages for other platforms are optional and may be absent.
 * Both arguments are parsed lock files: package-lock.json and node_modules/.package-lock.json.
 * @param {{ packages?: Record<string, { version?: string, optional?: boolean, devOptional?: boolean }> }} wanted
 * @param {{ packages?: Record<string, { version?: string }> } | null} present
 * @returns {string | null}
 */
export function firstMissingPackage(wanted, present) {
  for (const [path, entry] of Object.entries(wanted.packages ?? {})) {
    if (path === '') continue;
    const found = present?.packages?.[path];
    if (!found && (entry.optional || entry.devOptional)) continue;
    if (found?.version !== entry.version) return path.replace(/^.*node_modules\//, '');
  }
  return null;
}

/**
 * Makes sure that node_modules holds what package-lock.json asks for. Says nothing when it does.
 * Whatever npm prints goes to standard error, so a command's own output stays clean.
 * Ends the process with a clear sentence when Node is too old or the installation fails.
 */
export function ensureInstalled() {
  if (!nodeIsNewEnough(process.versions.node)) {
    stop(`Counterpoise needs Node ${oldestNode.join('.')} or later; this is Node ${process.versions.node}.`);
  }
  const locked = existsSync(inProject('package-lock.json'));
  if (locked) {
    const missing = firstMissingPackage(
      readJson(inProject('package-lock.json')),
      readJson(inProject('node_modules/.package-lock.json')),
    );
    if (missing === null) return;
    console.error(`Installing packages (${missing} is missing or of another version) …`);
  } else {
    console.error('Installing packages …');
  }
  const status = npm([locked ? 'ci' : 'install', '--include=dev', '--no-audit', '--no-fund']);
  if (status !== 0) {
    stop('The packages could not be installed: npm says why above. A network connection is needed once.');
  }
}

function npm(/** @type {string[]} */ args) {
  const cli = process.env.npm_execpath ?? '';
  const options = { cwd: projectRoot, stdio: ['ignore', process.stderr, process.stderr] };
  const run = /npm-cli\.[cm]?js$/.test(cli)
    ? spawnSync(process.execPath, [cli, ...args], options)
    : spawnSync(['npm', ...args].join(' '), { ...options, shell: true });
  return run.status;
}

function readJson(/** @type {string} */ path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

function stop(/** @type {string} */ sentence) {
  console.error(sentence);
  process.exit(1);
}
