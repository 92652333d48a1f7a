import Papa from 'papaparse';

/** What may stand between the cells of a row. */
export const separators = [',', ';', '\t', '|'] as const;
export type Separator = (typeof separators)[number];

/** A table as it was pasted or opened: cells as text, nothing left out. */
export interface RawTable {
  readonly separator: Separator;
  /** Every row, empty ones too, so that the place in the list is the row that a spreadsheet counts, less one. */
  readonly rows: readonly (readonly string[])[];
  /** Rows that could not be taken apart, with why; the row as a spreadsheet counts it. */
  readonly broken: readonly { readonly row: number; readonly sentence: string }[];
}

/** More than this is no parts list. */
export const mostRows = 2000;
export const mostColumns = 60;

/**
 * Takes a text apart into cells, as RFC 4180 has it, with another separator where it has one: a cell in quotes may hold the
 * separator, line breaks, and quotes written twice. The separator is guessed unless it is given. A sentence where there is
 * no table.
 */
export function readTable(text: string, separator?: Separator): RawTable | string {
  const plain = text.replace(/^\ufeff/, '');
  if (plain.trim() === '') return 'There is nothing in it yet.';
  const { data, errors, meta } = takenApart(plain, separator);
  if (data.length > mostRows) return `Expected at most ${mostRows} rows, got more.`;
  const widest = data.reduce((most, row) => Math.max(most, row.length), 0);
  if (widest > mostColumns) return `Expected at most ${mostColumns} columns, got ${widest}.`;
  return {
    separator: separators.find((mark) => mark === meta.delimiter) ?? ',',
    rows: withoutTrail(data.map((row) => row.map(plainCell))),
    broken: errors
      .filter(({ type }) => type === 'Quotes')
      .map(({ row = 0 }) => ({
        row: row + 1,
        sentence: 'a quotation mark opens a cell and is not closed, or stands within one by itself.',
      })),
  };
}

const GUESSED: readonly Separator[] = ['\t', ';', ',', '|'];

/** With the separator guessed: where titles hide it so that no row has two cells, the one that gives most rows some. */
function takenApart(text: string, separator?: Separator): Papa.ParseResult<string[]> {
  const by = (delimiter?: Separator) =>
    Papa.parse<string[]>(text, {
      delimitersToGuess: [...GUESSED],
      ...(delimiter !== undefined && { delimiter }),
      skipEmptyLines: false,
      preview: mostRows + 1,
    });
  const rowsOfCells = ({ data }: Papa.ParseResult<string[]>) => data.filter((row) => row.length > 1).length;
  const first = by(separator);
  if (separator !== undefined || rowsOfCells(first) > 0) return first;
  return GUESSED.map(by).reduce((best, next) => (rowsOfCells(next) > rowsOfCells(best) ? next : best), first);
}

/** Blanks of every kind as plain ones, none at the ends. */
const plainCell = (cell: string): string => cell.replace(/[\u00a0\u2007\u202f]/g, ' ').trim();

/** Without the empty line that a text ends with. */
function withoutTrail(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  let end = rows.length;
  while (end > 0 && isEmptyRow(rows[end - 1] ?? [])) end -= 1;
  return rows.slice(0, end);
}

export const isEmptyRow = (row: readonly string[]): boolean => row.every((cell) => cell === '');
