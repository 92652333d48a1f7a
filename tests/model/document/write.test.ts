import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Aircraft } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { parseAircraft } from '../../../src/model/reading/read';
import { dunlinJson, dunlinText } from '../aircraft';

const asWritten = (value: unknown) => writeAircraft(value as Aircraft);

describe('writeAircraft', () => {
  test('round trip: values, unknown keys, and the order of keys', () => {
    const read = parseAircraft(dunlinText);
    if (!read.ok) throw new Error(read.faults[0]?.sentence);
    const text = writeAircraft(read.aircraft);
    expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(dunlinJson()));
    const again = parseAircraft(text);
    expect(again.ok && writeAircraft(again.aircraft)).toBe(text);
  });

  test('is laid out for people: two spaces, points on one line, a line break at the end', () => {
    const text = writeAircraft(dunlinJson());
    expect(text).toContain('\n      "rootMm": [400, 60, 40],\n');
    expect(text).toContain('\n    { "id": "nose", "name": "Tip of the nose", "positionMm": [0, 0, 0] },\n');
    expect(text.endsWith('}\n')).toBe(true);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(110);
  });

  test('whatever JSON it is given comes back exactly, as JSON.parse reads it', () => {
    fc.assert(
      fc.property(fc.jsonValue({ noUnicodeString: false } as object), (json) => {
        expect(JSON.stringify(JSON.parse(asWritten({ json })))).toBe(JSON.stringify({ json }));
      }),
    );
  });

  test('a key without a value is left out, as JSON does', () => {
    expect(JSON.parse(asWritten({ a: undefined, b: { c: undefined } }))).toEqual({ b: {} });
  });

  test('a mesh is written many rows to a line, each line as long as it may be, and reads back exactly', () => {
    const rows = Array.from({ length: 400 }, (_, k) => [k, -(k + 1) / 8, 1000 + k]);
    const text = asWritten({ mesh: { verticesMm: rows } });
    expect(JSON.parse(text)).toEqual({ mesh: { verticesMm: rows } });
    const lines = text.split('\n').filter((line) => /^ +\[.*,.*\],?$/.test(line));
    expect(lines.length).toBeLessThan(400 / 4);
    for (const line of lines) {
      // The commas between the last row and its neighbours do not count.
      expect(line.length).toBeLessThanOrEqual(110 + 2);
      expect(line).toMatch(/^ {6}\[/);
    }
    // All but the last are as full as the next row lets them be.
    for (const line of lines.slice(0, -1)) expect(line.length).toBeGreaterThan(110 - 20);
  });
});
