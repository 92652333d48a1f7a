import type { Fault } from './fault';

const MAX_DEPTH = 500;

/** Reads JSON; broken JSON gives the line and column at which it breaks, the same in every browser. */
export function readJson(
  text: string,
): { readonly ok: true; readonly json: unknown } | { readonly ok: false; readonly fault: Fault } {
  const body = text.replace(/^\ufeff/, '');
  try {
    return { ok: true, json: JSON.parse(body) };
  } catch {
    return { ok: false, fault: syntaxFault(body) };
  }
}

function syntaxFault(text: string): Fault {
  if (text.trim() === '') return told('the file', 'JSON', 'an empty file', 'The file is empty.');
  const { offset, expected } = firstBreak(text);
  const before = text.slice(0, offset).split('\n');
  const path = `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`;
  const next = text.slice(offset, offset + 12).split('\n')[0] ?? '';
  const received = offset >= text.length ? 'the end of the file' : next === '' ? 'a line break' : `"${next}"`;
  return told(
    path,
    expected,
    received,
    `This is not JSON: at ${path}, expected ${expected}, got ${received}.`,
  );
}

const told = (path: string, expected: string, received: string, sentence: string): Fault => ({
  path,
  at: [],
  expected,
  received,
  sentence,
});

class Break extends Error {
  constructor(
    readonly offset: number,
    readonly expected: string,
  ) {
    super(expected);
  }
}

/** Where a text stops being JSON (RFC 8259), and what should have stood there. */
function firstBreak(text: string): { readonly offset: number; readonly expected: string } {
  let at = 0;

  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const match = pattern.exec(text)?.[0];
    if (match === undefined) return null;
    at += match.length;
    return match;
  };
  const space = () => take(/[ \t\r\n]*/y);
  const need = (pattern: RegExp, expected: string) => {
    if (take(pattern) === null) throw new Break(at, expected);
    space();
  };
  const string = (expected: string) =>
    // biome-ignore lint/suspicious/noControlCharactersInRegex: JSON text may not hold control characters.
    need(/"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y, expected);
  const scalar = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;

  const members = (close: RegExp, closing: string, depth: number, one: () => void) => {
    if (depth > MAX_DEPTH) throw new Break(at, `at most ${MAX_DEPTH} levels`);
    if (take(close) !== null) return space();
    for (;;) {
      one();
      if (take(close) !== null) return space();
      need(/,/y, `a comma or ${closing}`);
    }
  };
  const value = (depth: number): unknown => {
    if (take(/\{/y) !== null) {
      space();
      return members(/\}/y, '}', depth, () => {
        string('a key in double quotes');
        need(/:/y, 'a colon');
        value(depth + 1);
      });
    }
    if (take(/\[/y) !== null) {
      space();
      return members(/\]/y, ']', depth, () => value(depth + 1));
    }
    if (text[at] === '"') return string('text closed by a double quote, on one line');
    return need(scalar, 'a value');
  };

  try {
    space();
    value(0);
    if (at < text.length) throw new Break(at, 'the end of the file');
  } catch (error) {
    if (error instanceof Break) return error;
    throw error;
  }
  return { offset: at, expected: 'JSON' };
}
