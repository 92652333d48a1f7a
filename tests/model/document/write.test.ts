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
});
