import type { Aircraft } from '../../model/document/types';
import { fileFault, LARGEST_FILE } from '../../model/reading/fileSize';
import { readFileBytes } from '../../model/reading/fileText';
import type { ReadResult } from '../../model/reading/read';
import { bytesOfDigits, bytesOfLetters, digitsOf, lettersOf } from './letters';
import { LINK_MARK } from './linkMark';
import { packed, unpacked } from './packed';

/**
 * The longest link that is made or opened, characters. The address bar of Chrome takes about 32 700, other browsers more
 * (measured figures as published in many places; no standard gives a limit).
 */
export const LONGEST_LINK = 32_000;

/** A fragment’s first letter says how the rest is written: A letters, N digits. */
const LETTERS = 'A';
const DIGITS = 'N';

export interface AircraftLink {
  readonly address: string;
  /** The same for a QR code: what stands before the digits, and the digits, which a code holds more tightly than letters. */
  readonly codeFront: string;
  readonly codeDigits: string;
}

/** The whole aircraft as a link to the page at `pageAddress`. It may be too long: `LONGEST_LINK`. */
export function linkTo(aircraft: Aircraft, pageAddress: string): AircraftLink {
  const page = pageAddress.replace(/#.*$/s, '');
  const bytes = packed(JSON.stringify(aircraft));
  return {
    address: `${page}#${LINK_MARK}${LETTERS}${lettersOf(bytes)}`,
    codeFront: `${page}#${LINK_MARK}${DIGITS}`,
    codeDigits: digitsOf(bytes),
  };
}

const refused = (expected: string, received: string, sentence: string): ReadResult => ({
  ok: false,
  faults: [{ ...fileFault(expected, received, sentence), path: 'the link' }],
});

/** Reads what stands behind the # of a link, by the same checks as a file. Never throws. */
export function readLink(fragment: string): ReadResult {
  const body = fragment.replace(/^#/, '');
  if (body.length > LONGEST_LINK) {
    const received = `${body.length} characters`;
    return refused(
      `at most ${LONGEST_LINK} characters`,
      received,
      `The link is too long: expected at most ${LONGEST_LINK} characters, got ${received}.`,
    );
  }
  const [letter = '', rest] = [body[LINK_MARK.length], body.slice(LINK_MARK.length + 1)];
  if (!body.startsWith(LINK_MARK) || (letter !== LETTERS && letter !== DIGITS)) {
    const received = letter === '' ? 'nothing' : `“${letter}”`;
    return refused(
      'a link of the kind A or N',
      received,
      `The link is of a kind that this bench does not know: expected A or N behind “${LINK_MARK}”, got ${received}. It may come from a later version.`,
    );
  }
  const bytes = letter === LETTERS ? bytesOfLetters(rest) : bytesOfDigits(rest);
  if (!bytes || bytes.length === 0) return cutOff();
  return readPacked(bytes);
}

function readPacked(bytes: Uint8Array): ReadResult {
  try {
    const text = unpacked(bytes, LARGEST_FILE);
    if (text) return readFileBytes(text);
    const most = `at most ${LARGEST_FILE / 1024 / 1024} MB`;
    return refused(
      most,
      'more',
      `The link unpacks to too much: expected ${most}, got more. It was not made by this bench.`,
    );
  } catch {
    return cutOff();
  }
}

const cutOff = (): ReadResult =>
  refused(
    'a whole link',
    'one that is cut off or changed',
    'The link cannot be unpacked: part of it was cut off or changed on the way. Ask for it again, or for the aircraft as a file.',
  );
