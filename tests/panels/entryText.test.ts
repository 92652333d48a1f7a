import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryText, readEntry } from '../../src/panels/fields/entryText';
import { readings } from '../../src/panels/readings';

const figureOf = (entry: ReturnType<typeof readEntry>) => (entry.ok ? entry.value : entry.sentence);

describe('entry fields', () => {
  test('figures stand without idle zeros', () => {
    expect(entryText(270, 'length', 'metric')).toBe('270\u202fmm');
    expect(entryText(115.4, 'length', 'metric')).toBe('115.4\u202fmm');
    expect(entryText(1200, 'mass', 'metric')).toBe('1200\u202fg');
    expect(entryText(0.745, 'number', 'metric')).toBe('0.745');
    expect(entryText(100, 'ratio', 'metric')).toBe('100\u202f%');
    expect(entryText(null, 'mass', 'metric')).toBe('');
  });

  test('what a field shows reads back as the figure, to what it shows', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500_000, max: 500_000 }), (tenths) => {
        const value = tenths / 10;
        const read = readEntry(entryText(value, 'length', 'metric'), 'length', 'metric', false);
        expect(figureOf(read)).toBeCloseTo(value, 9);
      }),
    );
  });

  test('an inch is 25.4 mm and an ounce 28.349523125 g, whatever the person’s own unit', () => {
    expect(figureOf(readEntry('3 1/2 in', 'length', 'metric', false))).toBeCloseTo(88.9, 9);
    expect(figureOf(readEntry('4.5 oz', 'mass', 'metric', false))).toBeCloseTo(4.5 * 28.349523125, 9);
    expect(figureOf(readEntry('412+36', 'mass', 'metric', false))).toBe(448);
  });

  test('empty is no figure where that is allowed, and a sentence where it is not', () => {
    expect(readEntry('  ', 'mass', 'metric', true)).toEqual({ ok: true, value: null });
    expect(readEntry('', 'mass', 'metric', false).ok).toBe(false);
  });
});

describe('readings', () => {
  test('stations are read from the reference point, lengths are not', () => {
    const say = readings('metric', 648);
    expect(say.station(758)).toBe('110\u202fmm');
    expect(say.length(758)).toBe('758\u202fmm');
    expect(say.station(600)).toBe('\u221248\u202fmm');
  });
});
