import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { offline } from './src/commands/offlinePlugin.mjs';
import { SlowFirst } from './tests/slowFirst.mjs';

const projectRoot = fileURLToPath(new URL('.', import.meta.url));

/** What all tests in a browser share. */
const browserTests = {
  root: projectRoot,
  environment: 'node',
  // Each file closes what it opened, and the next finds the browser connected.
  isolate: false,
  // Limits against a hang, not on speed: both cores may be busy with something else.
  testTimeout: 300_000,
  hookTimeout: 300_000,
  expect: { poll: { timeout: 150_000 } },
  globalSetup: 'tests/browser/harness/globalSetup.ts',
  setupFiles: 'tests/browser/harness/everyTest.ts',
} as const;

export default defineConfig({
  root: `${projectRoot}src`,
  publicDir: `${projectRoot}assets`,
  base: './',
  plugins: [react(), offline()],
  worker: { format: 'es' },
  // Fonts come from node_modules and demo aircraft from demo-data, both outside the served root.
  server: { fs: { allow: [projectRoot] } },
  build: {
    outDir: `${projectRoot}.dist`,
    emptyOutDir: true,
    manifest: true,
    assetsInlineLimit: 0,
    // The first load as a whole is held by src/commands/size.mjs.
    chunkSizeWarningLimit: 2000,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  test: {
    root: projectRoot,
    maxWorkers: 2,
    sequence: { sequencer: SlowFirst },
    projects: [
      {
        test: {
          name: 'engine',
          root: projectRoot,
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          setupFiles: 'tests/setup.ts',
          // Pure functions leave nothing behind, and fetching the modules anew for each file took a third of the time.
          // So no test replaces a module: what is to be watched or broken is handed in.
          isolate: false,
          // A limit against a hang, not on speed: both cores may be busy with something else.
          testTimeout: 300_000,
          hookTimeout: 300_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          ...browserTests,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: ['tests/browser/painted/**'],
          // More than there are cores: much of a page's time is waiting for its next frame.
          maxWorkers: 3,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          ...browserTests,
          name: 'painted',
          include: ['tests/browser/painted/**/*.test.ts'],
          // One page at a time, and only when nothing else runs: software WebGL takes both cores.
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
