import type { Fault } from './fault';
import { fileFault, sizeFault } from './fileSize';
import { parseAircraft, type ReadResult } from './read';
import { placeOf } from './textPlace';

export type TextRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly fault: Fault };

/** Reads a file's bytes, which must be UTF-8 and not too many. */
export function readFileBytes(bytes: Uint8Array): ReadResult {
  const read = textOf(bytes);
  return read.ok ? parseAircraft(read.text) : { ok: false, faults: [read.fault] };
}

/** The text in a file's bytes, which must be UTF-8. Another encoding is reported, never guessed at. */
export function textOf(bytes: Uint8Array, most?: number): TextRead {
  const large = sizeFault(bytes.length, most);
  if (large) return { ok: false, fault: large };
  if (isUtf16(bytes)) return refused('UTF-16 (“Unicode” in some editors)');
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    if (bytes.includes(0)) return { ok: false, fault: NO_TEXT };
    const before = goodText(bytes);
    const at = new TextEncoder().encode(before).length;
    const byte = (bytes[at] ?? 0).toString(16).toUpperCase().padStart(2, '0');
    return refused(
      'Latin-1 or Windows-1252 (“ANSI”)',
      ` at ${placeOf(before, before.length)} (byte ${byte})`,
    );
  }
}

/** No text holds a zero byte; pictures, archives and programs do. */
const NO_TEXT = fileFault(
  'the text of an aircraft',
  'bytes that are no text',
  'This is no text file: expected a file as the bench saves it, got bytes as of a picture or an archive.',
);

function refused(looksLike: string, where = ''): TextRead {
  const sentence = `The file is not UTF-8${where}; it looks like ${looksLike}. Save it as UTF-8 and open it again.`;
  return { ok: false, fault: fileFault('UTF-8 text', looksLike, sentence) };
}

/** By its byte order mark, or by a zero in one of the first two bytes: JSON starts with two plain characters. */
const isUtf16 = ([first, second]: Uint8Array): boolean =>
  (first === 0xff && second === 0xfe) ||
  (first === 0xfe && second === 0xff) ||
  (second !== undefined && (first === 0) !== (second === 0));

/** The whole characters before the place where bytes stop being UTF-8 (RFC 3629). */
function goodText(bytes: Uint8Array): string {
  let [good, bad] = [0, bytes.length + 1];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (beginning(bytes.subarray(0, middle)) !== null) good = middle;
    else bad = middle;
  }
  return beginning(bytes.subarray(0, good)) ?? '';
}

/** The text of bytes, a character that is cut short at the end left out; null where they are not UTF-8. */
function beginning(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes, { stream: true });
  } catch {
    return null;
  }
}
