import { shownText } from '../document/names';
import { type Fault, shortened } from './fault';
import { sizeFault } from './fileSize';
import { type Break, firstBreak } from './jsonScan';
import { placeOf } from './textPlace';

export type JsonRead =
  | { readonly ok: true; readonly json: unknown }
  | { readonly ok: false; readonly fault: Fault };

/**
 * Reads JSON; broken JSON gives the line and column at which it breaks, the same in every browser, and so does
 * what JSON allows and no file may hold: a key that stands twice, nesting without end, a number too large.
 */
export function readJson(text: string): JsonRead {
  const large = sizeFault(text.length);
  if (large) return { ok: false, fault: large };
  const body = text.replace(/^\ufeff/, '');
  if (body.trim() === '') {
    return { ok: false, fault: asFault('the file', 'JSON', 'an empty file', 'The file is empty.') };
  }
  const found = firstBreak(body);
  if (found) return { ok: false, fault: breakFault(body, found) };
  return { ok: true, json: JSON.parse(body) };
}

function breakFault(text: string, { offset, expected, twice, tooLarge, tooMuch }: Break): Fault {
  const path = placeOf(text, offset);
  if (twice) {
    const key = shortened(JSON.stringify(twice.key));
    const first = placeOf(text, twice.first);
    return asFault(path, expected, `${key} again`, `At ${path}: the key ${key} stands at ${first} already.`);
  }
  if (tooLarge !== undefined) {
    const number = shortened(tooLarge);
    return asFault(path, expected, number, `At ${path}: ${number} is too large a number to be kept.`);
  }
  if (tooMuch !== undefined) {
    return asFault(path, expected, 'one more', `At ${path}: ${tooMuch}; expected ${expected}.`);
  }
  const next = text.slice(offset, offset + 12).split('\n')[0] ?? '';
  const received =
    offset >= text.length ? 'the end of the file' : next === '' ? 'a line break' : `"${shownText(next)}"`;
  return asFault(
    path,
    expected,
    received,
    `This is not JSON: at ${path}, expected ${expected}, got ${received}.`,
  );
}

const asFault = (path: string, expected: string, received: string, sentence: string): Fault => ({
  path,
  at: [],
  expected,
  received,
  sentence,
});
