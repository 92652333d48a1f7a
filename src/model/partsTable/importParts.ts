import { freeName } from '../document/copyNames';
import { addPart } from '../document/edit';
import { mostOf } from '../document/schema/limits';
import type { Aircraft } from '../document/types';
import { setDown } from '../fit/setDown';
import { type Matching, quantityOf } from './columns';
import { guessDecimal } from './figures';
import { type RowPart, type RowRead, type RowReading, readRow } from './readRow';
import { isEmptyRow, type RawTable } from './readTable';

/** Everything that a table has, each row of it with what becomes of it. */
export interface TableRead {
  readonly rows: readonly RowRead[];
  /** Rows without a word or a figure in them. */
  readonly empty: number;
  /** Rows above the first part: titles, heads and units. */
  readonly above: number;
}

/** Reads all rows of a table; rows whose quotes are broken are among the faulty ones. */
export function readRows(
  { rows, broken }: RawTable,
  { columns, firstRow }: Matching,
  how: Omit<RowReading, 'columns'>,
): TableRead {
  const brokenAt = new Map(broken.map(({ row, sentence }) => [row, sentence]));
  let empty = 0;
  const read = rows.slice(firstRow).flatMap((cells, index): RowRead[] => {
    const row = firstRow + index + 1;
    if (isEmptyRow(cells) && !brokenAt.has(row)) {
      empty += 1;
      return [];
    }
    const answer = readRow(cells, row, { ...how, columns });
    const quote = brokenAt.get(row);
    return quote === undefined
      ? [answer]
      : [{ ...answer, read: null, faults: [{ column: 'row', sentence: quote }, ...answer.faults] }];
  });
  return { rows: read, empty, above: firstRow };
}

/** The cells of a table that hold figures by its columns, for guessing its decimal mark. */
export const decimalOf = ({ rows }: RawTable, { columns, firstRow }: Matching) =>
  guessDecimal(
    rows
      .slice(firstRow)
      .flatMap((cells) =>
        cells.filter((_, at) => columns[at]?.field && quantityOf[columns[at].field] !== null),
      ),
  );

/** That an aircraft cannot take so many more parts, in a sentence; null where it can. Asked before any of them is added. */
export function tooManyFault({ parts }: Aircraft, rows: readonly RowPart[]): string | null {
  const count = rows.reduce((sum, { count: copies }) => sum + copies, 0);
  const room = mostOf.parts - parts.length;
  return count <= room
    ? null
    : `An aircraft has at most ${mostOf.parts} parts: expected at most ${room} more, got ${count}.`;
}

/** An aircraft with the parts of a table aboard. */
export interface Imported {
  readonly aircraft: Aircraft;
  readonly ids: readonly string[];
  /** Names of parts that stand where no free place was found, or was looked for. */
  readonly noPlace: readonly string[];
}

/** A free place is looked for so often; each takes a look at the whole fit. */
const MOST_SET_DOWN = 25;

/**
 * Adds the parts of rows, in their order, as one edit. A part whose station is said stands there; another is set down in the first free place near
 * a wanted station, mm. @param fromMm what the table's stations are counted from, mm aft of the datum
 */
export function importParts(
  aircraft: Aircraft,
  rows: readonly RowPart[],
  { wantedMm, fromMm }: { readonly wantedMm: number; readonly fromMm: number },
): Imported {
  let now = aircraft;
  const ids: string[] = [];
  const noPlace: string[] = [];
  let looked = 0;
  for (const { part, placeMm, count } of rows) {
    const [x, y, z] = placeMm;
    for (let copy = 0; copy < count; copy += 1) {
      const name = freeName(now, part.name);
      const positionMm = [x === null ? wantedMm : x + fromMm, y ?? 0, z ?? 0] as const;
      const added = addPart(now, { ...part, name, positionMm });
      now = added.aircraft;
      ids.push(added.id);
      if (x !== null) continue;
      looked += 1;
      const set = looked <= MOST_SET_DOWN ? setDown(now, added.id, wantedMm) : null;
      if (set) now = set.aircraft;
      if (!set?.free) noPlace.push(name);
    }
  }
  return { aircraft: now, ids, noPlace };
}
