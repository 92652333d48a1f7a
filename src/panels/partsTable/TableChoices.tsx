import type { ReactNode } from 'react';
import { massSources } from '../../model/document/schema/sources';
import { separators } from '../../model/partsTable/readTable';
import { massFromWords } from '../../model/words/sourceWords';
import type { TableInHand, TableState } from './useTable';

const separatorWords = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar' } as const;

interface ChoicesProps {
  readonly table: TableState;
  readonly inHand: TableInHand;
}

/** How the table is taken apart and read, as guessed until the person says otherwise. */
export function TableChoices({ table: { said, say }, inHand }: ChoicesProps) {
  const { raw, matching, decimal } = inHand;
  return (
    <div className="table-choices">
      <Picked
        label="Cells are parted by"
        value={raw.separator}
        onPick={(word) => {
          const separator = separators.find((mark) => mark === word) ?? null;
          say({ separator, columns: {}, firstRow: null, taken: {} });
        }}
      >
        {separators.map((mark) => (
          <option key={mark} value={mark}>
            {separatorWords[mark]}
          </option>
        ))}
      </Picked>
      <Picked
        label="Decimals by"
        value={decimal ?? ''}
        onPick={(word) => say({ decimal: word === 'comma' || word === 'point' ? word : null })}
      >
        {decimal === null && <option value="">not clear</option>}
        <option value="point">a point</option>
        <option value="comma">a comma</option>
      </Picked>
      <Picked
        label="First part in row"
        value={String(matching.firstRow)}
        onPick={(word) => say({ firstRow: Number(word), taken: {} })}
      >
        {raw.rows.slice(0, Math.max(12, matching.firstRow + 1)).map((_, at) => (
          <option key={at} value={at}>
            {at + 1}
          </option>
        ))}
      </Picked>
      <Picked
        label="Masses are"
        value={said.massFrom ?? ''}
        onPick={(word) => say({ massFrom: massSources.find((source) => source === word) ?? null })}
      >
        <option value="">not said</option>
        {massSources
          .filter((source) => source !== 'unknown')
          .map((source) => (
            <option key={source} value={source}>
              {massFromWords[source]}
            </option>
          ))}
      </Picked>
    </div>
  );
}

interface PickedProps {
  readonly label: string;
  readonly value: string;
  readonly onPick: (word: string) => void;
  readonly children: ReactNode;
}

function Picked({ label, value, onPick, children }: PickedProps) {
  return (
    <label className="table-choice">
      <span>{label}</span>
      <select value={value} onChange={({ target }) => onPick(target.value)}>
        {children}
      </select>
    </label>
  );
}
