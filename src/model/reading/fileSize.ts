import type { Fault } from './fault';

/** The largest file that is opened, bytes. 2000 parts make one megabyte. */
export const LARGEST_FILE = 8 * 1024 * 1024;

/** The largest file with a whole fleet, bytes. */
export const LARGEST_FLEET = 64 * 1024 * 1024;

/** What is wrong with a file of so many bytes, before it is read: null when it can be. */
export function sizeFault(bytes: number, most = LARGEST_FILE): Fault | null {
  if (bytes <= most) return null;
  const expected = `at most ${most / 1024 / 1024} MB`;
  const received = `${Math.ceil(bytes / 1024 / 1024)} MB`;
  return fileFault(expected, received, `The file is too large: expected ${expected}, got ${received}.`);
}

export const fileFault = (expected: string, received: string, sentence: string): Fault => ({
  path: 'the file',
  at: [],
  expected,
  received,
  sentence,
});
