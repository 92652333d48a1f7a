import type { Cell } from '../../model/sheet/blocks';
import type { FieldCard } from '../../model/sheet/card';
import { CardView } from './CardView';
import { DrawingView } from './DrawingView';
import { type Piece, type TableBlock, tableIdOf } from './pieces';

interface FlowProps {
  readonly pieces: readonly Piece[];
  readonly card: FieldCard | null;
  /** Only heights are wanted: drawings, whose size is known, are left empty. */
  readonly measuring?: boolean;
}

/** Pieces one under the other; rows of one table make one table, with its head. */
export function Flow({ pieces, card, measuring = false }: FlowProps) {
  const groups: { readonly tableId: string | undefined; readonly pieces: Piece[] }[] = [];
  for (const piece of pieces) {
    const tableId = tableIdOf(piece);
    const last = groups.at(-1);
    if (last && tableId !== undefined && last.tableId === tableId) last.pieces.push(piece);
    else groups.push({ tableId, pieces: [piece] });
  }
  return groups.map(({ tableId, pieces: [first, ...rest] }) => {
    if (!first) return null;
    if (first.block.kind === 'table')
      return <Table key={first.key} id={tableId ?? ''} table={first.block} pieces={[first, ...rest]} />;
    return (
      <div key={first.key} data-piece={first.key} className="sheet-piece">
        <Plain piece={first} card={card} measuring={measuring} />
      </div>
    );
  });
}

function Plain({ piece: { block }, card, measuring }: { readonly piece: Piece } & Omit<FlowProps, 'pieces'>) {
  switch (block.kind) {
    case 'heading':
      return block.level === 1 ? (
        <h3 className="sheet-h1">{block.text}</h3>
      ) : (
        <h4 className="sheet-h2">{block.text}</h4>
      );
    case 'text':
      return <p className={`sheet-${block.role}`}>{block.text}</p>;
    case 'tick':
      return (
        <p className="sheet-tick">
          <Box />
          <span>
            {block.note === undefined ? block.text : <strong>{block.text}. </strong>}
            {block.note}
          </span>
        </p>
      );
    case 'drawing':
      return <DrawingView drawing={block.drawing} empty={measuring ?? false} />;
    case 'fill':
      return (
        <p className="sheet-fill">
          {block.labels.map((label) => (
            <span key={label}>{label}</span>
          ))}
        </p>
      );
    case 'card':
      return card && <CardView card={card} />;
    case 'table':
      return null;
  }
}

const Box = () => (
  <svg className="sheet-box" viewBox="0 0 10 10" aria-label="to be ticked" role="img">
    <rect x="0.8" y="0.8" width="8.4" height="8.4" fill="none" stroke="currentColor" strokeWidth="0.7" />
  </svg>
);

interface TableProps {
  readonly id: string;
  readonly table: TableBlock;
  readonly pieces: readonly Piece[];
}

function Table({ id, table: { columns, roomy = false }, pieces }: TableProps) {
  const headed = columns.some(({ label }) => label !== '');
  return (
    <div className="sheet-table" data-table={id} data-roomy={roomy || undefined}>
      <table>
        <colgroup>
          {columns.map(({ widthMm }, at) => (
            <col key={at} style={{ width: `${widthMm}mm` }} />
          ))}
        </colgroup>
        {headed && (
          <thead>
            <tr>
              {columns.map(({ label, align }, at) => (
                <th key={at} scope="col" data-align={align}>
                  {label}
                </th>
              ))}
            </tr>
          </thead>
        )}
        <tbody>
          {pieces.map(({ key, row }) => (
            <tr key={key} data-piece={key} data-strong={row?.strong || undefined}>
              {row?.cells.map((cell, at) => (
                <td key={at} data-align={columns[at]?.align} data-box={cell.box}>
                  <CellWords cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function CellWords({ cell: { text, under, box } }: { readonly cell: Cell }) {
  if (box === 'tick') return <Box />;
  return (
    <>
      {text}
      {under !== undefined && <small>{under}</small>}
    </>
  );
}
