import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeItem, removeItem, updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { MOST_CHARACTERS, MOST_STEPS, packLine, unpackLine } from '../../../src/model/history/packing';
import { demo as demoAircraft } from '../../demo/demoAircraft';

const start = demoAircraft('sandmartin');
const ids = start.parts.map(({ id }) => id);

const edit = fc.record({
  id: fc.constantFrom(...ids),
  what: fc.constantFrom('move', 'weigh', 'take out'),
  by: fc.integer({ min: 0, max: 900 }),
});

const carriedOut = (
  aircraft: Aircraft,
  { id, what, by }: { id: string; what: string; by: number },
): Aircraft => {
  if (!aircraft.parts.some((part) => part.id === id)) return aircraft;
  if (what === 'move') return placeItem(aircraft, id, [by, 0, 0]);
  if (what === 'weigh') return updatePart(aircraft, id, { massG: by });
  return removeItem(aircraft, id);
};

const lineOf = (states: readonly Aircraft[], at: number) => ({
  past: states.slice(0, at).map((aircraft, n) => ({ label: `step ${n}`, aircraft })),
  now: states[at]!,
  future: states
    .slice(at + 1)
    .reverse()
    .map((aircraft, n) => ({ label: `later ${n}`, aircraft })),
});

describe('the steps of an aircraft as a text', () => {
  test('come back as they were, whatever was done', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 30 }), fc.nat(30), (edits, at) => {
        const states = [start];
        for (const each of edits) states.push(carriedOut(states.at(-1)!, each));
        const line = lineOf(states, Math.min(at, states.length - 1));
        const back = unpackLine(packLine(line));
        const plain = (changes: readonly { label: string; aircraft: Aircraft }[]) =>
          changes.map(({ label, aircraft }) => ({ label, json: JSON.parse(JSON.stringify(aircraft)) }));
        expect(back).toEqual({
          past: plain(line.past),
          now: JSON.parse(JSON.stringify(line.now)),
          future: plain(line.future),
        });
      }),
      { numRuns: 25 },
    );
  });

  test('what did not change is kept once and comes back as one thing', () => {
    const states = Array.from({ length: 60 }, (_, n) => placeItem(start, ids[0]!, [n, 0, 0]));
    const text = packLine(lineOf(states, 59));
    expect(text.length).toBeLessThan(6 * JSON.stringify(start).length);
    const back = unpackLine(text);
    const structure = (json: unknown) => (json as Aircraft).structure[0];
    expect(structure(back?.past[0]?.json)).toBe(structure(back?.now));
  });

  test('no text with one character changed or cut off is taken for whole', () => {
    const text = packLine(lineOf([start, placeItem(start, ids[0]!, [9, 0, 0])], 1));
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.integer({ min: 1, max: 94 }), fc.boolean(), (at, by, cut) => {
        const code = 32 + ((text.charCodeAt(at) - 32 + by) % 95);
        const other = String.fromCharCode(code);
        fc.pre(cut || other !== text[at]);
        expect(
          unpackLine(cut ? text.slice(0, at) : text.slice(0, at) + other + text.slice(at + 1)),
        ).toBeNull();
      }),
      { numRuns: 200 },
    );
  });

  test('too many or too long steps lose the oldest', () => {
    const many = Array.from({ length: MOST_STEPS + 50 }, (_, n) => placeItem(start, ids[0]!, [n, 0, 0]));
    const back = unpackLine(packLine(lineOf(many, many.length - 1)));
    expect(back?.past.map(({ label }) => label)).toEqual(
      Array.from({ length: MOST_STEPS }, (_, n) => `step ${n + 49}`),
    );
    const long = Array.from({ length: 40 }, (_, n) => ({ ...start, notes: `${n} `.repeat(40_000) }));
    const text = packLine(lineOf(long, long.length - 1));
    expect(text.length).toBeLessThan(MOST_CHARACTERS + 100);
    expect(unpackLine(text)?.past.at(-1)?.label).toBe('step 38');
  });
});
