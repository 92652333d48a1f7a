import { type Quantity, unitNamed } from '../units';
import { isEmptyRow } from './readTable';

/** What a column may say about a part. */
export const fields = [
  'name',
  'role',
  'count',
  'mass',
  'plusMinus',
  'size',
  'length',
  'width',
  'height',
  'diameter',
  'station',
  'buttline',
  'waterline',
  'notes',
] as const;
export type Field = (typeof fields)[number];

/** What a figure of a field is; null for words. */
export const quantityOf: Readonly<Record<Field, Quantity | null>> = {
  name: null,
  role: null,
  count: 'number',
  mass: 'mass',
  plusMinus: 'mass',
  size: 'length',
  length: 'length',
  width: 'length',
  height: 'length',
  diameter: 'length',
  station: 'length',
  buttline: 'length',
  waterline: 'length',
  notes: null,
};

/** How people head such columns, in lower case; the first that fits wins, whole words only. */
const heads: readonly (readonly [Field, RegExp])[] = [
  ['plusMinus', /\b(tolerance|uncertainty)\b/],
  // "No." numbers the rows as often as it counts the parts.
  ['count', /\b(qty|quantity|count|pcs|pieces)\b/],
  ['notes', /\b(notes?|remarks?|comments?)\b/],
  ['role', /\b(role|type|kind|category|group)\b/],
  ['mass', /\b(mass|weight|grams|wt)\b|^m$/],
  ['size', /\b(size|sizes|dimensions?|dims|l ?x ?w ?x ?h)\b/],
  ['station', /\b(station|arm|fs|sta|from nose)\b|^x$/],
  ['buttline', /\b(buttline|bl|lateral|across)\b|^y$/],
  ['waterline', /\b(waterline|wl|vertical)\b|^z$/],
  ['diameter', /\b(diameter|dia)\b|^ø$|^d$/],
  ['length', /\b(length|long)\b|^l$/],
  ['width', /\b(width|wide|breadth)\b|^[wb]$/],
  ['height', /\b(height|high|thickness|depth)\b|^[ht]$/],
  ['name', /\b(name|part|parts|item|items|component|what|description|thing)\b/],
];

/** A mass of all of a row's things together, which is none of each where a column counts them. */
const OF_ALL = /\b(total|sum|all|together|line)\b/;

/** A column: what it says, and the unit that its figures are in where a cell names none. */
export interface Column {
  readonly head: string;
  /** Null where it is left out. */
  readonly field: Field | null;
  /** As unitsOf spells it; null for the person's own. */
  readonly unit: string | null;
}

/** How the rows of a table are to be read. */
export interface Matching {
  readonly columns: readonly Column[];
  /** The first row that holds a part, counted from 0. */
  readonly firstRow: number;
}

/** "Mass (g)", "mass / g", "Mass [g]", "Mass in g", "mass g": the head and its unit. */
function headAndUnit(head: string, quantity: Quantity | null): string | null {
  if (quantity === null) return null;
  const tail = /(?:[([/,]|\bin\b|\s)\s*([^\s()[\]/,]+)\s*[)\]]?\s*$/.exec(head)?.[1];
  return tail === undefined ? null : (unitNamed(tail, quantity)?.symbol ?? null);
}

/** What a head says without its unit. */
function fieldOfHead(head: string): Field | null {
  if (/±|\+\/-/.test(head)) return 'plusMinus';
  const plain = head
    .toLowerCase()
    .replace(/[([].*?[)\]]/g, ' ')
    .replace(/\/.*$/, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return heads.find(([, pattern]) => pattern.test(plain))?.[0] ?? null;
}

/** A cell that is a number, with a unit or without. */
const isFigure = (cell: string): boolean => /^[~≈]?\s*[-+−]?\s*[\d.,]*\d/.test(cell);

/** Guesses what each column says; a person has the last word. */
export function guessMatching(rows: readonly (readonly string[])[]): Matching {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const headRow = headRowOf(rows);
  if (headRow < 0) return { columns: guessedByCells(rows, width), firstRow: 0 };
  const taken = new Set<Field>();
  const headCells = rows[headRow] ?? [];
  const counted = headCells.some((head) => fieldOfHead(head) === 'count');
  const columns = Array.from({ length: width }, (_, at): Column => {
    const head = headCells[at] ?? '';
    const found = fieldOfHead(head);
    const ofAll = counted && found === 'mass' && OF_ALL.test(head.toLowerCase());
    const field = found === null || taken.has(found) || ofAll ? null : found;
    if (field !== null) taken.add(field);
    return { head, field, unit: headAndUnit(head, field && quantityOf[field]) };
  });
  const units = unitRow(rows[headRow + 1] ?? [], columns);
  if (!units) return { columns, firstRow: headRow + 1 };
  return {
    columns: columns.map((column, at) => ({ ...column, unit: units[at] ?? column.unit })),
    firstRow: headRow + 2,
  };
}

/** So many rows may stand above the heads: titles, dates, who made it. */
const MOST_ABOVE = 12;

/** The row that heads most columns, of words alone, the first of those; −1 where none does. */
function headRowOf(rows: readonly (readonly string[])[]): number {
  const headed = rows.slice(0, MOST_ABOVE).map((row) => {
    if (row.some(isFigure)) return 0;
    return new Set(row.map(fieldOfHead).filter((field) => field !== null)).size;
  });
  const most = Math.max(0, ...headed);
  return most === 0 ? -1 : headed.indexOf(most);
}

/** The units of a row that holds nothing else; null where it holds anything else. */
function unitRow(row: readonly string[], columns: readonly Column[]): readonly (string | null)[] | null {
  if (isEmptyRow(row)) return null;
  const units = row.map((cell, at) => {
    const plain = cell.replace(/^[([]|[)\]]$/g, '');
    const field = columns[at]?.field ?? null;
    const quantities: readonly Quantity[] = field ? [quantityOf[field] ?? 'length'] : ['length', 'mass'];
    return quantities.map((quantity) => unitNamed(plain, quantity)?.symbol).find(Boolean) ?? null;
  });
  const areUnits = row.every((cell, at) => cell === '' || cell === '-' || units[at] !== null);
  return areUnits && units.some((unit) => unit !== null) ? units : null;
}

/** Without heads: the first column of words is the name, the first of figures the mass; the rest is for the person to say. */
function guessedByCells(rows: readonly (readonly string[])[], width: number): readonly Column[] {
  const isWords = (at: number) => !rows.every((row) => (row[at] ?? '') === '' || isFigure(row[at] ?? ''));
  const at = Array.from({ length: width }, (_, column) => column);
  const name = at.find(isWords);
  const mass = at.find((column) => !isWords(column));
  return at.map((column) => ({
    head: '',
    field: column === name ? 'name' : column === mass ? 'mass' : null,
    unit: null,
  }));
}
