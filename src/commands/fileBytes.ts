import { closeSync, openSync, readSync } from 'node:fs';
import { LARGEST_FILE } from '../model/reading/fileSize';

const CHUNK = 1 << 16;

/**
 * The bytes of a file, a pipe or a device: one byte more than the largest that is opened at most, so that a device
 * without end is found too large. Throws what the system throws.
 */
export function fileBytes(path: string): Uint8Array {
  const file = openSync(path, 'r');
  try {
    const chunks: Uint8Array[] = [];
    let length = 0;
    while (length <= LARGEST_FILE) {
      const chunk = new Uint8Array(CHUNK);
      const read = readSync(file, chunk, 0, CHUNK, null);
      if (read === 0) break;
      chunks.push(chunk.subarray(0, read));
      length += read;
    }
    return joined(chunks, length);
  } finally {
    closeSync(file);
  }
}

function joined(chunks: readonly Uint8Array[], length: number): Uint8Array {
  const all = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}
