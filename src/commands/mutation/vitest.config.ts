import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The tests that mutants are run against: the files asked for, and those under the folders asked for. */
export default defineConfig({
  root: fileURLToPath(new URL('../../../', import.meta.url)),
  test: {
    environment: 'node',
    include: (process.env.MUTATE_TESTS ?? 'tests')
      .split(' ')
      .map((path) => (path.endsWith('.ts') ? path : `${path}/**/*.test.{ts,tsx}`)),
    exclude: ['tests/browser/**', 'tests/house/**', '**/node_modules/**'],
    setupFiles: 'tests/setup.ts',
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
