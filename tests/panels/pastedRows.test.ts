import { describe, expect, test } from 'vitest';
import type { Column } from '../../src/panels/fields/column';
import { cellsOf, isTable, pastedRows } from '../../src/panels/fields/pastedRows';
import { randomFrom } from '../randomFrom';
import { seed } from '../seed';

interface Row {
  readonly stationMm: number;
  readonly widthMm: number;
  readonly roundness: number;
}
const columns: readonly Column<Row>[] = [
  { key: 'stationMm', label: 'Station', quantity: 'length' },
  { key: 'widthMm', label: 'Width', quantity: 'length' },
  { key: 'roundness', label: 'Roundness', quantity: 'ratio', scale: 0.01 },
];
const rows: readonly Row[] = [0, 100, 200].map((stationMm) => ({ stationMm, widthMm: 50, roundness: 0.5 }));
const another = (all: readonly Row[]): Row => ({ ...all.at(-1)!, stationMm: all.at(-1)!.stationMm + 100 });
const paste = (text: string, row = 0, column = 0, units: 'metric' | 'inch-ounce' = 'metric') =>
  pastedRows({ text, row, column, columns, rows, another, noun: 'section', units });

describe('a column or a block of cells', () => {
  test('decimal commas, tabs, line breaks of either kind, a last line break', () => {
    expect(paste('10,5\t60\t80\r\n110\t62,25\t100\r\n')).toEqual([
      { stationMm: 10.5, widthMm: 60, roundness: 0.8 },
      { stationMm: 110, widthMm: 62.25, roundness: 1 },
      rows[2],
    ]);
  });

  test('one column goes down from where it is pasted, and adds rows', () => {
    const pasted = paste('70\n71\n72', 2, 1);
    expect(pasted).toEqual([
      rows[0],
      rows[1],
      { stationMm: 200, widthMm: 70, roundness: 0.5 },
      { stationMm: 300, widthMm: 71, roundness: 0.5 },
      { stationMm: 400, widthMm: 72, roundness: 0.5 },
    ]);
  });

  test('units stand in the cells or are the person’s own; an empty cell leaves what is there', () => {
    expect(paste('2 in\t\n1\t3 cm', 0, 0, 'inch-ounce')).toEqual([
      { stationMm: 50.8, widthMm: 50, roundness: 0.5 },
      { stationMm: 25.4, widthMm: 30, roundness: 0.5 },
      rows[2],
    ]);
  });
});

describe('nothing is pasted when', () => {
  test('a cell is no figure: the row and the column are told', () => {
    expect(paste('10\t60\nabout 20\t61\n30\twide')).toMatch(
      /^Nothing was pasted\. Row 2, station: .*Row 3, width: /,
    );
  });
  test('it is too wide', () => {
    expect(paste('1\t2\t3', 0, 1)).toBe('What was pasted is 3 columns wide; from here there are 2.');
  });
  test('a row between is empty', () => {
    expect(paste('1\n\n3')).toBe('Nothing was pasted. Row 2 (section 2) is empty.');
  });
});

test('a single figure is typed, not pasted as a table', () => {
  expect([isTable('12,5'), isTable('12,5\r\n'), isTable('1\t2'), isTable('1\n2')]).toEqual([
    false,
    false,
    true,
    true,
  ]);
});

test('any figures come back as they were: written with a comma or a point, in any block', () => {
  const random = randomFrom(seed);
  for (let run = 0; run < 200; run += 1) {
    const [high, wide] = [1 + Math.floor(random() * 6), 1 + Math.floor(random() * 2)];
    const figures = Array.from({ length: high }, () =>
      Array.from({ length: wide }, () => Math.round((random() - 0.5) * 1e5) / 100),
    );
    const text = figures
      .map((line) => line.map((f) => String(f).replace('.', random() < 0.5 ? ',' : '.')).join('\t'))
      .join('\n');
    expect(cellsOf(text)).toHaveLength(high);
    if (!isTable(text)) continue;
    const pasted = paste(text);
    if (typeof pasted === 'string') throw new Error(`${pasted}\n${text}`);
    for (const [i, line] of figures.entries())
      for (const [k, figure] of line.entries()) expect(pasted[i]![columns[k]!.key]).toBe(figure);
  }
});
