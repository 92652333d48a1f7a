import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankAircraft } from '../../../src/model/document/blank';
import { writeAircraft } from '../../../src/model/document/write';
import { guessMatching } from '../../../src/model/partsTable/columns';
import { decimalOf, importParts, readRows, tooManyFault } from '../../../src/model/partsTable/importParts';
import { type RawTable, readTable, type Separator } from '../../../src/model/partsTable/readTable';
import { parseAircraft } from '../../../src/model/reading/read';
import { createDocumentStore } from '../../../src/store/documentStore';
import { seed } from '../../seed';

const tableOf = (text: string, separator?: Separator): RawTable => {
  const table = readTable(text, separator);
  if (typeof table === 'string') throw new Error(table);
  return table;
};

/** A text read as the dialog reads it before anybody touches a choice. */
function readAll(text: string, separator?: Separator) {
  const table = tableOf(text, separator);
  const matching = guessMatching(table.rows);
  const decimal = decimalOf(table, matching);
  return {
    table,
    matching,
    decimal,
    ...readRows(table, matching, { decimal, system: 'metric', massFrom: null }),
  };
}

const masses = (text: string) => readAll(text).rows.map(({ read }) => read?.part.massG ?? null);

/** A cell as RFC 4180, 2.5 to 2.7, has it: in quotes where it holds a separator, a quote or a line break. */
const cellAs = (cell: string, separator: string, always: boolean) =>
  always || cell.includes(separator) || /["\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

describe('a table is taken apart', () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom('a,b', 'c;d', 'say "so"', 'two\nlines', 'x\ty', '12,5', '', '|'),
  );
  const row = fc.array(cell, { minLength: 3, maxLength: 3 });

  test('into the very cells that it was written from, whatever they hold', () => {
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 8 }),
        fc.constantFrom<Separator>(',', ';', '\t', '|'),
        fc.constantFrom('\n', '\r\n'),
        fc.boolean(),
        (rows, separator, lineEnd, always) => {
          // What a cell begins and ends with is not part of it, and a lone carriage return is a line's end to some.
          const plain = rows.map((cells) =>
            cells.map((text) => text.replace(/[\u00a0\u2007\u202f\ufeff\r]/g, ' ').trim()),
          );
          fc.pre(plain.some((cells) => cells.some((text) => text !== '')));
          const text = plain
            .map((cells) => cells.map((each) => cellAs(each, separator, always)).join(separator))
            .join(lineEnd);
          const { rows: read, broken } = tableOf(`\ufeff${text}${lineEnd}`, separator);
          expect(broken).toEqual([]);
          const wanted = plain.slice(0, plain.findLastIndex((cells) => cells.some(Boolean)) + 1);
          expect(read.map((cells) => (cells.length === 1 && cells[0] === '' ? ['', '', ''] : cells))).toEqual(
            wanted,
          );
        },
      ),
      { numRuns: 300, seed },
    );
  });

  test.each<[Separator, string]>([
    [',', 'Name,Mass\nServo,12.5\nPack,210'],
    [';', 'Name;Mass\nServo;12,5\nPack;210'],
    ['\t', 'Name\tMass\nServo\t12,5\nPack\t210'],
    ['|', 'Name|Mass\nServo|12.5\nPack|210'],
  ])('the separator %j is found', (separator, text) => {
    expect(readAll(text).table.separator).toBe(separator);
    expect(masses(text)).toEqual([12.5, 210]);
  });

  test('a quote that is not closed is told with its row, and nothing of it is taken', () => {
    const { rows } = readAll('Name,Mass\nServo,12\n"Pack,210');
    expect(rows.at(-1)!.read).toBeNull();
    expect(rows.at(-1)!.faults[0]!.sentence).toMatch(/quotation mark/);
    expect(rows[0]!.read!.part.massG).toBe(12);
  });

  test('nothing, and far too much, have their sentence', () => {
    expect(readTable(' \n ')).toMatch(/nothing in it/);
    expect(readTable('a\n'.repeat(5000))).toMatch(/at most 2000 rows/);
    expect(readTable(`${'a,'.repeat(200)}a`)).toMatch(/at most 60 columns, got 201/);
  });
});

