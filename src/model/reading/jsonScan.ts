/** Where a text stops being what a file may hold, and what should have stood there. */
export interface Break {
  readonly offset: number;
  readonly expected: string;
  /** Of a key that stands twice in one object: the key, and where it stood first. */
  readonly twice?: { readonly key: string; readonly first: number };
  /** That lists and objects are nested too deep. */
  readonly tooDeep?: true;
  /** Of a number too large to be kept. */
  readonly tooLarge?: string;
}

/** An aircraft is at most ten levels deep; what a person adds of their own may be deeper. */
export const MAX_DEPTH = 100;

interface Level {
  readonly close: '}' | ']';
  /** Keys of an object with where they stand; null in a list. */
  readonly keys: Map<string, number> | null;
}

const VALUE = 'a value';
const SPACE = /[ \t\r\n]*/y;
const SCALAR = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;
/** A run of plain characters of a text, bounded so that no pattern has to remember a long one. */
const PLAIN = /[^"\\\p{Cc}]{1,1000}/uy;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const DELETE = '\u007f';

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
  const broken = (expected: string): Break => ({ offset: at, expected });

  function string(expected: string): Break | null {
    const start = at;
    if (text[at] !== '"') return broken(expected);
    at += 1;
    for (;;) {
      if (text[at] === '"') {
        at += 1;
        return null;
      }
      if (take(PLAIN) !== null || take(ESCAPE) !== null) continue;
      const code = text.charCodeAt(at);
      // Beside the plain run's own exclusions JSON allows the control characters from U+007F on.
      if (!(code >= DELETE.charCodeAt(0) && code <= 0x9f)) return { offset: start, expected };
      at += 1;
    }
  }

  function key(keys: Map<string, number>): Break | null {
    const start = at;
    const bad = string('a key in double quotes');
    if (bad) return bad;
    const name: string = JSON.parse(text.slice(start, at));
    const first = keys.get(name);
    if (first !== undefined)
      return { offset: start, expected: 'every key once', twice: { key: name, first } };
    keys.set(name, start);
    take(SPACE);
    if (text[at] !== ':') return broken('a colon');
    at += 1;
    take(SPACE);
    return null;
  }

  /** A scalar, or the opening of a list or object; `opened` says which. */
  function value(): Break | 'opened' | null {
    const sign = text[at];
    if (sign === '{' || sign === '[') {
      if (levels.length >= MAX_DEPTH) {
        return { offset: at, expected: `at most ${MAX_DEPTH} levels`, tooDeep: true };
      }
      at += 1;
      levels.push(sign === '{' ? { close: '}', keys: new Map() } : { close: ']', keys: null });
      take(SPACE);
      return 'opened';
    }
    if (sign === '"') return string('text closed by a double quote, on one line');
    const start = at;
    const scalar = take(SCALAR);
    if (scalar === null) return broken(VALUE);
    if (/^[-\d]/.test(scalar) && !Number.isFinite(Number(scalar))) {
      return { offset: start, expected: 'a number that can be kept', tooLarge: scalar };
    }
    return null;
  }

  /** A member of the innermost level, after its key where it has one. */
  function member({ keys }: Level): Break | 'opened' | null {
    const bad = keys && key(keys);
    return bad ?? value();
  }

  take(SPACE);
  let came = value();
  while (came === 'opened' || (came === null && levels.length > 0)) {
    take(SPACE);
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
      take(SPACE);
    }
    came = member(level);
  }
  if (came && came !== 'opened') return came;
  take(SPACE);
  return at < text.length ? broken('the end of the file') : null;
}
