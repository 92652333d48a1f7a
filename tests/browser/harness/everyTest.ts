import { afterEach, expect } from 'vitest';
import { lookedAt } from './bench';

// Whatever a test is about, its pages end without a complaint on the console and without a figure that is none.
afterEach(async () => {
  expect(await lookedAt()).toEqual([]);
});