describe('figures as people write them', () => {
  // 1 oz = 28.349 523 125 g and 1 in = 25.4 mm exactly: NIST Special Publication 811, appendix B.
  test.each([
    ['a decimal comma with grouped thousands', 'Name;Mass\nA;1.234,5\nB;58', [1234.5, 58]],
    ['a decimal point with grouped thousands', 'Name,Mass\nA,"1,234.5"\nB,58', [1234.5, 58]],
    ['a decimal comma that another row settles', 'Name;Mass\nA;1.234\nB;5,8', [1234, 5.8]],
    ['a decimal point that another row settles', 'Name\tMass\nA\t1,234\nB\t5.8', [1234, 5.8]],
    ['a unit in the head', 'Name,Mass (oz)\nA,2\nB,0.5', [56.69904625, 14.1747615625]],
    ['a unit row', 'Name,Mass,Length\n,kg,cm\nA,0.2,10\nB,0.058,5', [200, 58]],
    ['a unit in the cell, which goes first', 'Name,Mass [oz]\nA,58 g\nB,1', [58, 28.349523125]],
    ['a sum', 'Name,Mass\nA,40+18\nB,2*29', [58, 58]],
    ['a true minus and a narrow blank', 'Name,Mass\nA,1\u202f234\nB,60−2', [1234, 58]],
  ])('%s', (_, text, wanted) => {
    const read = masses(text);
    expect(read).toHaveLength(wanted.length);
    read.forEach((massG, at) => {
      expect(massG).toBeCloseTo(wanted[at]!, 9);
    });
  });

  test('what can be read two ways is refused, and told with its row and column', () => {
    for (const figure of ['"1,234"', '1.234']) {
      const { rows, decimal } = readAll(`Name,Mass\nPack,${figure}\nServo,58`);
      expect(decimal).toBeNull();
      expect(rows[0]).toMatchObject({ row: 2, read: null });
      expect(rows[0]!.faults[0]).toMatchObject({ column: 'Mass' });
      expect(rows[0]!.faults[0]!.sentence).toMatch(/two ways/);
      expect(rows[1]!.read).not.toBeNull();
    }
  });

  test('so is one with a sign before it, or in a sum', () => {
    const { rows, decimal } = readAll('Name,Station\nA,-1.250\nB,+2.500\nC,40+1.250\nD,−1.250 mm');
    expect(decimal).toBeNull();
    for (const { read, faults } of rows) {
      expect(read).toBeNull();
      expect(faults[0]!.sentence).toMatch(/two ways/);
    }
  });

  test('what is no figure is told of as it was written, whatever unit its column has', () => {
    const { rows } = readAll('Name,Mass (g)\nA,12..5\nB,1_000\nC,=SUM(B1:B2)\nD,#REF!');
    for (const { read, faults } of rows) {
      expect(read).toBeNull();
      expect(faults[0]!.sentence).not.toMatch(/bracket/);
    }
  });

  test('any figure that is written in any of the ways comes back', () => {
    const grouped = (whole: string, mark: string) => whole.replace(/\B(?=(\d{3})+$)/g, mark);
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 99_999_999 }), { minLength: 1, maxLength: 12 }),
        fc.constantFrom('point', 'comma'),
        fc.boolean(),
        (hundredths, decimal, isGrouped) => {
          const [mark, group] = decimal === 'comma' ? [',', '.'] : ['.', ','];
          // One figure with two decimals says which mark it is; the rest may look like anything.
          const figures = [1250, ...hundredths].map((value) => {
            const whole = String(Math.floor(value / 100));
            const rest = String(value % 100).padStart(2, '0');
            return `${isGrouped ? grouped(whole, group) : whole}${mark}${rest}`;
          });
          const text = `Name\tMass\n${figures.map((figure, at) => `P${at}\t${figure}`).join('\n')}`;
          expect(masses(text)).toEqual(
            [1250, ...hundredths].map((value) => Number((value / 100).toFixed(2))),
          );
        },
      ),
      { numRuns: 200, seed },
    );
  });
});

