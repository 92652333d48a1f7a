import './fields.css';
import { type ClipboardEvent, type ReactNode, useState } from 'react';
import type { Aircraft } from '../../model/document/types';
import { useAircraft, useBench, useView } from '../../store/react';
import { Icon } from '../icons';
import { Modal } from '../Modal';
import type { Column } from './column';
import { Refusal } from './EditButton';
import { Measure } from './Measure';
import { isTable, pastedRows } from './pastedRows';
import { TextEntry } from './TextEntry';
import { useEdit } from './useEdit';

interface RowsTableProps<Row> {
  readonly title: string;
  /** One row, as in "Add a section". */
  readonly noun: string;
  readonly columns: readonly Column<Row>[];
  readonly read: (aircraft: Aircraft) => readonly Row[];
  readonly write: (aircraft: Aircraft, rows: readonly Row[]) => Aircraft;
  /** The row that is added after the last. */
  readonly another: (rows: readonly Row[]) => Row;
  readonly least: number;
}

const replaced = <Row,>(rows: readonly Row[], at: number, change: Partial<Row>): readonly Row[] =>
  rows.map((row, index) => (index === at ? { ...row, ...change } : row));

/** More columns than this do not stand side by side on a card. */
const ON_CARD = 3;

/** A list of like things, every figure of which can be typed: sections, panels, phases. What is too wide opens wide. */
export function RowsTable<Row extends object>(props: RowsTableProps<Row>) {
  const [wide, setWide] = useState(false);
  if (props.columns.length <= ON_CARD) return <Rows {...props} />;
  return (
    <>
      <Rows {...props}>
        <button type="button" className="button" onClick={() => setWide(true)}>
          Open wide
        </button>
      </Rows>
      {wide && (
        <Modal title={props.title} onClose={() => setWide(false)} wide>
          <Rows {...props} />
        </Modal>
      )}
    </>
  );
}

function Rows<Row extends object>(props: RowsTableProps<Row> & { readonly children?: ReactNode }) {
  const { title, noun, columns, read, write, another, least, children } = props;
  const count = useAircraft((aircraft) => read(aircraft).length);
  const edit = useEdit();
  const { document } = useBench();
  const units = useView((view) => view.units);
  const [fault, setFault] = useState<string | null>(null);
  const add = () =>
    edit(`Add a ${noun}`, (aircraft) => write(aircraft, [...read(aircraft), another(read(aircraft))]));
  const remove = (at: number) =>
    edit(`Remove a ${noun}`, (aircraft) =>
      write(
        aircraft,
        read(aircraft).filter((_row, index) => index !== at),
      ),
    );
  const paste = (event: ClipboardEvent, row: number, column: number) => {
    const text = event.clipboardData.getData('text/plain');
    if (!isTable(text)) return;
    event.preventDefault();
    const rows = read(document.api.getState().committed);
    const pasted = pastedRows({ text, row, column, columns, rows, another, noun, units });
    setFault(
      typeof pasted === 'string'
        ? pasted
        : edit(`Paste into ${title.toLowerCase()}`, (aircraft) => write(aircraft, pasted)),
    );
  };
  const field = (column: Column<Row>, at: number) => {
    const label = `${column.label}, ${noun} ${at + 1}`;
    const step = `Change ${column.label.toLowerCase()} of a ${noun}`;
    const put = (aircraft: Aircraft, value: unknown) =>
      write(aircraft, replaced(read(aircraft), at, { [column.key]: value } as Partial<Row>));
    const value = (aircraft: Aircraft) => read(aircraft)[at]?.[column.key];
    if (column.quantity === 'text') {
      return (
        <TextEntry bare label={label} step={step} read={(a) => value(a) as string | undefined} write={put} />
      );
    }
    const scale = column.scale ?? 1;
    return (
      <Measure
        bare
        label={label}
        step={step}
        quantity={column.quantity}
        read={(aircraft) => {
          const figure = value(aircraft) as number | undefined;
          return figure === undefined ? null : figure / scale;
        }}
        write={(aircraft, figure) => put(aircraft, figure * scale)}
      />
    );
  };
  return (
    <div className="rows-table">
      <section className="rows-scroll" aria-label={title}>
        <table>
          <caption>{title}</caption>
          <thead>
            <tr>
              {columns.map(({ key, label }) => (
                <th key={key} scope="col">
                  {label}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: count }, (_, at) => (
              <tr key={at}>
                {columns.map((column, index) => (
                  <td key={column.key} onPaste={(event) => paste(event, at, index)}>
                    {field(column, at)}
                  </td>
                ))}
                <td>
                  <button
                    type="button"
                    className="button bare"
                    disabled={count <= least}
                    aria-label={`Remove ${noun} ${at + 1}`}
                    onClick={() => setFault(remove(at))}
                  >
                    <Icon name="cross" />
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <button type="button" className="button" onClick={() => setFault(add())}>
        <Icon name="plus" /> Add a {noun}
      </button>{' '}
      {children}
      <Refusal fault={fault} />
      <p className="hint paste-hint">Cells copied from a spreadsheet can be pasted into a row.</p>
    </div>
  );
}
