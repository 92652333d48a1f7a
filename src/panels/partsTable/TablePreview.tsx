import { type Column, type Field, fields, quantityOf } from '../../model/partsTable/columns';
import type { RowRead } from '../../model/partsTable/readRow';
import { ownUnit, type UnitSystem, unitsOf } from '../../model/units';
import { useView } from '../../store/react';
import type { TableInHand, TableState } from './useTable';

const fieldWords: Readonly<Record<Field, string>> = {
  name: 'name',
  role: 'role',
  count: 'how many',
  mass: 'mass of each',
  plusMinus: 'mass, ±',
  size: 'sizes, L × W × H',
  length: 'length',
  width: 'width',
  height: 'height',
  diameter: 'diameter',
  station: 'station',
  buttline: 'buttline',
  waterline: 'waterline',
  notes: 'notes',
};

/** So many rows are drawn; those that cannot be read always are. */
const MOST_DRAWN = 120;

interface PreviewProps {
  readonly table: TableState;
  readonly inHand: TableInHand;
}

/** The table with what each column says above it, and under each row what is wrong with it or taken for granted. */
export function TablePreview({ table, inHand: { raw, matching, read } }: PreviewProps) {
  const units = useView((view) => view.units);
  const drawn = read.rows.filter(({ faults }, at) => at < MOST_DRAWN || faults.length > 0);
  const more = read.rows.length - drawn.length;
  return (
    <section className="table-scroll" aria-label="The table as it is read">
      <table className="table-preview">
        <thead>
          <tr>
            <td />
            <th scope="col">row</th>
            {matching.columns.map((column, at) => (
              <th key={at} scope="col" data-out={column.field === null || undefined}>
                <span className="table-head">{column.head || `column ${at + 1}`}</span>
                <FieldPick
                  column={column}
                  at={at}
                  onPick={(field) => table.sayOfColumn(at, { field, unit: null })}
                />
                <UnitPick column={column} units={units} onPick={(unit) => table.sayOfColumn(at, { unit })} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {drawn.map((row) => (
            <PreviewRow
              key={row.row}
              row={row}
              cells={raw.rows[row.row - 1] ?? []}
              columns={matching.columns}
              taken={table.isTaken(row.row, row.isTotal)}
              onTake={(taken) => table.take(row.row, taken)}
            />
          ))}
        </tbody>
      </table>
      {more > 0 && <p className="hint">And {more} more rows that can be read.</p>}
    </section>
  );
}

interface FieldPickProps {
  readonly column: Column;
  readonly at: number;
  readonly onPick: (field: Field | null) => void;
}

const FieldPick = ({ column, at, onPick }: FieldPickProps) => (
  <select
    aria-label={`What ${column.head || `column ${at + 1}`} says`}
    value={column.field ?? ''}
    onChange={({ target }) => onPick(fields.find((field) => field === target.value) ?? null)}
  >
    <option value="">left out</option>
    {fields.map((field) => (
      <option key={field} value={field}>
        {fieldWords[field]}
      </option>
    ))}
  </select>
);

interface UnitPickProps {
  readonly column: Column;
  readonly units: UnitSystem;
  readonly onPick: (unit: string) => void;
}

function UnitPick({ column: { field, unit, head }, units, onPick }: UnitPickProps) {
  const quantity = field && quantityOf[field];
  if (!quantity || quantity === 'number') return null;
  return (
    <select
      aria-label={`Unit of ${head || field}`}
      value={unit ?? ownUnit(quantity, units).symbol}
      onChange={({ target }) => onPick(target.value)}
    >
      {unitsOf[quantity].map(({ symbol }) => (
        <option key={symbol} value={symbol}>
          {symbol}
        </option>
      ))}
    </select>
  );
}

interface RowProps {
  readonly row: RowRead;
  readonly cells: readonly string[];
  readonly columns: readonly Column[];
  readonly taken: boolean;
  readonly onTake: (taken: boolean) => void;
}

function PreviewRow({
  row: { row, name, read, faults, notes, isTotal },
  cells,
  columns,
  taken,
  onTake,
}: RowProps) {
  const remarks = [...faults, ...(taken ? notes : [])];
  const out = read === null || !taken;
  return (
    <>
      <tr data-out={out || undefined} data-bad={faults.length > 0 || undefined}>
        <td>
          <input
            type="checkbox"
            aria-label={`Take ${name || `row ${row}`}`}
            checked={read !== null && taken}
            disabled={read === null}
            onChange={({ target }) => onTake(target.checked)}
          />
        </td>
        <td className="figure">{row}</td>
        {columns.map(({ field }, at) => (
          <td
            key={at}
            data-out={field === null || undefined}
            className={field && quantityOf[field] ? 'figure' : undefined}
          >
            {cells[at]}
          </td>
        ))}
      </tr>
      {(remarks.length > 0 || (isTotal && !taken)) && (
        <tr className="table-remarks" data-bad={faults.length > 0 || undefined}>
          <td />
          <td />
          <td colSpan={columns.length}>
            {isTotal && !taken && <p>It looks like a sum of the rows above, and is left out.</p>}
            {remarks.map(({ column, sentence }) => (
              <p key={`${column} ${sentence}`}>
                {column}: {sentence}
              </p>
            ))}
          </td>
        </tr>
      )}
    </>
  );
}
