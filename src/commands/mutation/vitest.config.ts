import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The tests that mutants are run against: those of the engine project under the folders asked for. */
export default defineConfig({
  root: fileURLToPath(new URL('../../../', import.meta.url)),
  test: {
    environment: 'node',
    include: (process.env.MUTATE_TESTS ?? 'tests').split(' ').map((folder) => `${folder}/**/*.test.{ts,tsx}`),
    exclude: ['tests/browser/**', 'tests/house/**', '**/node_modules/**'],
    setupFiles: 'tests/setup.ts',
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
