import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureBrowser } from './browser.mjs';
import { buildBench, buildFolder } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { inProject, projectRoot } from './paths.mjs';
import { reportFirstLoad } from './size.mjs';
import { countTests } from './testCount.mjs';

// npm test: every step, then every test. With arguments only the tests, and vitest gets the arguments.
const vitestArguments = process.argv.slice(2);
const reportPath = inProject('.cache/vitest.json');
/** What was found sound is remembered, and only what has changed since is checked again. */
const typeCheck = ['--noEmit', '--incremental', '--tsBuildInfoFile', inProject('.cache/types.tsbuildinfo')];
let passed = 0;
let failed = 0;

/** Runs a program of Node's on the project; its output is shown as it comes. */
function runNode(/** @type {string[]} */ args, /** @type {Record<string, string>} */ env = {}) {
  return spawnSync(process.execPath, args, {
    cwd: projectRoot,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  }).status;
}

/** A named step counts as one: passed or failed. */
function step(/** @type {string} */ name, /** @type {() => boolean} */ succeeds) {
  const good = succeeds();
  console.log(`${good ? 'passed' : 'FAILED'}: ${name}`);
  if (good) passed++;
  else failed++;
  return good;
}

function browserIsThere() {
  try {
    ensureBrowser();
    return true;
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return false;
  }
}

function readReport() {
  try {
    return JSON.parse(readFileSync(reportPath, 'utf8'));
  } catch {
    return null;
  }
}

ensureInstalled();
let canBrowse = true;
if (vitestArguments.length === 0) {
  canBrowse = step('browser', browserIsThere);
  step('types', () => runNode([inProject('node_modules/typescript/bin/tsc'), ...typeCheck]) === 0);
  step('lint', () => runNode([inProject('node_modules/@biomejs/biome/bin/biome'), 'check']) === 0);
  if (step('build', buildBench)) step('first-load size', () => reportFirstLoad(buildFolder));
  else canBrowse = false;
}

mkdirSync(inProject('.cache'), { recursive: true });
rmSync(reportPath, { force: true });
const status = runNode(
  [
    inProject('node_modules/vitest/vitest.mjs'),
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportPath}`,
    ...(canBrowse ? [] : ['--project=engine']),
    ...vitestArguments,
  ],
  { NODE_ENV: 'test' },
);
const tests = countTests(readReport(), status);
passed += tests.passed;
failed += tests.failed;
process.exitCode = failed === 0 ? 0 : 1;
console.log(`\n${passed} passed, ${failed} failed`);
