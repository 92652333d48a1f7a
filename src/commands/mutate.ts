import { existsSync, readFileSync, statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { inProject, projectRoot } from './paths.mjs';

// npm run mutate -- src/model/words [--share 0.1] [--seed 1] [--tests "tests/model tests/demo/demo.test.ts"]
// Breaks the code on purpose, a sample of all ways, in a copy under .cache, and says which breaks no test sees.
const USE =
  'Use npm run mutate -- PATH [--share 0.1] [--seed 1] [--tests FOLDERS OR FILES], with a file or folder of src.';

interface Wish {
  readonly path: string;
  readonly share: string;
  readonly seed: string;
  readonly tests: string;
}

function wish(): Wish | string {
  try {
    const text = { type: 'string' } as const;
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { share: text, seed: text, tests: text },
    });
    if (positionals.length > 1) return `Expected one PATH, got ${positionals.length}.`;
    const path = (positionals[0] ?? '').replace(/^\.\//, '').replace(/\/$/, '');
    if (!path.startsWith('src/') || !existsSync(inProject(path))) return `There is no "${path}".`;
    const { share = '0.1', seed = '1', tests = testsOf(path) } = values;
    if (!(Number(share) > 0 && Number(share) <= 1)) return 'Expected a share above 0 and up to 1.';
    return { path, share, seed, tests };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** The folder that mirrors a room of src; of its layer where it has none. The engine is held from outside too. */
function testsOf(path: string): string {
  const [, layer = '', room = ''] = path.split('/');
  const mirror = `tests/${layer}/${room}`;
  const mirrored =
    existsSync(inProject(mirror)) && statSync(inProject(mirror)).isDirectory() ? mirror : `tests/${layer}`;
  return layer === 'engine' ? `${mirrored} tests/reference tests/crossEngine` : mirrored;
}

const isFolder = (path: string) => statSync(inProject(path)).isDirectory();

async function mutate({ path, share, seed, tests }: Wish): Promise<void> {
  Object.assign(process.env, {
    MUTATE_SHARE: share,
    MUTATE_SEED: seed,
    MUTATE_TESTS: tests,
    NODE_ENV: 'test',
  });
  process.chdir(projectRoot);
  const found = await new Stryker({
    mutate: [isFolder(path) ? `${path}/**/*.{ts,tsx}` : path],
    testRunner: 'vitest',
    vitest: { configFile: 'src/commands/mutation/vitest.config.ts', related: false },
    plugins: ['@stryker-mutator/vitest-runner', inProject('src/commands/mutation/sampler.mjs')],
    checkers: ['sampler'],
    tempDirName: '.cache/mutation',
    ignorePatterns: ['.dist', '.cache', 'assets', 'tests/browser', 'tests/bench'],
    reporters: ['progress-append-only'],
    concurrency: Math.max(1, availableParallelism() - 1),
    allowConsoleColors: false,
    disableTypeChecks: false,
    // Its rewriting of tsconfig.json asks for an interface that TypeScript no longer has; the tests need none.
    tsconfigFile: 'none.json',
    // Minutes that the tests may take before anything is broken, on a busy machine too.
    dryRunTimeoutMinutes: 20,
    // A break that makes the tests slow counts as seen; one that only a busy machine makes slow must not.
    timeoutMS: 30_000,
    timeoutFactor: 2,
    symlinkNodeModules: true,
    thresholds: { high: 92, low: 80, break: null },
  }).runMutationTest();
  const sample = found.filter(({ status }) => status !== 'CompileError');
  const killed = sample.filter(({ status }) => status === 'Killed' || status === 'Timeout');
  for (const { status, fileName, location, mutatorName, replacement } of sample) {
    if (status === 'Killed' || status === 'Timeout') continue;
    const lines = readFileSync(fileName, 'utf8').split('\n');
    const { start, end } = location;
    // Lines and columns count from 1.
    const line = lines[start.line - 1] ?? '';
    const was = start.line === end.line ? line.slice(start.column - 1, end.column - 1) : `${line.trim()} …`;
    const place = `${fileName.slice(fileName.lastIndexOf('src/'))}:${start.line}`;
    console.log(`${status} ${place} ${mutatorName}: ${was} → ${replacement}`);
  }
  const score = sample.length > 0 ? ((100 * killed.length) / sample.length).toFixed(0) : '–';
  console.log(
    `${path}, seed ${seed}: ${killed.length} of ${sample.length} breaks were seen by ${tests}, ${score} %`,
  );
}

const asked = wish();
if (typeof asked === 'string') {
  console.error(`${asked} ${USE}`);
  process.exitCode = 2;
} else {
  await mutate(asked);
}
