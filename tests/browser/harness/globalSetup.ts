import type { TestProject } from 'vitest/node';
import { serveBench } from '../../../src/commands/servedBench';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built bench is served, with a closing slash. */
    readonly benchUrl: string;
    /** Where the one running Chromium listens. */
    readonly browserEndpoint: string;
  }
}

// The page's own boxes and letters are drawn by the processor: drawn by WebGL in software they took a third of all time.
const flags = ['--disable-gpu-compositing'];

/** One served bench and one Chromium for all files. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { url, browser, close } = await serveBench(flags);
  project.provide('benchUrl', url);
  project.provide('browserEndpoint', browser.wsEndpoint());
  return close;
}
