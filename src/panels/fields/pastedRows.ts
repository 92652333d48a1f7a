import type { UnitSystem } from '../../model/units';
import type { Column } from './column';
import { readEntry } from './entryText';

/** Text from a spreadsheet: more than one cell of it. A single cell is typed into its field as ever. */
export const isTable = (text: string): boolean =>
  /[\t\n]/.test(text.replace(/\r?\n$/, '').replace(/\r/g, ''));

/** The cells of a spreadsheet's clipboard: rows by line breaks, columns by tabs; a last empty line is no row. */
export function cellsOf(text: string): string[][] {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n');
  return lines.map((line) => line.split('\t').map((cell) => cell.trim()));
}

interface PasteAsk<Row> {
  readonly text: string;
  /** Where the first cell goes. */
  readonly row: number;
  readonly column: number;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  /** The row that is added after the last. */
  readonly another: (rows: readonly Row[]) => Row;
  readonly noun: string;
  readonly units: UnitSystem;
}

/** So many faults are told; who has read three has seen the kind. */
const MOST_TOLD = 3;

/** The rows after pasting a spreadsheet's cells, downwards and to the right of one; or what was wrong, by row. */
export function pastedRows<Row extends object>(ask: PasteAsk<Row>): readonly Row[] | string {
  const { text, row, column, columns, another, noun, units } = ask;
  const cells = cellsOf(text);
  const widest = Math.max(...cells.map(({ length }) => length));
  if (column + widest > columns.length) {
    const room = columns.length - column;
    return `What was pasted is ${widest} columns wide; from here there ${room === 1 ? 'is 1' : `are ${room}`}.`;
  }
  const rows = [...ask.rows];
  const faults: string[] = [];
  for (const [i, line] of cells.entries()) {
    const at = row + i;
    if (line.every((cell) => cell === '')) {
      faults.push(`row ${i + 1} (${noun} ${at + 1}) is empty`);
      continue;
    }
    if (at >= rows.length) rows.push(another(rows));
    for (const [k, cell] of line.entries()) {
      const into = columns[column + k];
      if (!into || cell === '') continue;
      const read = cellValue(cell, into, units);
      if (typeof read === 'object') faults.push(`row ${i + 1}, ${into.label.toLowerCase()}: ${read.fault}`);
      else rows[at] = { ...rows[at]!, [into.key]: read };
    }
  }
  if (faults.length === 0) return rows;
  const more = faults.length - MOST_TOLD;
  return `Nothing was pasted. ${faults.slice(0, MOST_TOLD).map(sentence).join(' ')}${more > 0 ? ` And ${more} more.` : ''}`;
}

const sentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/\.$/, '')}.`;

function cellValue<Row>(
  cell: string,
  { quantity, scale = 1 }: Column<Row>,
  units: UnitSystem,
): number | string | { readonly fault: string } {
  if (quantity === 'text') return cell;
  const read = readEntry(cell, quantity, units, false);
  if (!read.ok) return { fault: `${read.sentence} (“${cell.slice(0, 30)}”)` };
  return (read.value ?? 0) * scale;
}