describe('columns are matched, rows are judged', () => {
  const text = [
    'Fit-out of the Knot;;;;;;',
    '',
    'Item;Weight (g);L (mm);W (mm);H (mm);Qty;Station (cm)',
    'Aileron servo;12,5;23;12;27;2;41',
    'Flight pack;210;;;;;',
    'Buzzer;;20;12;8;;',
    'Bad one;heavy;10;10;10;1;',
    ';5;10;10;10;1;',
    '',
    'Total;440;;;;;',
  ].join('\n');
  const { rows, above, empty, matching } = readAll(text);
  const rowOf = (name: string) => rows.find((each) => each.name === name)!;

  test('by the heads, with the units that they name; titles and empty rows are counted', () => {
    expect(matching.columns.map(({ field }) => field)).toEqual([
      'name',
      'mass',
      'length',
      'width',
      'height',
      'count',
      'station',
    ]);
    expect([above, empty, rows.length]).toEqual([3, 1, 6]);
    expect(rowOf('Aileron servo').read).toMatchObject({ count: 2, placeMm: [410, null, null] });
    expect(rowOf('Aileron servo').read!.part).toMatchObject({ role: 'control', massG: 12.5 });
  });

  test.each([
    'Parts list of the Knot\n\nName;Mass\nServo;12',
    'Parts, weighed in March\n\nName,Mass,Role\nServo,12,control',
    'Weight list\tNovember\n\tName\tMass\n\tServo\t12',
  ])('the heads are those of the row that has most: %j', (titled) => {
    const { rows: read, above: left } = readAll(titled);
    expect(read.map(({ read: part }) => part?.part)).toMatchObject([{ name: 'Servo', massG: 12 }]);
    expect(left).toBeGreaterThan(0);
  });

  test('where a column counts, the mass of all together is not taken for that of each', () => {
    const each = readAll('Item,Qty,Total weight (g),Weight each (g)\nServo,4,48,12');
    expect(each.rows[0]!.read).toMatchObject({ count: 4, part: { massG: 12 } });
    const all = readAll('Item,Qty,Total weight (g)\nServo,4,48');
    expect(all.matching.columns.map(({ field }) => field)).toEqual(['name', 'count', null]);
    expect(all.rows[0]!.read!.part).toMatchObject({ massG: 0, massFrom: 'unknown' });
    // Without a count it is the mass of the one thing that the row is.
    expect(masses('Item,Total weight (g)\nServo,48')).toEqual([48]);
  });

  test('a table without masses says so in every row', () => {
    const { rows: read } = readAll('Name,Length\nServo,23\nPack,106');
    for (const { notes } of read) expect(notes.map(({ column }) => column)).toContain('mass');
  });

  test('more parts than an aircraft takes are refused before one is added', () => {
    const counted = readAll(`Name,Mass,Qty\n${'Nut,1,50\n'.repeat(101)}`).rows.map(({ read }) => read!);
    expect(tooManyFault(blankAircraft(), counted)).toMatch(/at most 5000 more, got 5050/);
    expect(tooManyFault(blankAircraft(), counted.slice(1))).toBeNull();
  });

  test('what is missing is assumed with a note, and a missing mass is unknown', () => {
    expect(rowOf('Flight pack').read!.part).toMatchObject({ role: 'energy', sizeFrom: 'assumed' });
    expect(rowOf('Flight pack').notes[0]!.sentence).toMatch(/no length, width, height: taken to be 52 mm/);
    expect(rowOf('Buzzer').read!.part).toMatchObject({ massG: 0, massFrom: 'unknown' });
  });

  test('what cannot be is told by row, as a spreadsheet counts it, and by column', () => {
    expect(rowOf('Bad one')).toMatchObject({ row: 7, read: null });
    expect(rowOf('Bad one').faults).toEqual([
      { column: 'Weight (g)', sentence: expect.stringMatching(/got “heavy”.*Expected a mass/) },
    ]);
    const nameless = rows.find(({ row }) => row === 8)!;
    expect(nameless.faults[0]).toEqual({ column: 'Item', sentence: 'expected a name, got nothing.' });
  });

  test('a sum at the foot is known as one', () => {
    expect(rows.filter(({ isTotal }) => isTotal).map(({ name }) => name)).toEqual(['Total']);
  });

  test.each([
    ['Name,Size\nA,106 x 34 x 25 mm', { lengthMm: 106, widthMm: 34, heightMm: 25 }],
    ['Name,Dimensions\nA,4×2×1 in', { lengthMm: 101.6, widthMm: 50.8, heightMm: 25.4 }],
    ['Name,Length,Dia\nA,60,30', { kind: 'cylinder', lengthMm: 60, diameterMm: 30 }],
  ])('sizes: %j', (table, shape) => {
    expect(readAll(table).rows[0]!.read!.part.shape).toMatchObject(shape);
  });

  test.each([
    ['Name,Mass\nA,-4', /Expected 0 g or more/],
    ['Name,Mass\nA,1e9', /Cannot read|not a unit/],
    ['Name,Mass\nA,9999999 kg', /at most/],
    ['Name,Mass,Qty\nA,1,2.5', /whole number, 1 to 50, got 2.5/],
    ['Name,Mass\na\u202eb,1', /expected a name of 1 to/],
  ])('%j is refused', (table, sentence) => {
    const [row] = readAll(table).rows;
    expect(row!.read).toBeNull();
    expect(row!.faults.map((fault) => fault.sentence).join(' ')).toMatch(sentence);
  });

  test('no text, however odd, throws, and every row of it is told of', () => {
    const odd = fc.array(
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 10 }),
        fc.constantFrom(
          'Name',
          'Mass (g)',
          'Length',
          ',',
          ';',
          '\t',
          '\n',
          '"',
          '1,234',
          '5 oz',
          'g',
          '½',
          '1e99',
          '=',
        ),
      ),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(odd, (bits) => {
        const table = readTable(bits.join(''));
        if (typeof table === 'string') return;
        const read = readAll(bits.join(''));
        expect(read.above + read.empty + read.rows.length).toBe(table.rows.length);
        for (const { read: part, faults } of read.rows) expect(part === null).toBe(faults.length > 0);
        const parts = read.rows.flatMap(({ read: part }) => part ?? []);
        const { aircraft } = importParts(blankAircraft(), parts.slice(0, 3), { wantedMm: 0, fromMm: 0 });
        const back = parseAircraft(writeAircraft(aircraft));
        expect(back.ok || back.faults[0]?.sentence).toBe(true);
      }),
      { numRuns: 150, seed },
    );
  });
});

test('the whole import is one step, and undo brings back the file byte for byte', () => {
  const { rows } = readAll('Name,Mass,Qty\nServo,12,4\nServo,48,2\nPack,210,1');
  const store = createDocumentStore(blankAircraft());
  const before = writeAircraft(store.current());
  const parts = rows.flatMap(({ read }) => read ?? []);
  const { aircraft, ids } = importParts(store.current(), parts, { wantedMm: 200, fromMm: 0 });
  store.commit('Add 7 parts from a table', aircraft);
  expect(ids).toHaveLength(7);
  expect(new Set(aircraft.parts.map(({ name }) => name)).size).toBe(7);
  expect(aircraft.parts.reduce((sum, { massG }) => sum + massG, 0)).toBe(4 * 12 + 2 * 48 + 210);
  expect(parseAircraft(writeAircraft(aircraft)).ok).toBe(true);
  store.undo();
  expect(writeAircraft(store.current())).toBe(before);
});
