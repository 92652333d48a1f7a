import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { type Cell, csvOf } from '../../../src/model/words/csv';
import { massCsv, partsCsv } from '../../../src/model/words/tablesOut';
import { seed } from '../../seed';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

/** A reader of CSV of the test's own, by the grammar of RFC 4180, section 2. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let rest = text;
  while (rest !== '') {
    const quoted = /^"((?:[^"]|"")*)"(,|\r\n)/.exec(rest);
    const plain = /^([^",\r\n]*)(,|\r\n)/.exec(rest);
    const found = quoted ?? plain;
    if (!found) throw new Error(`no CSV from ${JSON.stringify(rest.slice(0, 20))} on`);
    row.push(quoted ? found[1]!.replaceAll('""', '"') : found[1]!);
    if (found[2] !== ',') {
      rows.push(row);
      row = [];
    }
    rest = rest.slice(found[0].length);
  }
  return rows;
}

describe('CSV', () => {
  test('is that of RFC 4180', () => {
    expect(
      csvOf(
        ['a', 'b (g)'],
        [
          ['x, "y"', 1.5],
          ['two\nlines', null],
        ],
      ),
    ).toBe('a,b (g)\r\n"x, ""y""",1.5\r\n"two\nlines",\r\n');
  });

  test('no text is a formula, and no figure is guarded', () => {
    // Beginnings that spreadsheets run, after the page of OWASP on CSV injection, from memory.
    const hostile = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '＝1'];
    const cells = readCsv(
      csvOf(
        ['x'],
        hostile.map((text) => [text]),
      ),
    );
    for (const [at, text] of hostile.entries()) expect(cells[at + 1]).toEqual([`'${text}`]);
    expect(csvOf(['x'], [[-1.25], [-1e-9], [Number.NaN]])).toBe('x\r\n-1.25\r\n0\r\n\r\n');
  });

  test('a formula within a text is none either where another sign than the comma parts cells', () => {
    // Spreadsheets of many countries part cells at the semicolon (common practice).
    const hostile = ['a;=1+1;b', ';@SUM(1)', 'a;"=1+1', 'a\t=1', 'a; -1'];
    for (const text of hostile) {
      const cells = csvOf(['x', 'y'], [['first', text]]).split(/[;\t\r\n]/);
      for (const cell of cells) expect(cell.replace(/^[" ]+/, '')).not.toMatch(/^[=+\-@]/);
    }
    expect(csvOf(['x'], [['M3; 10-12 mm']])).toBe('x\r\nM3; 10-12 mm\r\n');
  });

  test('whatever is written reads back, guards apart', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom('=', '",', '\r\n', '"'),
      fc.integer(),
      fc.constant(null),
    );
    const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { maxLength: 6 });
    fc.assert(
      fc.property(table, (rows: Cell[][]) => {
        const back = readCsv(csvOf(['a', 'b', 'c'], rows)).slice(1);
        expect(back.map((row) => row.map(unguarded))).toEqual(
          rows.map((row) => row.map((each) => (each === null ? '' : String(each)))),
        );
      }),
      { seed, numRuns: 200 },
    );
  });
});

const unguarded = (text: string) =>
  text
    .replace(/^'(?=[=+\-@\t\r＝＋－＠])/, '')
    .replace(/((?:[;\n]|(?!^)[\t\r])["' ]*)'(?=[=+\-@＝＋－＠])/g, '$1');

const aircraft = aircraftOf(
  [boxBlock('frame', [500, 0, 0], { by: 'weighed', massG: 100 })],
  [boxPart('=bob', 50, [0, 10, -5]), boxPart('pack', 150, [300, 0, 0])],
);

test('the table of parts adds up to the table of mass properties', () => {
  const [head = [], ...rows] = readCsv(partsCsv(aircraft));
  const column = (name: string) => head.indexOf(name);
  expect(rows.map((row) => row[column('Name')])).toEqual(['frame', "'=bob", 'pack']);
  const parts = rows.map((row) => ({
    massG: Number(row[column('Mass (g)')]),
    xMm: Number(row[column('CG station (mm)')]),
    yMm: Number(row[column('CG buttline (mm)')]),
  }));
  const massG = parts.reduce((sum, part) => sum + part.massG, 0);
  const [massHead = [], mass = [], ...more] = readCsv(
    massCsv(aircraft, { down: LEVEL, positions: {}, estimate: null }),
  );
  expect(more).toEqual([]);
  const figure = (name: string) => Number(mass[massHead.indexOf(name)]);
  // Sum of masses and of moments, by hand: 300 g; (100·500 + 150·300) / 300; 50·10 / 300.
  expect(figure('Mass (g)')).toBe(300);
  expect(massG).toBe(300);
  expect(figure('CG station (mm)')).toBeCloseTo((100 * 500 + 150 * 300) / 300, 5);
  expect(figure('CG buttline (mm)')).toBeCloseTo(500 / 300, 5);
  expect(parts.reduce((sum, part) => sum + part.massG * part.xMm, 0) / massG).toBeCloseTo(
    figure('CG station (mm)'),
    5,
  );
});
