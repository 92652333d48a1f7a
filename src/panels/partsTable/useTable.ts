import { useMemo, useState } from 'react';
import type { MassFrom } from '../../model/document/types';
import { type Column, guessMatching, type Matching } from '../../model/partsTable/columns';
import type { DecimalMark } from '../../model/partsTable/figures';
import { decimalOf, readRows, type TableRead } from '../../model/partsTable/importParts';
import { type RawTable, readTable, type Separator } from '../../model/partsTable/readTable';
import { useView } from '../../store/react';

/** What a person has said about a table; null, or nothing, where the guess stands. */
interface Said {
  readonly separator: Separator | null;
  readonly decimal: DecimalMark | null;
  readonly firstRow: number | null;
  readonly massFrom: MassFrom | null;
  readonly columns: Readonly<Record<number, Partial<Column>>>;
  /** Rows, as a spreadsheet counts them, against what they would be by themselves: in or out. */
  readonly taken: Readonly<Record<number, boolean>>;
}

const nothingSaid: Said = {
  separator: null,
  decimal: null,
  firstRow: null,
  massFrom: null,
  columns: {},
  taken: {},
};

/** A table on its way to being parts: as it came, as it is matched, as it is read. */
export interface TableInHand {
  readonly raw: RawTable;
  readonly matching: Matching;
  readonly decimal: DecimalMark | null;
  readonly read: TableRead;
}

export function useTable() {
  const system = useView((view) => view.units);
  const [text, setText] = useState('');
  const [said, setSaid] = useState<Said>(nothingSaid);
  const { separator, decimal, firstRow, massFrom, columns } = said;
  const raw = useMemo(() => readTable(text, separator ?? undefined), [text, separator]);
  const matching = useMemo((): Matching | null => {
    if (typeof raw === 'string') return null;
    const guess = guessMatching(raw.rows);
    return {
      firstRow: firstRow ?? guess.firstRow,
      columns: guess.columns.map((column, at) => ({ ...column, ...columns[at] })),
    };
  }, [raw, firstRow, columns]);
  const inHand = useMemo((): TableInHand | null => {
    if (typeof raw === 'string' || !matching) return null;
    const mark = decimal ?? decimalOf(raw, matching);
    return {
      raw,
      matching,
      decimal: mark,
      read: readRows(raw, matching, { decimal: mark, system, massFrom }),
    };
  }, [raw, matching, decimal, system, massFrom]);
  return {
    text,
    /** Another table altogether: what was said of the last one is forgotten. */
    setText: (next: string) => {
      setText(next);
      setSaid(nothingSaid);
    },
    said,
    say: (change: Partial<Said>) => setSaid((now) => ({ ...now, ...change })),
    sayOfColumn: (at: number, change: Partial<Column>) =>
      setSaid((now) => ({ ...now, columns: { ...now.columns, [at]: { ...now.columns[at], ...change } } })),
    /** A row that can be read is taken, but for a sum of the others, unless the person says otherwise. */
    isTaken: (row: number, isTotal: boolean) => said.taken[row] ?? !isTotal,
    take: (row: number, taken: boolean) =>
      setSaid((now) => ({ ...now, taken: { ...now.taken, [row]: taken } })),
    sentence: text.trim() === '' || typeof raw !== 'string' ? null : raw,
    inHand,
  };
}

export type TableState = ReturnType<typeof useTable>;
