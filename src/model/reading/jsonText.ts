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
export function readJson(text: string, most?: number): JsonRead {
  const large = sizeFault(text.length, most);
  if (large) return { ok: false, fault: large };
  const body = text.replace(/^\ufeff/, '');
  if (body.trim() === '') {
    return { ok: false, fault: asFault('the file', 'JSON', 'an empty file', 'The file is empty.') };
  }
  const found = firstBreak(body);
  if (found) return { ok: false, fault: breakFault(body, found) };
  return { ok: true, json: JSON.parse(body) };
}

function breakFault(text: string, { offset, expected, twice, number, tooMuch, barred }: Break): Fault {
  const path = placeOf(text, offset);
  if (twice) {
    const key = shortened(JSON.stringify(twice.key));
    const first = placeOf(text, twice.first);
    return asFault(path, expected, `${key} again`, `At ${path}: the key ${key} stands at ${first} already.`);
  }
  if (number) {
    const shown = shortened(number.text);
    return asFault(path, expected, shown, `At ${path}: ${shown} is ${number.fault}.`);
  }
  if (barred !== undefined) {
    const sentence = `At ${path}: the key "${barred}" cannot be kept; expected ${expected}.`;
    return asFault(path, expected, `"${barred}"`, sentence);
  }
  if (tooMuch !== undefined) {
    return asFault(path, expected, 'one more', `At ${path}: ${tooMuch}; expected ${expected}.`);
  }
  const next = text.slice(offset, offset + 12).split('\n')[0] ?? '';
  const received =
    offset >= text.length ? 'the end of the file' : next === '' ? 'a line break' : `"${withBlanks(next)}"`;
  return asFault(
    path,
    expected,
    received,
    `This is not JSON: at ${path}, expected ${expected}, got ${received}.`,
  );
}

/** As it can be shown, blanks that are not plain spaces by their code: to JSON they are no space (RFC 8259, section 2). */
const withBlanks = (text: string): string =>
  shownText(text).replace(/[^\S \t]/g, (blank) => `\\u${blank.charCodeAt(0).toString(16).padStart(4, '0')}`);

const asFault = (path: string, expected: string, received: string, sentence: string): Fault => ({
  path,
  at: [],
  expected,
  received,
  sentence,
});
