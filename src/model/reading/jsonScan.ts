/** Where a text stops being what a file may hold, and what should have stood there. */
export interface Break {
  readonly offset: number;
  readonly expected: string;
  /** Of a key that stands twice in one object: the key, and where it stood first. */
  readonly twice?: { readonly key: string; readonly first: number };
  /** That it is JSON, but more than a file may hold; of what. */
  readonly tooMuch?: string;
  /** Of a number that would not be kept as it stands: the number, and what is wrong with it. */
  readonly number?: { readonly text: string; readonly fault: string };
  /** That the key is one that no object can hold safely. */
  readonly barred?: string;
}

/** The most keys of one object; an aircraft has some thirty. */
const MOST_KEYS = 1000;

/** An aircraft is at most ten levels deep; what a person adds of their own may be deeper. */
const MAX_DEPTH = 100;

interface Level {
  readonly close: '}' | ']';
  /** Keys of an object with where they stand; null in a list. */
  readonly keys: Map<string, number> | null;
}

/** To many programs it is no key but what the object inherits from, so that what it holds is lost or passes for the object's. */
const BARRED = '__proto__';

/** What a double-precision number (IEEE 754) would lose of a number, beyond the last digits of a fraction; null when nothing. */
function numberFault(text: string): string | null {
  const value = Number(text);
  if (!Number.isFinite(value)) return 'too large a number to be kept';
  if (value === 0 && /^[^eE]*[1-9]/.test(text)) return 'too small a number to be kept';
  const isRounded = /^-?\d{16,}$/.test(text) && BigInt(text) !== BigInt(value);
  return isRounded
    ? 'too long a number to be kept in all its digits; as text, in double quotes, it can'
    : null;
}

const VALUE = 'a value';
const SCALAR = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const [QUOTE, BACKSLASH, FIRST_PRINTED] = [0x22, 0x5c, 0x20];

/**
 * Reads a text as JSON (RFC 8259) without making anything of it: the first break of its grammar, key that stands twice
 * in one object, number that no computer keeps, or level too many; null when there is none. Neither long texts nor
 * deep nesting use up the stack.
 */
export function firstBreak(text: string): Break | null {
  let at = 0;
  const levels: Level[] = [];

  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const match = pattern.exec(text)?.[0];
    if (match === undefined) return null;
    at += match.length;
    return match;
  };
  const space = () => {
    for (;;) {
      const code = text.charCodeAt(at);
      if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return;
      at += 1;
    }
  };
  const broken = (expected: string): Break => ({ offset: at, expected });

  function string(expected: string): Break | null {
    const start = at;
    if (text[at] !== '"') return broken(expected);
    at += 1;
    for (;;) {
      const code = text.charCodeAt(at);
      if (code === QUOTE) {
        at += 1;
        return null;
      }
      if (code === BACKSLASH && take(ESCAPE) !== null) continue;
      // At the end of the text the code is NaN, which is no printed character either.
      if (code === BACKSLASH || !(code >= FIRST_PRINTED)) return { offset: start, expected };
      at += 1;
    }
  }

  function key(keys: Map<string, number>): Break | null {
    const start = at;
    const bad = string('a key in double quotes');
    if (bad) return bad;
    const name: string = JSON.parse(text.slice(start, at));
    if (name === BARRED) return { offset: start, expected: 'another key', barred: name };
    const first = keys.get(name);
    if (first !== undefined)
      return { offset: start, expected: 'every key once', twice: { key: name, first } };
    if (keys.size >= MOST_KEYS) {
      return { offset: start, expected: `at most ${MOST_KEYS}`, tooMuch: 'the object has too many keys' };
    }
    keys.set(name, start);
    space();
    if (text[at] !== ':') return broken('a colon');
    at += 1;
    space();
    return null;
  }

  /** A scalar, or the opening of a list or object; `opened` says which. */
  function value(): Break | 'opened' | null {
    const sign = text[at];
    if (sign === '{' || sign === '[') {
      if (levels.length >= MAX_DEPTH) {
        return {
          offset: at,
          expected: `at most ${MAX_DEPTH} levels`,
          tooMuch: 'lists and objects are nested too deep',
        };
      }
      at += 1;
      levels.push(sign === '{' ? { close: '}', keys: new Map() } : { close: ']', keys: null });
      space();
      return 'opened';
    }
    if (sign === '"') return string('text closed by a double quote, on one line');
    const start = at;
    const scalar = take(SCALAR);
    if (scalar === null) return broken(VALUE);
    const fault = /^[-\d]/.test(scalar) ? numberFault(scalar) : null;
    if (fault === null) return null;
    return { offset: start, expected: 'a number that can be kept', number: { text: scalar, fault } };
  }

  /** A member of the innermost level, after its key where it has one. */
  function member({ keys }: Level): Break | 'opened' | null {
    const bad = keys && key(keys);
    return bad ?? value();
  }

  space();
  let came = value();
  while (came === 'opened' || (came === null && levels.length > 0)) {
    space();
    const level = levels.at(-1);
    if (!level) break;
    if (text[at] === level.close) {
      at += 1;
      levels.pop();
      came = null;
      continue;
    }
    if (came === null) {
      if (text[at] !== ',') return broken(`a comma or ${level.close}`);
      at += 1;
      space();
    }
    came = member(level);
  }
  if (came && came !== 'opened') return came;
  space();
  return at < text.length ? broken('the end of the file') : null;
}
