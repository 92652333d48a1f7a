import type { Aircraft } from './types';

/** A small object or list that fits in this many characters stands on one line. */
const LINE_WIDTH = 110;

/**
 * The file's text: JSON with two-space indent, what is small and flat on one line, keys in the order in
 * which they were read, a line break at the end. Every number is written so that it reads back exactly.
 */
export function writeAircraft(aircraft: Aircraft): string {
  return `${write(aircraft, '', 0)}\n`;
}

/** `taken`: what already stands on the line before the value. */
function write(value: unknown, indent: string, taken: number): string {
  if (isPlain(value)) return JSON.stringify(value) ?? 'null';
  if (indent !== '' && isFlat(value)) {
    const line = onOneLine(value);
    if (taken + line.length < LINE_WIDTH) return line;
  }
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length > MANY_ROWS && value.every(isPointRow)) return filled(value, inner, indent);
    const items = value.map((item) => inner + write(item, inner, inner.length));
    return items.length > 0 ? `[\n${items.join(',\n')}\n${indent}]` : '[]';
  }
  const lines = membersOf(value).map(([key, member]) => {
    const start = `${inner}${JSON.stringify(key)}: `;
    return start + write(member, inner, start.length);
  });
  return lines.length > 0 ? `{\n${lines.join(',\n')}\n${indent}}` : '{}';
}

/** A list of more points or triangles than this, as a mesh has, is written many to a line. */
const MANY_ROWS = 100;

const isPointRow = (row: unknown): row is readonly number[] =>
  Array.isArray(row) && row.length === 3 && row.every((figure) => typeof figure === 'number');

/** Rows of three figures without spaces, as many on each line as it holds. */
function filled(rows: readonly (readonly number[])[], inner: string, indent: string): string {
  const lines: string[] = [];
  let line = '';
  for (const row of rows) {
    const text = `[${row.join(',')}]`;
    if (line !== '' && inner.length + line.length + text.length > LINE_WIDTH) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? text : `${line},${text}`;
  }
  lines.push(line);
  return `[\n${lines.map((each) => inner + each).join(',\n')}\n${indent}]`;
}

function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  if (isPlain(value)) return JSON.stringify(value) ?? 'null';
  const inside = membersOf(value).map(([key, member]) => `${JSON.stringify(key)}: ${onOneLine(member)}`);
  return inside.length > 0 ? `{ ${inside.join(', ')} }` : '{}';
}

/** Members with a value; one that is undefined is not in the file. */
const membersOf = (value: object) => Object.entries(value).filter(([, member]) => member !== undefined);

const isPlain = (value: unknown): value is string | number | boolean | null | undefined =>
  typeof value !== 'object' || value === null;

const isRow = (value: unknown) => isPlain(value) || (Array.isArray(value) && value.every(isPlain));

/** A list or object of plain values, or of lists of them, such as points. */
const isFlat = (value: object) => Object.values(value).every(isRow);
